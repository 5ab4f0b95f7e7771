// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <vector>

#include "geometry/section.hpp"

namespace quoin::geometry {

/// How one strip (a column or a row of the section) is cut into cells.
struct Strip {
  std::uint32_t cells = 1;
  bool finer_at_start =
      false;  ///< cells shrink towards its lower end, where the field has a corner
  bool finer_at_end = false;
};

/// How a whole section is cut.
struct Subdivision {
  std::vector<Strip> columns;
  std::vector<Strip> rows;
};

/// A subdivision suited to a section: strips that end on a line with a corner of the field grow
/// finer towards it, as the power `grading_exponent` of the distance, in step with their
/// neighbours. `cells_per_metre` cells fall on a strip of one metre.
[[nodiscard]] Subdivision subdivision_of(const Section& section, double cells_per_metre);

/// The same with every strip cut into twice as many cells; each old line stays a line.
[[nodiscard]] Subdivision doubled(Subdivision subdivision);

/// Cells of a strip of length L at distance s from a corner have width proportional to
/// s^(1 - 1 / grading_exponent).
inline constexpr double grading_exponent = 2.5;

/// A tensor grid on a section, with nodes on every line of the section.
/// Shape: nx() by ny() nodes, node (i, j) at index j * nx() + i; columns() by rows() cells, cell
/// (i, j) between nodes i, i + 1 and j, j + 1.
struct Mesh {
  Section section;
  std::vector<double> x;  ///< of the nodes, ascending, m
  std::vector<double> y;
  std::vector<std::uint32_t> section_column;  ///< of each cell column
  std::vector<std::uint32_t> section_row;     ///< of each cell row

  [[nodiscard]] std::size_t nx() const { return x.size(); }
  [[nodiscard]] std::size_t ny() const { return y.size(); }
  [[nodiscard]] std::size_t columns() const { return x.size() - 1; }
  [[nodiscard]] std::size_t rows() const { return y.size() - 1; }
  [[nodiscard]] std::size_t node(std::size_t i, std::size_t j) const { return j * x.size() + i; }
  [[nodiscard]] Point place(std::size_t node) const {
    return {x[node % x.size()], y[node / x.size()]};
  }
  [[nodiscard]] const Cell& cell(std::size_t i, std::size_t j) const {
    return section.cell(section_column[i], section_row[j]);
  }
};

[[nodiscard]] Mesh mesh_of(const Section& section, const Subdivision& subdivision);

}  // namespace quoin::geometry
