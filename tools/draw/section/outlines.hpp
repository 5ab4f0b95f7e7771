// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <functional>
#include <vector>

#include "geometry/mesh.hpp"

namespace quoin::tools {

/// A directed edge between two numbered places.
struct Edge {
  std::size_t from = 0;
  std::size_t to = 0;
  auto operator<=>(const Edge&) const = default;
};

/// Edges joined end to end into closed loops; as many edges must arrive at a place as leave it.
[[nodiscard]] std::vector<std::vector<std::size_t>> loops(std::vector<Edge> edges);

/// Edges that bound what `chosen` accepts, with it on their left, in a grid of `columns` by `rows`
/// cells; nothing lies beyond the grid. Place (i, j) has the number j * (columns + 1) + i.
using Chosen = std::function<bool(const geometry::Fill&)>;
using CellAt = std::function<const geometry::Cell&(std::size_t, std::size_t)>;
[[nodiscard]] std::vector<Edge> boundary(std::size_t columns, std::size_t rows, const CellAt& cell,
                                         const Chosen& chosen);

/// The outlines of what `chosen` accepts in a section, in its coordinates, holes included.
[[nodiscard]] std::vector<geometry::Outline> outlines(const geometry::Section& section,
                                                      const Chosen& chosen);

}  // namespace quoin::tools
