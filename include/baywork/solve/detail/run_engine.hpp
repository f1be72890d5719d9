// SPDX-License-Identifier: MIT
// The way from a run's description to its answer, in one number type.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <deque>
#include <type_traits>
#include <utility>
#include <vector>

#include <baywork/solve/detail/certify.hpp>
#include <baywork/solve/detail/prepared_frame.hpp>
#include <baywork/solve/detail/run_cell.hpp>
#include <baywork/solve/detail/run_segment.hpp>
#include <baywork/solve/detail/run_station.hpp>
#include <baywork/solve/detail/run_supports.hpp>
#include <baywork/solve/run_description.hpp>

namespace baywork::detail {

/// Cuts the run at its supports, at cells loaded on their own and at what is asked for; puts the lengths in between
/// together from cells; joins what lies between two supports; solves for the supports; goes back. Keeps its memory from
/// one call to the next. S is the scalar of the description, R the one to compute in.
template <class S, class R>
class RunEngine {
 public:
  void solve(const PreparedFrame<S>& prepared, const RunStation& station, const BasicRunLayout<S>& layout,
             const BasicRunLoads<S>& loads, const RunWanted& wanted, BasicRunAnswer<S>& answer) {
    const RunCell<S, R> cell(prepared, station);
    m_ = cell.locals();
    find_cuts(station, layout, loads, wanted);
    make_segments(prepared, station, layout, loads, cell);
    join_spans();
    place_ties(station, layout, cell);
    assembly_.solve(m_, holds_, spans_, [&](const auto& add) { close(prepared, station, layout, loads, cell, add); });
    find_stations();
    tell(prepared, station, layout, loads, wanted, cell, answer);
  }

 private:
  static constexpr std::size_t none = static_cast<std::size_t>(-1);

  struct Piece {
    std::size_t segment = none;  ///< in segments_
    std::size_t whole = none;    ///< in segments_: all pieces from the support on the left to this one
  };

  RunSegment<R>& segment(std::size_t i) { return segments_[i]; }
  std::size_t new_segment() {
    if (used_ == segments_.size()) segments_.emplace_back();
    return used_++;
  }

  /// Loads on the run's last station alone: they act on its end and need no cell of their own.
  static bool closes_run(const RunStation& station, const BasicRunLayout<S>& layout, const BasicCellLoads<S>& l) {
    return l.cell + 1 == layout.cells &&
           std::all_of(l.loads.on_nodes.begin(), l.loads.on_nodes.end(), [&](const auto& n) { return station.on_last[n.node] != 0; }) &&
           std::all_of(l.loads.on_members.begin(), l.loads.on_members.end(), [&](const auto& m) { return station.closes[m.member] != 0; });
  }

  void find_cuts(const RunStation& station, const BasicRunLayout<S>& layout, const BasicRunLoads<S>& loads, const RunWanted& wanted) {
    held_.assign({0, layout.cells});
    for (const BasicRunSupport<S>& s : layout.supports) held_.push_back(s.station);
    sort_and_thin(held_);
    cuts_ = held_;
    loaded_.clear();
    for (const BasicCellLoads<S>& l : loads.at)
      if (!closes_run(station, layout, l)) loaded_.push_back(l.cell);
    sort_and_thin(loaded_);
    const auto cut_out = [this](const std::vector<std::size_t>& cells) {
      for (const std::size_t c : cells) {
        cuts_.push_back(c);
        cuts_.push_back(c + 1);
      }
    };
    cut_out(loaded_);
    cut_out(wanted.cells);
    cuts_.insert(cuts_.end(), wanted.stations.begin(), wanted.stations.end());
    sort_and_thin(cuts_);
  }
  static void sort_and_thin(std::vector<std::size_t>& list) {
    std::sort(list.begin(), list.end());
    list.erase(std::unique(list.begin(), list.end()), list.end());
  }
  static std::size_t place_in(const std::vector<std::size_t>& sorted, std::size_t v) {
    return static_cast<std::size_t>(std::lower_bound(sorted.begin(), sorted.end(), v) - sorted.begin());
  }

  void make_segments(const PreparedFrame<S>& prepared, const RunStation& station, const BasicRunLayout<S>& layout,
                     const BasicRunLoads<S>& loads, const RunCell<S, R>& cell) {
    used_ = 0;
    lengths_.clear();
    everywhere_.assign(6 * prepared.frame.nodes.size(), R(0));
    cell.reduce(loads.everywhere, false, everywhere_);
    lengths_.push_back({1, new_segment()});
    cell.eliminate(everywhere_, segment(lengths_[0].second));
    pieces_.assign(cuts_.size() - 1, Piece{});
    equal_.clear();
    for (std::size_t i = 0; i + 1 < cuts_.size(); ++i) {
      if (!std::binary_search(loaded_.begin(), loaded_.end(), cuts_[i])) {
        equal_.push_back(i);
        continue;
      }
      force_ = everywhere_;
      for (const BasicCellLoads<S>& l : loads.at)
        if (l.cell == cuts_[i] && !closes_run(station, layout, l)) cell.reduce(l.loads, false, force_);
      pieces_[i].segment = new_segment();
      cell.eliminate(force_, segment(pieces_[i].segment));
    }
    // the shorter first: what is left and what is right of mid-span may differ by a cell
    const auto length = [this](std::size_t i) { return cuts_[i + 1] - cuts_[i]; };
    std::sort(equal_.begin(), equal_.end(), [&](std::size_t i, std::size_t j) { return length(i) < length(j); });
    for (const std::size_t i : equal_) pieces_[i].segment = repeated(length(i));
  }

  /// The segment of so many equal cells: what two known lengths make, else n/p of them and the others, p the least prime
  /// factor. Long chains of additions are avoided so (the factor method for powers: D. E. Knuth, The Art of Computer
  /// Programming 2, 4.6.3, value from memory); where p is not small, one cell and the others.
  std::size_t repeated(std::size_t length) {
    const auto known = [this](std::size_t n) {
      return std::find_if(lengths_.begin(), lengths_.end(), [n](const auto& l) { return l.first == n; });
    };
    if (const auto at = known(length); at != lengths_.end()) return at->second;
    std::size_t part = 1;
    for (const std::size_t p : {13U, 11U, 7U, 5U, 3U, 2U})
      if (length % p == 0) part = length / p;
    for (const auto& l : lengths_)
      if (2 * l.first < length && known(length - l.first) != lengths_.end()) part = l.first;
    std::size_t left = repeated(length - part), right = repeated(part);
    const std::size_t joined = new_segment();
    if (segment(right).coupled && !segment(left).coupled) std::swap(left, right);  // a' of the right one is left out
    joiner_.join(m_, segment(left), segment(right), segment(joined));
    lengths_.push_back({length, joined});
    return joined;
  }

  void join_spans() {
    spans_.clear();
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
      const bool begins = std::binary_search(held_.begin(), held_.end(), cuts_[i]);
      if (begins) {
        pieces_[i].whole = pieces_[i].segment;
      } else {
        pieces_[i].whole = new_segment();
        joiner_.join(m_, segment(pieces_[i - 1].whole), segment(pieces_[i].segment), segment(pieces_[i].whole));
      }
      if (std::binary_search(held_.begin(), held_.end(), cuts_[i + 1])) spans_.push_back(&segment(pieces_[i].whole));
    }
  }

  void place_ties(const RunStation& station, const BasicRunLayout<S>& layout, const RunCell<S, R>& cell) {
    if (holds_.size() != held_.size()) holds_.resize(held_.size());
    for (RunHold<R>& h : holds_) h.ties.clear();
    tie_of_.assign(6 * layout.supports.size(), {none, none});
    for (std::size_t j = 0; j < layout.supports.size(); ++j) {
      const BasicRunSupport<S>& s = layout.supports[j];
      const std::size_t at = place_in(held_, s.station), joint = static_cast<std::size_t>(station.joint_of[s.node]);
      for (std::size_t k = 0; k < 6; ++k) {
        using Kind = typename BasicRestraint<S>::Kind;
        if (s.motion[k].kind == Kind::free || station.local[6 * joint + k] == RunStation::idle) continue;
        RunTie<R> tie;
        for (std::size_t c = 0; c < 6; ++c) {
          Six<R> unit = zero_six<R>();
          unit[c] = R(1);
          tie.lever[c] = carried(unit, cell.arm(joint))[k];
        }
        tie.local = station.local[6 * joint + k];
        if (s.motion[k].kind == Kind::spring) tie.compliance = R(R(1) / R(s.motion[k].stiffness));
        tie.displacement = R(s.motion[k].displacement);
        tie_of_[6 * j + k] = {at, holds_[at].ties.size()};
        holds_[at].ties.push_back(tie);
      }
    }
  }

  /// The last station's own members, the loads on them, and loads on its joints that came without a cell's.
  template <class Add>
  void close(const PreparedFrame<S>& prepared, const RunStation& station, const BasicRunLayout<S>& layout,
             const BasicRunLoads<S>& loads, const RunCell<S, R>& cell, const Add& add) {
    force_.assign(6 * prepared.frame.nodes.size(), R(0));
    cell.reduce(loads.everywhere, true, force_);
    for (const BasicCellLoads<S>& l : loads.at)
      if (l.cell + 1 == layout.cells) cell.reduce(l.loads, true, force_, closes_run(station, layout, l));
    const std::size_t one = m_ + 6;
    const Six<R> whole = cell.closing(force_, [&](int i, int j, const R& v) {
      const std::size_t row = static_cast<std::size_t>(i);
      if (j < 0)
        add(one, row, R(-v));
      else
        add(row, static_cast<std::size_t>(j), v);
    });
    for (std::size_t c = 0; c < 6; ++c) add(one, m_ + c, R(-whole[c]));
  }

  /// From the supports to the stations in between: N and local motions from the right, rigid motions from the left.
  void find_stations() {
    const std::size_t q = pieces_.size();
    if (locals_.size() < q + 1) locals_.resize(q + 1);
    rigid_.assign(q + 1, zero_six<R>());
    resultants_.assign(q, zero_six<R>());
    std::size_t hold = holds_.size() - 1;
    locals_[q] = holds_[hold].a;
    rigid_[q] = holds_[hold].r;
    for (std::size_t i = q; i-- > 0;) {
      const bool begins = pieces_[i].whole == pieces_[i].segment;
      const bool ends = std::binary_search(held_.begin(), held_.end(), cuts_[i + 1]);
      if (ends) {
        --hold;
        resultants_[i] = holds_[hold].N;
      } else {
        const RunSegment<R>& next = segment(pieces_[i + 1].segment);
        const Six<R> back = resultant(resultants_[i + 1], next.reach);
        for (std::size_t c = 0; c < 6; ++c) resultants_[i][c] = R(back[c] + next.load[c]);
        rigid_[i + 1] = carried(holds_[hold].r, segment(pieces_[i].whole).reach);
        const Six<R> s = relative_motion(segment(pieces_[i].whole), m_, resultants_[i], holds_[hold].a.data(),
                                         locals_[i + 1].data());
        for (std::size_t c = 0; c < 6; ++c) rigid_[i + 1][c] += s[c];
      }
      if (begins) {
        locals_[i] = holds_[hold].a;
        rigid_[i] = holds_[hold].r;
      } else {
        segment(pieces_[i].whole).inside_from(m_, resultants_[i], holds_[hold].a.data(), locals_[i + 1].data(), x_);
        locals_[i].assign(x_.begin(), x_.begin() + static_cast<std::ptrdiff_t>(m_));
      }
    }
  }

  static S plain(const R& v) {
    if constexpr (std::is_same_v<R, S>)
      return v;
    else
      return rounded<S>(v);
  }

  void tell(const PreparedFrame<S>& prepared, const RunStation& station, const BasicRunLayout<S>& layout,
            const BasicRunLoads<S>& loads, const RunWanted& wanted, const RunCell<S, R>& cell,
            BasicRunAnswer<S>& answer) {
    const auto copy = [&](std::vector<S>& to) {
      to.resize(u_.size());
      for (std::size_t i = 0; i < u_.size(); ++i) to[i] = plain(u_[i]);
    };
    answer.stations.resize(wanted.stations.size());
    for (std::size_t j = 0; j < wanted.stations.size(); ++j) {
      const std::size_t at = place_in(cuts_, wanted.stations[j]);
      answer.stations[j].station = wanted.stations[j];
      cell.station_motions(rigid_[at], locals_[at].data(), u_);
      copy(answer.stations[j].motions);
    }
    answer.cells.resize(wanted.cells.size());
    for (std::size_t j = 0; j < wanted.cells.size(); ++j) {
      const std::size_t at = place_in(cuts_, wanted.cells[j]);
      const Piece& piece = pieces_[at];
      cell.motions(segment(piece.segment), resultants_[at], locals_[at].data(),
                   locals_[at + 1].data(), x_, u_);
      answer.cells[j].cell = wanted.cells[j];
      tell_members(prepared, station, layout, loads, wanted.cells[j], answer.cells[j].members);
      cell.add_rigid(rigid_[at], u_);
      copy(answer.cells[j].motions);
    }
    answer.reactions.resize(layout.supports.size());
    for (std::size_t j = 0; j < layout.supports.size(); ++j) {
      answer.reactions[j] = {layout.supports[j].station, layout.supports[j].node, {}};
      for (std::size_t k = 0; k < 6; ++k) {
        const auto [at, tie] = tie_of_[6 * j + k];
        answer.reactions[j].value[k] = at == none ? S(0) : plain(R(-holds_[at].ties[tie].force));
      }
    }
  }

  /// Forces from the motions u_ against the rigid motion of the cell's first station: no large displacements meet.
  void tell_members(const PreparedFrame<S>& prepared, const RunStation& station, const BasicRunLayout<S>& layout,
                    const BasicRunLoads<S>& loads, std::size_t which, std::vector<BasicMemberAnswer<S>>& out) {
    const BasicFrame<S>& f = prepared.frame;
    wide_.assign(u_.begin(), u_.end());
    loading_.clear(f.members.size());
    prepared.add_loadings(loads.everywhere, loading_);
    for (const BasicCellLoads<S>& l : loads.at)
      if (l.cell == which) prepared.add_loadings(l.loads, loading_);
    BasicMemberAnswer<S> nothing;
    for (std::array<S, 6>* six : {&nothing.start, &nothing.end, &nothing.modes}) six->fill(S(0));
    out.assign(f.members.size(), nothing);
    for (std::size_t i = 0; i < f.members.size(); ++i)
      if (station.closes[i] == 0 || which + 1 == layout.cells) out[i] = member_answer(prepared, i, wide_, loading_);
  }
  std::size_t m_ = 0, used_ = 0;
  std::vector<std::size_t> held_, loaded_, cuts_;  ///< stations with supports or ends; cells with loads; all cuts
  std::deque<RunSegment<R>> segments_;
  std::vector<std::pair<std::size_t, std::size_t>> lengths_;  ///< length and segment
  std::vector<Piece> pieces_;                                 ///< from cut to cut
  std::vector<std::size_t> equal_;                            ///< pieces without loads of their own
  RunJoiner<R> joiner_;
  std::vector<const RunSegment<R>*> spans_;
  std::vector<RunHold<R>> holds_;
  std::vector<std::pair<std::size_t, std::size_t>> tie_of_;  ///< six per support: hold and tie
  RunAssembly<R> assembly_;
  std::vector<Six<R>> rigid_, resultants_;  ///< r at each cut; N at each piece's right end
  std::vector<std::vector<R>> locals_;
  std::vector<R> everywhere_, force_, x_, u_;
  std::vector<accurate_t<S>> wide_;
  LoadedMembers<accurate_t<S>> loading_;
};

}  // namespace baywork::detail
