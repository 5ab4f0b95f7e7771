// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geometry/recipes/drawing.hpp"

namespace quoin::geometry {

/// The inputs of what closes the cavities of a wall where an opening cuts through them: one brick,
/// a slate, a strip of insulation. Without it they lie open to the air that meets their ends.
template <class Visitor>
void describe_closer(Visitor& visit, RegionId& closer, double& depth) {
  visit.optional_material("closer", closer, "common brick",
                          "closes the air layers of the wall at the opening");
  visit.length("closer depth", depth, 0.001, 2.0, "from the opening into the wall");
}

/// Why a closer cannot be built into a wall of some length; nothing where it can, or there is none.
[[nodiscard]] std::optional<std::string> objection_to_closer(const std::vector<Layer>& wall,
                                                             RegionId closer, double depth,
                                                             double length);

}  // namespace quoin::geometry
