// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/accuracy/estimate.hpp"
#include "solver/accuracy/gap.hpp"
#include "solver/scheme/both_schemes.hpp"

namespace quoin::solver {

/// Temperatures of a section by both schemes.
class BothTemperatures {
 public:
  BothTemperatures(const BothSchemes& both, const Physics& physics,
                   const SpaceTemperatures& temperatures);

  [[nodiscard]] const std::vector<double>& nodes() const { return nodes_; }  ///< degC
  [[nodiscard]] Twin twin() const { return {nodes_, cells_, spaces_}; }

 private:
  std::vector<double> nodes_;
  std::vector<double> cells_;
  Per<SpaceId, double> spaces_;
};

/// The temperature of one place on one mesh.
struct PlaceValue {
  TwoSided value;
  Blame blame;  ///< K
};

/// The temperature at a place by the nodes, and what the gap to the cells says that it lacks: half
/// the gap between the temperatures and the influence of a source at that place, as the middle of
/// the two schemes is nearer to the truth than either. A place between nodes is read between them,
/// with the influence of the nearest. Throws: SolveError.
[[nodiscard]] PlaceValue place_value(const BothSchemes& both, const Physics& physics,
                                     const BothTemperatures& temperatures, geometry::Point place);

/// The same at a node.
[[nodiscard]] PlaceValue value_at_node(const BothSchemes& both, const Physics& physics,
                                       const BothTemperatures& temperatures, std::size_t node);

}  // namespace quoin::solver
