// SPDX-License-Identifier: MIT
// Least and greatest end forces of bars and reactions over combinations, and in which combination each is met.
#pragma once

#include <array>
#include <cstddef>
#include <ostream>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/core/text.hpp>
#include <baywork/response/cases.hpp>

namespace baywork {

/// Over combinations, counted from 0; of equals the first.
struct EnvelopeRange {
  double least = 0, most = 0;
  std::size_t least_in = 0, most_in = 0;
};

/// Envelope of what linear combinations of solved cases give. Owns all it says: it may outlive cases and analysis. Its
/// size does not grow with the number of combinations but for their names.
class Envelope {
 public:
  /// Of the forces on the positive cut at one end of a bar, in the bar's axes: in the order of cut_force_names.
  using OfEnd = std::array<EnvelopeRange, 6>;
  struct OfMember {
    Address address{};
    OfEnd start{}, end{};
  };
  /// Of what a support does to the girder, global axes: fx, fy, fz [N], mx, my, mz [Nm].
  struct OfSupport {
    Address address{};
    std::array<EnvelopeRange, 6> reaction{};
  };

  Envelope(const Cases& cases, std::vector<Combination> all) : combinations_(std::move(all)) {
    const Frame& frame = cases.analysis().model().frame;
    names_ = frame.names;
    members_.resize(frame.members.size());
    for (std::size_t m = 0; m < members_.size(); ++m) members_[m].address = frame.members[m].address;
    for (const Reaction& r : cases[0].answer().reactions) supports_.push_back({frame.nodes[r.node].address, {}});
    for (std::size_t k = 0; k < combinations_.size(); ++k) take(cases, k);
  }
  Envelope(const Cases& cases, const CombinationSet& set)
      : Envelope(cases, baywork::combinations(set, cases.kinds())) {}

  const std::vector<Combination>& combinations() const noexcept { return combinations_; }
  const std::vector<OfMember>& members() const noexcept { return members_; }
  const std::vector<OfSupport>& supports() const noexcept { return supports_; }
  const PartNames& names() const noexcept { return names_; }

 private:
  void take(const Cases& cases, std::size_t k) {
    const std::vector<double>& factors = combinations_[k].factors;
    if (factors.size() != cases.size())
      fail<BadDescription>(
          "combination " + combinations_[k].name,
          std::to_string(factors.size()) + " factors are given for " + std::to_string(cases.size()) + " cases",
          "one factor for each case is accepted");
    const auto take_sum = [&](EnvelopeRange& e, const auto& part) {
      double sum = 0;
      for (std::size_t p = 0; p < factors.size(); ++p)
        if (factors[p] != 0.0) sum += factors[p] * part(cases[p].answer());
      if (k == 0 || sum < e.least) {
        e.least = sum;
        e.least_in = k;
      }
      if (k == 0 || sum > e.most) {
        e.most = sum;
        e.most_in = k;
      }
    };
    // on the positive cut: minus what acts on the start, plus what acts on the end
    for (std::size_t m = 0; m < members_.size(); ++m)
      for (std::size_t i = 0; i < 6; ++i) {
        take_sum(members_[m].start[i], [&](const FrameAnswer& a) { return -a.members[m].start[i]; });
        take_sum(members_[m].end[i], [&](const FrameAnswer& a) { return a.members[m].end[i]; });
      }
    for (std::size_t s = 0; s < supports_.size(); ++s)
      for (std::size_t i = 0; i < 6; ++i)
        take_sum(supports_[s].reaction[i], [&](const FrameAnswer& a) { return a.reactions[s].value[i]; });
  }

  std::vector<Combination> combinations_;
  std::vector<OfMember> members_;
  std::vector<OfSupport> supports_;
  PartNames names_;
};

/// The reactions of every support; of the bars of each role least and greatest of each force with its place; both with
/// the combination's number in parentheses; the combinations by number.
inline std::ostream& operator<<(std::ostream& out, const Envelope& envelope) {
  static constexpr std::array<const char*, 6> reaction_names{"fx", "fy", "fz", "mx", "my", "mz"};
  const auto unit = [](std::size_t i) { return i < 3 ? " kN" : " kNm"; };
  const auto cell = [](double v, std::size_t k) {
    return text::right(text::fixed(v / 1e3, 3), 12) + text::left(" (" + std::to_string(k + 1) + ")", 6);
  };
  out << "Reactions, least and most (combination)\n";
  for (const Envelope::OfSupport& s : envelope.supports())
    for (std::size_t i = 0; i < 6; ++i) {
      const EnvelopeRange& e = s.reaction[i];
      if (e.least == 0.0 && e.most == 0.0) continue;
      out << "  " << text::left(text_of(s.address, envelope.names()), 40)
          << text::left(std::string(reaction_names[i]) + unit(i), 8) << cell(e.least, e.least_in)
          << cell(e.most, e.most_in) << '\n';
    }
  struct Place {
    double value = 0;
    std::size_t combination = 0, member = no_member;
    bool at_end = false;
  };
  const std::vector<Envelope::OfMember>& members = envelope.members();
  out << "Forces at the ends of bars, least and most (combination)\n";
  for (const Role role : {Role::chord, Role::cross_member, Role::diagonal, Role::diaphragm, Role::user})
    for (std::size_t i = 0; i < 6; ++i) {
      std::array<Place, 2> found;  // least, most
      for (std::size_t m = 0; m < members.size(); ++m) {
        if (members[m].address.role != role) continue;
        for (const bool at_end : {false, true}) {
          const EnvelopeRange& e = at_end ? members[m].end[i] : members[m].start[i];
          if (found[0].member == no_member || e.least < found[0].value) found[0] = {e.least, e.least_in, m, at_end};
          if (found[1].member == no_member || e.most > found[1].value) found[1] = {e.most, e.most_in, m, at_end};
        }
      }
      if (found[0].member == no_member || (found[0].value == 0.0 && found[1].value == 0.0)) continue;
      out << "  " << text::left(name(role), 14) << text::left(std::string(cut_force_names[i]) + unit(i), 8);
      for (const Place& p : found)
        out << cell(p.value, p.combination)
            << text::left(text_of(members[p.member].address, envelope.names()) + (p.at_end ? ", end" : ", start"), 42);
      out << '\n';
    }
  out << "Combinations\n";
  for (std::size_t k = 0; k < envelope.combinations().size(); ++k)
    out << "  " << k + 1 << ": " << envelope.combinations()[k].name << '\n';
  return out;
}

}  // namespace baywork
