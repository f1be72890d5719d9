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

namespace detail {

/// What part(answer) of the cases adds up to, least and most over all combinations.
template <class Part>
EnvelopeRange range_over(const Cases& cases, const std::vector<Combination>& all, const Part& part) {
  EnvelopeRange out;
  for (std::size_t k = 0; k < all.size(); ++k) {
    double sum = 0;
    for (std::size_t p = 0; p < cases.size(); ++p)
      if (all[k].factors[p] != 0.0) sum += all[k].factors[p] * part(cases[p].answer());
    if (k == 0 || sum < out.least) {
      out.least = sum;
      out.least_in = k;
    }
    if (k == 0 || sum > out.most) {
      out.most = sum;
      out.most_in = k;
    }
  }
  return out;
}

/// An envelope over nothing would read as one of zeros.
inline void check_combinations(const Cases& cases, const std::vector<Combination>& all) {
  if (all.empty()) fail<BadDescription>("envelope", "no combination is given", "one combination or more is accepted");
  for (const Combination& c : all)
    if (c.factors.size() != cases.size())
      fail<BadDescription>(
          "combination " + c.name,
          std::to_string(c.factors.size()) + " factors are given for " + std::to_string(cases.size()) + " cases",
          "one factor for each case is accepted");
}

}  // namespace detail

/// Of what one support does to the girder, global axes: fx, fy, fz [N], mx, my, mz [Nm].
using ReactionRange = std::array<EnvelopeRange, 6>;

/// Of each support, in the order of the frame's.
inline std::vector<ReactionRange> reaction_ranges(const Cases& cases, const std::vector<Combination>& combinations) {
  detail::check_combinations(cases, combinations);
  std::vector<ReactionRange> out(cases[0].answer().reactions.size());
  for (std::size_t s = 0; s < out.size(); ++s)
    for (std::size_t i = 0; i < 6; ++i)
      out[s][i] =
          detail::range_over(cases, combinations, [s, i](const FrameAnswer& a) { return a.reactions[s].value[i]; });
  return out;
}

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
  struct OfSupport {
    Address address{};
    ReactionRange reaction{};
  };

  Envelope(const Cases& cases, std::vector<Combination> all) : combinations_(std::move(all)) {
    const std::vector<ReactionRange> reactions = reaction_ranges(cases, combinations_);
    const Frame& frame = cases.analysis().model().frame;
    names_ = frame.names;
    for (std::size_t s = 0; s < reactions.size(); ++s)
      supports_.push_back({frame.nodes[frame.supports[s].node].address, reactions[s]});
    members_.resize(frame.members.size());
    for (std::size_t m = 0; m < members_.size(); ++m) {
      OfMember& of = members_[m];
      of.address = frame.members[m].address;
      const auto range = [&](const auto& part) { return detail::range_over(cases, combinations_, part); };
      // on the positive cut: minus what acts on the start, plus what acts on the end
      for (std::size_t i = 0; i < 6; ++i) {
        of.start[i] = range([m, i](const FrameAnswer& a) { return -a.members[m].start[i]; });
        of.end[i] = range([m, i](const FrameAnswer& a) { return a.members[m].end[i]; });
      }
    }
  }
  Envelope(const Cases& cases, const CombinationSet& set)
      : Envelope(cases, baywork::combinations(set, cases.kinds())) {}

  const std::vector<Combination>& combinations() const noexcept { return combinations_; }
  const std::vector<OfMember>& members() const noexcept { return members_; }
  const std::vector<OfSupport>& supports() const noexcept { return supports_; }
  const PartNames& names() const noexcept { return names_; }

 private:
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
