// SPDX-License-Identifier: MIT
// A proof: the governing row of every member and check over all combinations, and what it takes for granted.
#pragma once

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <ostream>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/load/load_case.hpp>
#include <baywork/verify/row.hpp>

namespace baywork::verify {

/// Owns all it says: it may outlive the analysis.
class Proof {
 public:
  Proof() = default;
  Proof(std::vector<Row> rows, std::vector<Combination> combinations, std::vector<std::string> assumptions,
        std::vector<std::string> not_covered)
      : rows_(std::move(rows)),
        combinations_(std::move(combinations)),
        assumptions_(std::move(assumptions)),
        not_covered_(std::move(not_covered)) {}

  /// One row for each check of each member with any force (a utilisation above 1e-9), and one for each member outside
  /// the scope. Where joints are checked, rows for both ends of each bar on the chords as well; where connectors of
  /// splices are described, theirs, of a station and a chord and no member, come last.
  const std::vector<Row>& rows() const& noexcept { return rows_; }
  std::vector<Row> rows() && noexcept { return std::move(rows_); }  // a loop over a temporary proof's keeps them
  std::vector<Row> rows_of(std::size_t member) const {
    return picked([member](const Row& r) { return r.member == member; });
  }
  std::vector<Row> outside_scope() const {
    return picked([](const Row& r) { return r.check == Check::outside_scope; });
  }

  /// The row of greatest utilisation; one outside the scope where there is any. Throws where there are no rows.
  const Row& worst() const {
    if (rows_.empty())
      fail<BadDescription>("proof", "it has no rows: no member has any force", "a response with loads is accepted");
    return *std::max_element(rows_.begin(), rows_.end(), less);
  }
  /// The worst row of each check and role, worst first.
  std::vector<Row> governing() const {
    std::vector<Row> out;
    for (const Row& r : rows_) {
      Row* same = nullptr;
      for (Row& o : out)
        if (o.check == r.check && o.address.role == r.address.role) same = &o;
      if (same == nullptr)
        out.push_back(r);
      else if (less(*same, r))
        *same = r;
    }
    std::stable_sort(out.begin(), out.end(), [](const Row& a, const Row& b) { return less(b, a); });
    return out;
  }

  /// Whether every check made is fulfilled and none was left out of the scope. Says nothing of what is not_covered().
  bool passes() const noexcept {
    return !rows_.empty() && std::all_of(rows_.begin(), rows_.end(), [](const Row& r) { return r.fulfilled(); });
  }
  std::string verdict() const {
    if (rows_.empty()) return "nothing is proved: no member has any force";
    const std::vector<Row> outside = outside_scope();
    std::size_t places = outside.size();  // rows lie by member, a bar and its joint may both have one
    for (std::size_t i = 1; i < outside.size(); ++i)
      if (outside[i].member != no_member && outside[i].member == outside[i - 1].member) --places;
    if (!outside.empty()) {
      const char* word = outside.back().member == no_member ? " place" : " bar";  // faces and stations come last
      return "not proved: " + std::to_string(places) + word + (places == 1 ? " is" : "s are") + " outside the scope (" +
             place(outside[0]) + ": " + outside[0].reason + ")";
    }
    if (is_infinite(worst().utilisation)) return "fails, nothing resists at " + place(worst());
    const std::string most = baywork::text::number(worst().utilisation, 4);
    return passes() ? "passes the checks made, greatest utilisation " + most
                    : "fails, greatest utilisation " + most + " (" + place(worst()) + ")";
  }

  const std::vector<Combination>& combinations() const noexcept { return combinations_; }
  const std::vector<std::string>& assumptions() const noexcept { return assumptions_; }
  const std::vector<std::string>& not_covered() const noexcept { return not_covered_; }

 private:
  static bool less(const Row& a, const Row& b) { return a.utilisation < b.utilisation; }
  template <class Keep>
  std::vector<Row> picked(Keep keep) const {
    std::vector<Row> out;
    std::copy_if(rows_.begin(), rows_.end(), std::back_inserter(out), keep);
    return out;
  }

  std::vector<Row> rows_;
  std::vector<Combination> combinations_;
  std::vector<std::string> assumptions_, not_covered_;
};

/// The verdict, the governing rows as a table and in full, the assumptions and what is not covered.
inline std::ostream& operator<<(std::ostream& out, const Proof& proof) {
  out << proof.verdict() << "\n\n"
      << baywork::text::right("utilisation", 11) << "  " << baywork::text::left("check", 24)
      << baywork::text::left("clause", 36) << "combination, place\n";
  const std::vector<Row> governing = proof.governing();
  for (const Row& r : governing) {
    out << baywork::text::right(utilisation_of(r), 11) << "  "
        << baywork::text::left(name(r.check), 24)
        << baywork::text::left(r.check == Check::outside_scope ? "" : std::string(r.standard) + " " + r.clause, 36);
    if (r.check == Check::outside_scope)
      out << place(r) << ": " << r.reason << '\n';
    else
      out << proof.combinations()[r.combination].name << ", " << place(r) << (r.reason[0] == '\0' ? "" : ": ")
          << r.reason << '\n';
  }
  out << "\nGoverning rows\n";
  for (const Row& r : governing) out << "  " << r << '\n';
  out << "\nCombinations\n";
  for (std::size_t i = 0; i < proof.combinations().size(); ++i)
    out << "  " << i + 1 << ": " << proof.combinations()[i].name << '\n';
  out << "\nTaken for granted\n";
  for (const std::string& s : proof.assumptions()) out << "  " << s << '\n';
  out << "\nNot covered\n";
  for (const std::string& s : proof.not_covered()) out << "  " << s << '\n';
  return out;
}

}  // namespace baywork::verify
