// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cmath>
#include <cstdint>
#include <utility>
#include <vector>

#include "geometry/mesh.hpp"

namespace quoin::testing {

/// A mesh of a section with `n` equal cells on each strip.
inline geometry::Mesh evenly_cut(geometry::Section section, std::uint32_t n) {
  geometry::Mesh mesh;
  const auto cut = [n](const std::vector<double>& lines, std::vector<double>& nodes,
                       std::vector<std::uint32_t>& strips) {
    nodes.push_back(lines.front());
    for (std::uint32_t s = 0; s + 1 < lines.size(); ++s) {
      for (std::uint32_t k = 1; k <= n; ++k) {
        nodes.push_back(k == n ? lines[s + 1] : lines[s] + (lines[s + 1] - lines[s]) * k / n);
        strips.push_back(s);
      }
    }
  };
  cut(section.x, mesh.x, mesh.section_column);
  cut(section.y, mesh.y, mesh.section_row);
  mesh.section = std::move(section);
  return mesh;
}

inline geometry::Cell solid(std::size_t region = 0) {
  return {geometry::RegionId(region), geometry::RegionId(region), geometry::Split::none};
}

inline geometry::Section section(std::vector<double> x, std::vector<double> y,
                                 std::vector<geometry::Cell> cells) {
  geometry::Section made;
  made.x = std::move(x);
  made.y = std::move(y);
  made.cells = std::move(cells);
  return made;
}

/// A unit square of one material in n by n cells.
inline geometry::Mesh square(std::uint32_t n) {
  return evenly_cut(section({0, 1}, {0, 1}, {solid()}), n);
}

/// A unit square with the middle ninth missing.
inline geometry::Mesh square_with_hole() {
  std::vector<geometry::Cell> cells(9, solid());
  cells[4] = {};
  return evenly_cut(section({0, 1.0 / 3, 2.0 / 3, 1}, {0, 1.0 / 3, 2.0 / 3, 1}, cells), 5);
}

/// A unit square of two materials that meet at x = 0.5.
inline geometry::Mesh two_layers() {
  return evenly_cut(section({0, 0.5, 1}, {0, 1}, {solid(0), solid(1)}), 4);
}

template <class Function>
std::vector<double> values(const geometry::Mesh& mesh, Function function) {
  std::vector<double> all;
  for (std::size_t n = 0; n < mesh.nx() * mesh.ny(); ++n) {
    all.push_back(function(mesh.place(n).x, mesh.place(n).y));
  }
  return all;
}

inline double length(const geometry::Outline& line) {
  double sum = 0.0;
  for (std::size_t k = 1; k < line.size(); ++k) {
    sum += std::hypot(line[k].x - line[k - 1].x, line[k].y - line[k - 1].y);
  }
  return sum;
}

/// Signed: counter-clockwise outlines count positive, holes negative.
inline double area(const std::vector<geometry::Outline>& outlines) {
  double sum = 0.0;
  for (const geometry::Outline& outline : outlines) {
    for (std::size_t k = 0; k < outline.size(); ++k) {
      const geometry::Point a = outline[k], b = outline[(k + 1) % outline.size()];
      sum += (a.x * b.y - b.x * a.y) / 2;
    }
  }
  return sum;
}

}  // namespace quoin::testing
