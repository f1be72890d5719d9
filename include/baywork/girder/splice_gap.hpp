// SPDX-License-Identifier: MIT
// Splices between two end frames: the gap that the chords bridge alone, with the connector somewhere in it.
#pragma once

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/girder/girder.hpp>
#include <baywork/girder/validate.hpp>

namespace baywork {

/// Between the last cross members of one module and the first of the next: no bar crosses it, so it is an open panel of
/// this length, and its shear bends the chords by V_ch length/2 at the end frames.
struct SpliceGap {
  double length = 0;  ///< between the two end frames' axes [m]
  double offset = 0;  ///< of the connectors from mid-gap, along the girder [m]
};

namespace detail {

template <class S>
class GapMaker {
 public:
  GapMaker(const BasicGirder<S>& g, const SpliceGap& gap) : old_(g), gap_(gap) {}

  BasicGirder<S> make() {
    check();
    BasicGirder<S> g = old_;
    g.stations.clear();
    g.joints.clear();
    g.splices.clear();
    g.diaphragms.at.clear();
    for (std::size_t i = 0; i < old_.stations.size(); ++i) {
      const bool splice = old_.is_splice(i), frame = old_.diaphragms.has(i, old_.bays());
      if (!splice) {
        add(g, i, S(0), frame);
        continue;
      }
      add(g, i, S(-gap_.length / 2), frame);
      g.splices.push_back(g.stations.size());
      add(g, i, S(gap_.offset), false);
      add(g, i, S(gap_.length / 2), frame);
    }
    g.diaphragms.ends = false;
    g.diaphragms.every = 0;
    for (BasicGirderFace<S>& f : g.faces) f.panels = panels(f.panels);
    validate(g);
    return g;
  }

 private:
  void check() const {
    validate(old_);
    require::positive(gap_.length, "splice gap", "length");
    require::finite(gap_.offset, "splice gap", "offset from its middle");
    if (!(magnitude(gap_.offset) < gap_.length / 2))
      fail<BadDescription>("splice gap", "the connectors lie outside it",
                           "an offset of less than half the gap is accepted");
    for (const std::size_t s : old_.splices)
      for (const std::size_t bay : {s - 1, s})
        if (!(gap_.length < value_of(S(old_.stations[bay + 1] - old_.stations[bay]))))
          fail<BadDescription>("bay " + std::to_string(bay + 1), "the splice gap is as long as the bay",
                               "a shorter gap is accepted");
    for (const BasicGirderFace<S>& f : old_.faces)
      if (!f.panels.empty() && f.panels.span() != 1)
        fail<BadDescription>(f.name + " face", "its panels span several bays",
                             "with splice gaps, panels of one bay are accepted");
  }

  /// A station at `off` from an old one; its joints lie on the straight chords of the bay there.
  void add(BasicGirder<S>& g, std::size_t i, const S& off, bool diaphragm) const {
    if (diaphragm) g.diaphragms.at.push_back(g.stations.size());
    g.stations.push_back(S(old_.stations[i] + off));
    const double side = value_of(off);
    const std::size_t j = side < 0.0 ? i - 1 : side > 0.0 ? i + 1 : i;
    const S t = j == i ? S(0) : S(off / (old_.stations[j] - old_.stations[i]));
    for (std::size_t c = 0; c < old_.chords.size(); ++c)
      g.joints.push_back(old_.joint(i, c) + t * (old_.joint(j, c) - old_.joint(i, c)));
  }

  BasicFace<S> panels(const BasicFace<S>& face) const {
    if (face.empty()) return face;
    std::vector<BasicAnyPanel<S>> out;
    for (std::size_t b = 0; b < old_.bays(); ++b) {
      if (old_.is_splice(b))
        out.resize(out.size() + 2);  // nothing crosses the gap; two, so that panels alternate as before
      out.push_back(face.panel(b));
    }
    return BasicFace<S>(std::move(out));
  }

  const BasicGirder<S>& old_;
  SpliceGap gap_;
};

}  // namespace detail

/// The girder with a gap at each splice, half of it taken from the bay on either side: end frames (cross members,
/// diaphragms) on both sides of the gap, and the splice at a station of its own in it.
template <Scalar S>
BasicGirder<S> with_splice_gaps(const BasicGirder<S>& girder, const SpliceGap& gap) {
  return detail::GapMaker<S>(girder, gap).make();
}

}  // namespace baywork
