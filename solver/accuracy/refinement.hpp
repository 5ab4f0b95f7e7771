// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <vector>

#include "solver/accuracy/blame.hpp"

namespace quoin::solver {

/// No column or row is made narrower than this, m. Towards a crossing of four materials of great
/// contrast the field has no scale of its own, and cells would shrink until rounding eats them.
inline constexpr double narrowest_cell = 1e-8;

/// A subdivision with those columns and rows of cells cut in two that together bear most of the
/// blame, of those that are wide enough; the same one where none is. The shortfall, how many times
/// as wide as wanted the worst band is, above 1, says how much is cut. Shape: the mesh of that
/// subdivision.
[[nodiscard]] geometry::Subdivision cut_where_it_matters(geometry::Subdivision subdivision,
                                                         const geometry::Mesh& mesh,
                                                         const Blame& blame, double shortfall);

/// Whether it is any use to go on: told by how much the shortfall has shrunk while the grid grew.
class Progress {
 public:
  /// Notes a grid and its shortfall: how many times as wide as wanted the worst band is.
  void note(std::size_t nodes, double shortfall) { steps_.push_back({nodes, shortfall}); }

  /// False where, at the pace of the last grids, what is wanted would take more than `limit` nodes.
  /// Small grids are always gone on from: they cost nothing and their pace says little.
  [[nodiscard]] bool is_worth_while(std::size_t limit) const;

 private:
  struct Step {
    std::size_t nodes;
    double shortfall;
  };
  std::vector<Step> steps_;
};

}  // namespace quoin::solver
