// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/section/rooms.hpp"

#include <algorithm>
#include <optional>

namespace quoin::tools {
namespace {

using geometry::Cell;
using geometry::Fill;
using geometry::Section;
using geometry::SpaceId;

/// The largest rectangle of cells that `shows(column, row)` holds for.
template <class Shows>
std::optional<Box> room_among(const View& view, Shows shows) {
  const Section& section = view.section();
  std::optional<Extent> best;
  double largest = 0.0;
  std::vector<std::size_t> depth(section.columns());  // rows of the space down from this one
  for (std::size_t j = 0; j < section.rows(); ++j) {
    for (std::size_t i = 0; i < section.columns(); ++i) depth[i] = shows(i, j) ? depth[i] + 1 : 0;
    for (std::size_t i = 0; i < section.columns(); ++i) {
      std::size_t rows = depth[i];
      for (std::size_t last = i; last < section.columns() && depth[last] > 0; ++last) {
        rows = std::min(rows, depth[last]);
        const Extent extent{{section.x[i], section.y[j + 1 - rows]},
                            {section.x[last + 1], section.y[j + 1]}};
        if (extent.width() * extent.height() > largest) {
          largest = extent.width() * extent.height();
          best = extent;
        }
      }
    }
  }
  if (!best) return std::nullopt;
  return Box{view({(best->low.x + best->high.x) / 2, (best->low.y + best->high.y) / 2}),
             best->width() * view.scale(), best->height() * view.scale(), 0.0};
}

bool shows_only(const Cell& cell, SpaceId space) {
  return cell.below == Fill{space} && cell.above == Fill{space};
}

/// Which part of a space each cell belongs to, from 1; 0 where it shows something else. Parts share
/// no side of a cell.
std::vector<std::size_t> parts_of(const Section& section, SpaceId space) {
  const std::size_t columns = section.columns();
  std::vector<std::size_t> parts(section.cells.size(), 0);
  const auto shows = [&](std::size_t k) { return shows_only(section.cells[k], space); };
  std::size_t count = 0;
  for (std::size_t start = 0; start < parts.size(); ++start) {
    if (parts[start] != 0 || !shows(start)) continue;
    ++count;
    std::vector<std::size_t> open{start};
    while (!open.empty()) {
      const std::size_t k = open.back();
      open.pop_back();
      if (parts[k] != 0 || !shows(k)) continue;
      parts[k] = count;
      if (k % columns > 0) open.push_back(k - 1);
      if (k % columns + 1 < columns) open.push_back(k + 1);
      if (k >= columns) open.push_back(k - columns);
      if (k + columns < parts.size()) open.push_back(k + columns);
    }
  }
  return parts;
}

}  // namespace

std::optional<Box> room_of(const View& view, SpaceId space) {
  const Section& section = view.section();
  return room_among(
      view, [&](std::size_t i, std::size_t j) { return shows_only(section.cell(i, j), space); });
}

std::vector<Box> rooms_of(const View& view, SpaceId space) {
  const Section& section = view.section();
  const std::vector<std::size_t> parts = parts_of(section, space);
  std::vector<Box> rooms;
  const std::size_t count = parts.empty() ? 0 : *std::max_element(parts.begin(), parts.end());
  for (std::size_t part = 1; part <= count; ++part) {
    const auto room = room_among(view, [&](std::size_t i, std::size_t j) {
      return parts[j * section.columns() + i] == part;
    });
    if (room) rooms.push_back(*room);
  }
  return rooms;
}

}  // namespace quoin::tools
