// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <map>
#include <vector>

#include "geometry/section.hpp"

namespace quoin::geometry {

/// How one strip (a column or a row of the section) is cut into cells. Cuts are told by a parameter
/// from 0 to 1 along the strip; towards an end where the field has a corner equal steps of the
/// parameter make shorter and shorter cells.
struct Strip {
  std::vector<double> cuts;  ///< inner lines, ascending, each strictly between 0 and 1
  bool finer_at_start = false;
  bool finer_at_end = false;
  /// Strips that a sloping edge crosses from corner to corner are bound together: they have the
  /// same cuts, the same from either end. Strips of one number are bound; 0: free.
  std::uint32_t bond = 0;

  [[nodiscard]] std::size_t cells() const { return cuts.size() + 1; }
};

/// How a whole section is cut.
struct Subdivision {
  std::vector<Strip> columns;
  std::vector<Strip> rows;
};

/// Cells of a strip at distance s from a corner of the field have width proportional to
/// s^(1 - 1 / grading_exponent).
inline constexpr double grading_exponent = 2.0;

/// A subdivision suited to a section: strips that end on a line with a corner of the field grow
/// finer towards it, in step with their neighbours. About `cells_per_metre` cells fall on a strip
/// of one metre, and no strip with material has fewer than two.
[[nodiscard]] Subdivision subdivision_of(const Section& section, double cells_per_metre);

/// The same with every cell of material cut in two; each old line stays a line.
[[nodiscard]] Subdivision doubled(Subdivision subdivision);

/// The same without every second line between those of the section: the first, the third and so on
/// of each strip go. The opposite of doubled.
[[nodiscard]] Subdivision halved(Subdivision subdivision);

/// The same with some cells cut in two, and with them those that bonds ask for. Shape: one flag a
/// column and a row of cells of the mesh.
[[nodiscard]] Subdivision bisected(Subdivision subdivision, const std::vector<char>& columns,
                                   const std::vector<char>& rows);

/// How many nodes a mesh of this subdivision has.
[[nodiscard]] std::size_t nodes(const Subdivision& subdivision);

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
