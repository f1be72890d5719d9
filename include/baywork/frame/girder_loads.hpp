// SPDX-License-Identifier: MIT
// Actions in girder words as loads on the members and nodes of the girder's frame.
#pragma once

#include <cmath>
#include <cstddef>
#include <string>
#include <variant>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/frame/detail/member_place.hpp>
#include <baywork/frame/frame_loads.hpp>
#include <baywork/frame/girder_model.hpp>
#include <baywork/frame/girder_pressure.hpp>
#include <baywork/load/actions.hpp>

namespace baywork {

namespace detail {

/// Turns one action after another into frame loads. Axes of all members are worked out once by the owner.
template <class S>
class LoadMaker {
 public:
  LoadMaker(const BasicGirderModel<S>& model, const std::vector<MemberAxes<S>>& axes, BasicFrameLoads<S>& out)
      : model_(model), axes_(axes), out_(out) {}

  void operator()(const BasicSelfWeight<S>& a) {
    require::finite(a.gravity, "self-weight", "gravity");
    require::not_negative(a.factor, "self-weight", "factor");
    if (!is_finite(a.towards) || !(value_of(dot(a.towards, a.towards)) > 0.0))
      fail<BadDescription>("self-weight", "its direction is not given", "a finite direction with some length is accepted");
    const Vec3<S> towards = unit(a.towards);
    for (std::size_t i = 0; i < model_.frame.members.size(); ++i) {
      const S size = S(model_.frame.members[i].section.mass_per_metre * a.gravity * a.factor);
      const Vec3<S> w = size * towards;
      place(i).line(S(0), place(i).whole(), w, w);
    }
  }

  void operator()(const BasicLineLoad<S>& a) {
    if (a.chords.empty()) fail<BadDescription>("line load", "it names no chord", "one chord or more is accepted");
    if (!is_finite(a.first) || !is_finite(a.last)) fail<BadDescription>("line load", "it is not finite", "finite loads are accepted");
    const S from = a.reach.from ? *a.reach.from : S(0), to = a.reach.to ? *a.reach.to : girder().span();
    check_reach([] { return std::string("line load"); }, from, to);
    const S share = S(S(1) / S(static_cast<double>(a.chords.size())));
    for (const ChordRef& ref : a.chords) {
      const std::size_t c = find_chord(ref);
      for (std::size_t b = 0; b < girder().bays(); ++b) {
        const S x0 = girder().stations[b], x1 = girder().stations[b + 1];
        const S lo = larger(from, x0), hi = smaller(to, x1);
        if (!(value_of(lo) < value_of(hi))) continue;
        const auto at = [&](const S& x) { return share * (a.first + S((x - from) / (to - from)) * (a.last - a.first)); };
        // per metre of axis: a longer (sloping, curved) chord carries the same total
        MemberPlace<S> m = place(model_.chord_member(b, c));
        const S stretch = S((x1 - x0) / m.whole()), scale = S(m.whole() / (x1 - x0));
        m.line(S((lo - x0) * scale), S((hi - x0) * scale), stretch * at(lo), stretch * at(hi));
      }
    }
  }

  void operator()(const BasicChordPoint<S>& a) {
    const std::size_t c = find_chord(a.chord);
    const auto words = [&] { return girder().chords[c].name + " chord"; };
    if (!is_finite(a.x) || girder().bay_at(value_of(a.x)) < 0)
      fail<BadDescription>(words(), "load on chord is at " + text::number(a.x) + " m",
                           "places from 0 to " + text::number(girder().span()) + " m are accepted");
    check_finite(words, a.force, a.couple);
    const std::size_t b = static_cast<std::size_t>(girder().bay_at(value_of(a.x)));
    MemberPlace<S> m = place(model_.chord_member(b, c));
    const S x0 = girder().stations[b];
    S x = S((a.x - x0) * (m.whole() / (girder().stations[b + 1] - x0)));
    m.point(x, a.force, a.couple);
  }

  void operator()(const BasicCrossMemberPoint<S>& a) {
    const std::size_t f = find_face(a.face);
    Address where;
    where.station = static_cast<int>(a.station);
    where.face = static_cast<int>(f);
    const auto words = [&] { return text_of(where, model_.frame.names); };
    if (a.station >= girder().stations.size())
      fail<BadDescription>(words(), "the girder has no such station", "stations 1 to " + std::to_string(girder().stations.size()) + " are accepted");
    const std::vector<std::size_t>& pieces = model_.faces[f].cross_members[a.station];
    if (pieces.empty()) fail<BadDescription>(words(), "a load is put on a cross member, but none is there", "stations with a cross member are accepted");
    if (!is_finite(a.fraction) || value_of(a.fraction) < 0.0 || value_of(a.fraction) > 1.0)
      fail<BadDescription>(words(), "the load is at the fraction " + text::number(a.fraction) + " of the cross member", "0 to 1 is accepted");
    check_finite(words, a.force, a.couple);
    S along = S(0);
    for (const std::size_t i : pieces) along += place(i).whole();
    S at = S(a.fraction * along);
    for (std::size_t k = 0; k < pieces.size(); ++k) {
      const S whole = place(pieces[k]).whole();
      if (value_of(at) <= value_of(whole) || k + 1 == pieces.size()) {
        place(pieces[k]).point(smaller(at, whole), a.force, a.couple);
        return;
      }
      at -= whole;
    }
  }

  void operator()(const BasicFacePressure<S>& a) {
    const std::size_t f = find_face(a.face);
    Address where;
    where.face = static_cast<int>(f);
    const auto words = [&] { return text_of(where, model_.frame.names); };
    require::finite(a.pressure, words, "pressure");
    if (model_.faces[f].panels.empty())
      fail<BadDescription>(words(), "a pressure acts on it, but it has no panels", "faces with panels are accepted");
    const S from = a.reach.from ? *a.reach.from : S(0), to = a.reach.to ? *a.reach.to : girder().span();
    check_reach(words, from, to);
    PressureCarrier<S> carrier{model_, axes_, out_};
    std::size_t met = 0;
    for (std::size_t p = 0; p < model_.faces[f].panels.size(); ++p) {
      const PanelMembers& panel = model_.faces[f].panels[p];
      const double middle = 0.5 * value_of(S(girder().stations[panel.first_station] + girder().stations[panel.last_station]));
      if (middle < value_of(from) || middle > value_of(to)) continue;
      carrier.carry(f, p, a.pressure, a.carried_by);
      ++met;
    }
    if (met == 0) fail<BadDescription>(words(), "no panel lies between " + text::number(from) + " m and " + text::number(to) + " m",
                                       "a reach over the middle of a panel is accepted");
  }

  void operator()(const BasicWindOnBars<S>& a) {
    require::not_negative(a.pressure, "wind on bars", "pressure");
    require::not_negative(a.force_coefficient, "wind on bars", "force coefficient");
    require::not_negative(a.flat_coefficient, "wind on bars", "force coefficient of flat-sided bars");
    if (!is_finite(a.direction) || !(value_of(dot(a.direction, a.direction)) > 0.0))
      fail<BadDescription>("wind on bars", "its direction is not given", "a finite direction with some length is accepted");
    const Vec3<S> w = unit(a.direction);
    for (std::size_t i = 0; i < model_.frame.members.size(); ++i) {
      const SectionData<S>& s = model_.bar(i).section;
      const Vec3<S> square = w - dot(w, axes_[i].x) * axes_[i].x;
      const S q = S((is_round(s.kind) ? a.force_coefficient : a.flat_coefficient) * a.pressure * larger(s.height, s.width) * length_or_zero(square));
      place(i).line(S(0), place(i).whole(), q * square, q * square);
    }
  }

  void operator()(const BasicWarming<S>& a) {
    require::finite(a.change, "warming", "change of temperature");
    if (a.chord) {
      const std::size_t c = find_chord(*a.chord);
      for (std::size_t b = 0; b < girder().bays(); ++b) out_.temperature(model_.chord_member(b, c), a.change);
      return;
    }
    for (std::size_t i = 0; i < model_.frame.members.size(); ++i) out_.temperature(i, a.change);
  }

  /// Each bar is warmed straight from end to end, and across itself, by the field y·gy + z·gz about the girder's axis.
  void operator()(const BasicWarmingAcross<S>& a) {
    require::finite(a.per_metre_y, "warming across", "temperature per metre of width");
    require::finite(a.per_metre_z, "warming across", "temperature per metre of height");
    using Kind = typename BasicMemberLoad<S>::Kind;
    for (std::size_t i = 0; i < model_.frame.members.size(); ++i) {
      const BasicMember<S>& m = model_.frame.members[i];
      const Vec3<S> field{S(0), a.per_metre_y, a.per_metre_z};
      const S first = dot(field, from_axis(m.from) + m.start.offset), last = dot(field, from_axis(m.to) + m.end.offset);
      out_.on_members.push_back({Kind::temperature, i, S(0), S(0), {first, dot(field, axes_[i].y), dot(field, axes_[i].z)}, {last, S(0), S(0)}});
    }
  }

  void operator()(const BasicSettlement<S>& a) {
    const std::size_t c = find_chord(a.chord);
    const auto words = [&] { return "settlement at " + text::number(a.x) + " m, " + girder().chords[c].name + " chord"; };
    require::finite(a.x, words, "place along the girder");
    require::finite(a.displacement, words, "displacement");
    const int station = girder().station_at(value_of(a.x));
    if (station < 0) fail<BadDescription>(words(), "no station is there", "places of stations are accepted");
    const std::size_t node = model_.chord_node(static_cast<std::size_t>(station), c);
    if (!model_.frame.holds(node, a.motion))
      fail<BadDescription>(words(), std::string("no support holds it along ") + motion_names[static_cast<std::size_t>(a.motion)],
                           "motions that a support holds are accepted");
    out_.settle(node, a.motion, a.displacement);
  }

 private:
  const BasicGirder<S>& girder() const { return model_.girder; }
  MemberPlace<S> place(std::size_t member) { return {model_.frame, axes_[member], out_, member}; }
  // names are looked up where they stand, and places are put into words only for a message: an action that is put on
  // again and again allocates nothing
  std::size_t find_chord(const ChordRef& r) const { return r.in(model_.frame.names.chords); }
  std::size_t find_face(const FaceRef& r) const { return r.in(model_.frame.names.faces); }
  static S length_or_zero(const Vec3<S>& v) { return value_of(dot(v, v)) > 0.0 ? length(v) : S(0); }

  Vec3<S> from_axis(std::size_t node) const {
    const int station = model_.frame.nodes[node].address.station;
    const std::size_t n = girder().chords.size();
    Vec3<S> centre{};
    for (std::size_t c = 0; c < n; ++c)
      centre += S(S(1) / S(static_cast<double>(n))) * girder().joint(static_cast<std::size_t>(station), c);
    return model_.frame.nodes[node].at - centre;
  }
  template <class Words>
  void check_reach(const Words& where, const S& from, const S& to) const {
    const double span = value_of(girder().span());
    if (!is_finite(from) || !is_finite(to) || value_of(from) < -1e-9 * span || value_of(to) > span * (1 + 1e-9) || !(value_of(from) < value_of(to)))
      fail<BadDescription>(where(), "it reaches from " + text::number(from) + " m to " + text::number(to) + " m",
                           "rising places from 0 to " + text::number(span) + " m are accepted");
  }
  template <class Words>
  static void check_finite(const Words& where, const Vec3<S>& force, const Vec3<S>& couple) {
    if (!is_finite(force) || !is_finite(couple)) fail<BadDescription>(where(), "the load on it is not finite", "finite loads are accepted");
  }

  const BasicGirderModel<S>& model_;
  const std::vector<MemberAxes<S>>& axes_;
  BasicFrameLoads<S>& out_;
};

}  // namespace detail

/// Adds one action's loads. `axes` are those of the model's members. On a throw `out` may hold part of the action.
template <Scalar S>
void add_action(const BasicGirderModel<S>& model, const std::vector<MemberAxes<S>>& axes, const BasicAction<S>& action,
                BasicFrameLoads<S>& out) {
  std::visit(detail::LoadMaker<S>(model, axes, out), action);
}

template <Scalar S>
std::vector<MemberAxes<S>> axes_of_members(const BasicFrame<S>& frame) {
  std::vector<MemberAxes<S>> out;
  out.reserve(frame.members.size());
  for (const BasicMember<S>& m : frame.members) out.push_back(axes_of(frame, m));
  return out;
}

}  // namespace baywork
