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

/// A way for heat out of an element: by one of its sides, and through a chain of further elements
/// to a border that meets a space.
struct WayOut {
  int side = 0;                    ///< of the element
  std::vector<Chain::Link> links;  ///< in no order that matters
  std::uint32_t border = 0;
};

/// The shortest way out of an element.
[[nodiscard]] WayOut way_out_of(const geometry::NodedTriangles& nodes, std::uint32_t element);

/// One chain for each rim that meets a space beyond the first such rim of its piece.
[[nodiscard]] std::vector<Chain> chains_of(const geometry::NodedTriangles& nodes);

}  // namespace quoin::solver
