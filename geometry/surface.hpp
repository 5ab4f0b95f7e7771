// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "geometry/facing.hpp"
#include "geometry/mesh.hpp"

namespace quoin::geometry {

/// The side or diagonal of one cell where a material meets a space. Walking from node `from` to
/// node `to` the material lies on the left, the space on the right.
struct Face {
  SpaceId space;
  RegionId region;
  std::size_t from = 0;
  std::size_t to = 0;
  double length = 0.0;  ///< m; the true one where a stepped line stands for a slope
  Facing facing = Facing::sideways;
};

/// Every face of a mesh, in a fixed order.
[[nodiscard]] std::vector<Face> faces(const Mesh& mesh);

/// Faces joined end to end into the developed surface of one air, walked with the material on the
/// left.
struct Surface {
  SpaceId air;
  bool closed = false;        ///< ends where it began (a hollow)
  std::vector<Face> faces;    ///< in order; the first begins at `from` of the first
  std::vector<double> along;  ///< distance of each node from the start, m. Shape: faces.size() + 1

  [[nodiscard]] std::size_t node(std::size_t k) const {
    return k < faces.size() ? faces[k].from : faces.back().to;
  }
};

/// The surfaces of a mesh; spaces of the same air are walked as one.
/// Shape: `air` gives the air of each space.
[[nodiscard]] std::vector<Surface> surfaces(const Mesh& mesh, const Per<SpaceId, SpaceId>& air);

}  // namespace quoin::geometry
