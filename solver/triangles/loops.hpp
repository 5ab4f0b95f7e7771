// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "geometry/triangles/nodes.hpp"

namespace quoin::solver {

/// A way for heat from one closed rim of a piece of material to another: a flux of one that enters
/// by a side on the one, runs through a chain of elements and leaves by a side on the other. A
/// stream function that comes back to its value round every hole has no such flux.
struct Chain {
  struct Link {
    std::uint32_t element = 0;
    std::array<double, 6> stream{};  ///< of the flux, at the nodes of the element
  };
  std::vector<Link> links;
};

/// One chain for each rim that meets a space beyond the first such rim of its piece.
[[nodiscard]] std::vector<Chain> chains_of(const geometry::NodedTriangles& nodes);

}  // namespace quoin::solver
