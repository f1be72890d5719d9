// SPDX-License-Identifier: MIT
// The box as a run of equal cells: what the middle does is worked out, and nothing else.
#pragma once

#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

#include <baywork/solve/uniform_run.hpp>

#include "job.hpp"

namespace bench {

/// Cells of two bays, since its diagonals alternate. Like the others it starts from checked members. Nothing is kept from
/// load to load but memory: every solution doubles anew, so that all its rows measure the same.
class ChainUniform {
 public:
  static constexpr const char* name = "chain_uniform";
  static bool takes(std::size_t bays) { return bays % 4 == 0; }  // the middle is a station between cells

  explicit ChainUniform(const Job& job, std::size_t count = 1) : mid_joint_(job.mid_node % joints) {
    GirderModel cell = model_of(girder(Kind::box, 2));
    cell.frame.supports.clear();
    RunLayout layout;
    layout.cells = job.bays / 2;
    for (std::size_t j = 0; j < joints; ++j) {
      layout.first.push_back(j);
      layout.last.push_back(2 * joints + j);
    }
    for (const Support& s : job.prepared.frame.supports)
      layout.supports.push_back({s.node / joints / 2, s.node % joints, s.motion});
    loads_.resize(count);
    for (std::size_t k = 0; k < count; ++k) {
      loads_[k].at.push_back({layout.cells - 1, {}});
      for (NodeLoad l : job.loads.on_nodes) {
        if (l.node >= 3 * joints) break;
        l.force = static_cast<double>(1 + k) * l.force;
        (l.node < 2 * joints ? loads_[k].everywhere : loads_[k].at[0].loads).on_nodes.push_back(l);
      }
    }
    wanted_.stations = {layout.cells / 2};
    run_.emplace(std::move(cell.frame), std::move(layout));
  }
  void solve() {
    for (const RunLoads& l : loads_) run_->solve(l, wanted_, answer_, space_);
  }
  /// Six motions of the middle joint under the last load.
  const double* middle() const { return answer_.stations.front().motions.data() + 6 * mid_joint_; }

 private:
  static constexpr std::size_t joints = 4;

  std::size_t mid_joint_;
  std::vector<RunLoads> loads_;
  RunWanted wanted_;
  std::optional<UniformRun> run_;
  RunAnswer answer_;
  RunWorkspace space_;
};

}  // namespace bench
