// SPDX-License-Identifier: MIT
// How the forces of one combination go with the load factor: what is placed, the load times the factor, and a bow.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/rating/detail/bows.hpp>

namespace baywork::rating::detail {

/// Multiples of the load asked for and of a unit bow.
struct Times {
  double load = 0, bow = 0;
};

/// Two, or four.
struct Corners {
  std::array<Times, 4> at{};
  std::size_t count = 0;
  const Times* begin() const noexcept { return at.data(); }
  const Times* end() const noexcept { return at.data() + count; }
};

/// End forces and loads of a member; the loads point into the scratch that they were made in.
struct MemberState {
  std::array<double, 6> start{};
  MemberLoads<double> loads{};
};

/// One combination, as it is or with one bow to one side.
class Course {
 public:
  /// `load` may be none: what is placed alone.
  Course(const Line& line, const Unit* load) : line_(&line), load_(load) {}
  Course(const Line& line, const Unit* load, const Bows& bows, const UnitBow& bow, double side,
         const std::vector<PairGrowth>& growth)
      : line_(&line), load_(load), bows_(&bows), bow_(&bow), side_(side), growth_(&growth) {}

  std::size_t combination() const noexcept { return line_->combination; }
  /// Whether it changes with the load factor at all.
  bool changes() const noexcept { return load_ != nullptr && line_->factor != 0.0; }
  bool is_straight() const noexcept { return bow_ == nullptr; }
  const UnitBow* bow() const noexcept { return bow_; }
  bool endless(double factor) const { return bows_->endless(*bow_, *growth_, factor); }
  bool may_be_endless(double from, double to) const { return bows_->may_be_endless(*bow_, *growth_, from, to); }
  /// " + initial sway towards +y + bow (0.12 kN/m) of the top face"; what there is of it.
  std::string words(double factor) const {
    if (bow_ == nullptr) return line_->words();
    return line_->words() + (side_ > 0.0 ? " + " : " - ") + bows_->words(*bow_, magnitude(at(factor).bow));
  }

  Times at(double factor) const {
    Times t;
    if (load_ != nullptr) t.load = line_->factor * factor;
    if (bow_ != nullptr) t.bow = side_ * bows_->times(*bow_, *growth_, factor);
    return t;
  }
  /// All between two load factors lies within the hull of these: forces are straight in both multiples.
  Corners corners(double from, double to) const {
    const double low = line_->factor * from, high = line_->factor * to;
    if (bow_ == nullptr) return {{{{low, 0.0}, {high, 0.0}}}, 2};
    const Limits bow = bows_->times(*bow_, *growth_, from, to);
    const double least = side_ * bow.least, most = side_ * bow.most;
    return {{{{low, least}, {low, most}, {high, least}, {high, most}}}, 4};
  }

  verify::SectionForces cut(const Times& t, std::size_t m, bool at_start) const {
    const std::size_t end = at_start ? 0 : 1;
    verify::SectionForces out;
    for_each(t, [&](const Unit& u, double f) { out = sum(out, u.cuts[m].ends[end], f); });
    return out;
  }
  double N_in_middle(const Times& t, std::size_t m) const {
    double out = 0;
    for_each(t, [&](const Unit& u, double f) { out += f * u.cuts[m].N_in_middle; });
    return out;
  }
  MemberState member(const Times& t, std::size_t m, std::vector<MemberLoad>& scratch) const {
    MemberState s;
    scratch.clear();
    for_each(t, [&](const Unit& u, double f) {
      for (std::size_t k = 0; k < 6; ++k) s.start[k] += f * u.response.answer().members[m].start[k];
      for (MemberLoad l : u.response.loads_on(m)) {
        l.first = f * l.first;
        l.last = f * l.last;
        scratch.push_back(l);
      }
    });
    s.loads = {scratch.data(), scratch.size()};
    return s;
  }
  /// All that a member's forces can be anywhere along it, between two load factors.
  verify::detail::ForceRange range(std::size_t m, double from, double to) const {
    verify::detail::ForceRange out;
    bool first = true;
    for (const Times& t : corners(from, to)) {
      MemberReach reach;
      for_each(t, [&](const Unit& u, double f) { reach.add(f, u.reach[m]); });
      if (first) out = verify::detail::ForceRange(reach.start);
      first = false;
      reach.widen(out);
    }
    return out;
  }

 private:
  template <class Visit>
  void for_each(const Times& t, Visit visit) const {
    if (line_->there) visit(*line_->there, 1.0);
    if (load_ != nullptr) visit(*load_, t.load);
    if (bow_ != nullptr) visit(bow_->unit, t.bow);
  }

  const Line* line_;
  const Unit* load_;
  const Bows* bows_ = nullptr;
  const UnitBow* bow_ = nullptr;
  double side_ = 0;
  const std::vector<PairGrowth>* growth_ = nullptr;
};

/// Forces at multiples of a course, as topics ask for them.
struct ForcesAt {
  const Course& course;
  Times times;
  verify::SectionForces operator()(std::size_t m, bool at_start) const { return course.cut(times, m, at_start); }
  double in_middle(std::size_t m) const { return course.N_in_middle(times, m); }
};

}  // namespace baywork::rating::detail
