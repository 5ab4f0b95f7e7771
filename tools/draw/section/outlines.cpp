// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/section/outlines.hpp"

#include <algorithm>
#include <optional>

namespace quoin::tools {
namespace {

using geometry::Cell;
using geometry::CellSide;
using geometry::Point;
using geometry::Split;

/// Whether a cell shows what is chosen along each of its sides.
struct Shown {
  bool west = false, east = false, south = false, north = false;
};

Shown shown(const Cell& cell, const Chosen& chosen) {
  if (cell.split == Split::none) {
    const bool whole = chosen(cell.below);
    return {whole, whole, whole, whole};
  }
  return {chosen(cell.at(CellSide::west)), chosen(cell.at(CellSide::east)),
          chosen(cell.at(CellSide::south)), chosen(cell.at(CellSide::north))};
}

/// Whether b lies on the straight way from a to c.
bool straight(Point a, Point b, Point c) {
  return (b.x - a.x) * (c.y - b.y) == (b.y - a.y) * (c.x - b.x);
}

}  // namespace

std::vector<std::vector<std::size_t>> loops(std::vector<Edge> edges) {
  std::sort(edges.begin(), edges.end());
  std::vector<char> used(edges.size());
  const auto leaving = [&](std::size_t place) -> std::optional<std::size_t> {
    auto edge = std::lower_bound(edges.begin(), edges.end(), Edge{place, 0});
    for (; edge != edges.end() && edge->from == place; ++edge) {
      const auto index = static_cast<std::size_t>(edge - edges.begin());
      if (used[index] == 0) return index;
    }
    return std::nullopt;
  };
  std::vector<std::vector<std::size_t>> all;
  for (std::size_t first = 0; first < edges.size(); ++first) {
    if (used[first] != 0) continue;
    std::vector<std::size_t> loop;
    for (std::optional<std::size_t> at = first; at; at = leaving(edges[*at].to)) {
      used[*at] = 1;
      loop.push_back(edges[*at].from);
    }
    all.push_back(std::move(loop));
  }
  return all;
}

std::vector<Edge> boundary(std::size_t columns, std::size_t rows, const CellAt& cell,
                           const Chosen& chosen) {
  std::vector<Edge> edges;
  const auto add = [&](bool left, bool right, std::size_t from, std::size_t to) {
    if (left && !right) edges.push_back({from, to});
    if (right && !left) edges.push_back({to, from});
  };
  std::vector<Shown> cells;  // each asked for once
  cells.reserve(columns * rows);
  for (std::size_t j = 0; j < rows; ++j) {
    for (std::size_t i = 0; i < columns; ++i) cells.push_back(shown(cell(i, j), chosen));
  }
  const auto at = [&](std::size_t i, std::size_t j) -> const Shown& {
    return cells[j * columns + i];
  };
  const auto place = [&](std::size_t i, std::size_t j) { return j * (columns + 1) + i; };
  for (std::size_t j = 0; j <= rows; ++j) {
    for (std::size_t i = 0; i < columns; ++i) {
      add(j < rows && at(i, j).south, j > 0 && at(i, j - 1).north, place(i, j), place(i + 1, j));
    }
  }
  for (std::size_t j = 0; j < rows; ++j) {
    for (std::size_t i = 0; i <= columns; ++i) {
      add(i > 0 && at(i - 1, j).east, i < columns && at(i, j).west, place(i, j), place(i, j + 1));
      if (i == columns || cell(i, j).split == Split::none) continue;
      const bool rising = cell(i, j).split == Split::rising;
      add(chosen(cell(i, j).above), chosen(cell(i, j).below), place(i, rising ? j : j + 1),
          place(i + 1, rising ? j + 1 : j));
    }
  }
  return edges;
}

std::vector<geometry::Outline> outlines(const geometry::Section& section, const Chosen& chosen) {
  const std::size_t width = section.x.size();
  std::vector<geometry::Outline> all;
  for (const auto& loop : loops(boundary(
           section.columns(), section.rows(),
           [&](std::size_t i, std::size_t j) -> const Cell& { return section.cell(i, j); },
           chosen))) {
    const auto corner = [&](std::size_t k) {
      const std::size_t place = loop[k % loop.size()];
      return Point{section.x[place % width], section.y[place / width]};
    };
    geometry::Outline outline;
    for (std::size_t k = 0; k < loop.size(); ++k) {
      if (!straight(corner(k + loop.size() - 1), corner(k), corner(k + 1))) {
        outline.push_back(corner(k));
      }
    }
    all.push_back(std::move(outline));
  }
  return all;
}

}  // namespace quoin::tools
