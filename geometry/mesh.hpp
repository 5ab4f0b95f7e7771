// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <map>
#include <vector>

#include "geometry/section.hpp"
#include "geometry/subdivision.hpp"

namespace quoin::geometry {

/// A tensor grid on a section, with nodes on every line of the section. Sloping edges run along
/// diagonals of cells. Shape: nx() by ny() nodes, node (i, j) at index j * nx() + i; columns() by
/// rows() cells, cell (i, j) between nodes i, i + 1 and j, j + 1. Where fans of material touch in
/// one point alone, heat does not pass from one to the other: one of them has the node of the grid,
/// and each further one a node of its own, numbered on from nx() * ny().
struct Mesh {
  Section section;
  std::vector<double> x;  ///< of the nodes, ascending, m
  std::vector<double> y;
  std::vector<std::uint32_t> section_column;  ///< of each cell column
  std::vector<std::uint32_t> section_row;     ///< of each cell row
  std::vector<Cell>
      cells;  ///< one by one where the section has sloping edges, else empty: see cell()
  std::vector<std::size_t> further = {};  ///< of each further node the one of the grid at its place
  /// By node of the grid at such a point the nodes of the material to its SW, SE, NW and NE.
  std::map<std::size_t, std::array<std::size_t, 4>> touching = {};

  [[nodiscard]] std::size_t nx() const { return x.size(); }
  [[nodiscard]] std::size_t ny() const { return y.size(); }
  [[nodiscard]] std::size_t columns() const { return x.size() - 1; }
  [[nodiscard]] std::size_t rows() const { return y.size() - 1; }
  [[nodiscard]] std::size_t node(std::size_t i, std::size_t j) const { return j * x.size() + i; }
  /// Of the grid and further ones.
  [[nodiscard]] std::size_t nodes() const { return x.size() * y.size() + further.size(); }
  /// The node of the grid at the place of a node.
  [[nodiscard]] std::size_t on_grid(std::size_t node) const {
    const std::size_t grid = x.size() * y.size();
    return node < grid ? node : further[node - grid];
  }
  [[nodiscard]] Point place(std::size_t node) const {
    const std::size_t at = on_grid(node);
    return {x[at % x.size()], y[at / x.size()]};
  }
  /// The node that the material of cell (i, j) has at one of its corners.
  [[nodiscard]] std::size_t corner(std::size_t i, std::size_t j, bool east, bool north) const {
    const std::size_t at = node(east ? i + 1 : i, north ? j + 1 : j);
    if (touching.empty()) return at;
    const auto found = touching.find(at);
    // The cell lies to the west of its eastern corners.
    return found == touching.end() ? at : found->second[(north ? 0u : 2u) + (east ? 0u : 1u)];
  }
  [[nodiscard]] const Cell& cell(std::size_t i, std::size_t j) const {
    return cells.empty() ? section.cell(section_column[i], section_row[j])
                         : cells[j * columns() + i];
  }
};

/// Throws: invalid_argument where the two strips of a divided cell are cut unequally.
[[nodiscard]] Mesh mesh_of(const Section& section, const Subdivision& subdivision);

}  // namespace quoin::geometry
