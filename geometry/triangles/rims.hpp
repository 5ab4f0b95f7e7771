// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "geometry/surface.hpp"
#include "geometry/triangles/nodes.hpp"

namespace quoin::geometry {

/// The surfaces of a section in triangles; each border is two faces, from its first node to its
/// middle and on to its last. Spaces of the same air are walked as one.
[[nodiscard]] std::vector<Surface> surfaces(const NodedTriangles& nodes,
                                            const Per<SpaceId, SpaceId>& air);

}  // namespace quoin::geometry
