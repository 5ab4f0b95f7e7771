// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "geometry/triangles/nodes.hpp"
#include "geometry/triangles/refinement.hpp"
#include "solver/triangles/window.hpp"

namespace quoin::solver {

/// Where triangles have to be smaller, and how much, so that a sum of errors becomes 1 at the most.
/// Shape: blame has one value for each element, its share in the sum. An error of the second degree
/// falls with the third power of the area of an element, so areas go by the cube root of the blame;
/// where rims and materials bend or meet the field is not smooth, and areas shrink towards there.
[[nodiscard]] geometry::AreaMap graded_areas(const geometry::Triangles& triangles,
                                             const geometry::NodedTriangles& nodes,
                                             const std::vector<double>& blame);

/// Asks for triangles as small as a window where it lies, and growing away from it.
void ask_for_window(geometry::AreaMap& map, const geometry::Triangles& triangles,
                    const Window& window);

}  // namespace quoin::solver
