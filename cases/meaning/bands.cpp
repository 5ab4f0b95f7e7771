// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/bands.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <variant>

#include "geometry/section.hpp"

namespace quoin::cases {
namespace {

/// The boxes of all cells that show one of some regions.
std::vector<Box> boxes_of(const geometry::Sheet& sheet,
                          const std::vector<geometry::RegionId>& regions) {
  const geometry::Section section = geometry::painted(sheet);
  const auto shows = [&](const geometry::Fill& fill) {
    const auto* region = std::get_if<geometry::RegionId>(&fill);
    return region != nullptr && std::find(regions.begin(), regions.end(), *region) != regions.end();
  };
  std::vector<Box> boxes;
  for (std::size_t j = 0; j < section.rows(); ++j) {
    for (std::size_t i = 0; i < section.columns(); ++i) {
      const geometry::Cell& cell = section.cell(i, j);
      if (shows(cell.below) || shows(cell.above))
        boxes.push_back({{section.x[i], section.x[i + 1]}, {section.y[j], section.y[j + 1]}});
    }
  }
  return boxes;
}

bool overlap(Interval one, Interval other) {
  return one.from < other.to - geometry::snap && other.from < one.to - geometry::snap;
}

}  // namespace

std::optional<Complaint> misplaced(const geometry::Sheet& sheet,
                                   const std::vector<geometry::RegionId>& regions, const Box& box,
                                   std::string_view material) {
  Box all;
  for (const Box& cell : boxes_of(sheet, regions)) {
    if (overlap(cell.x, box.x) && overlap(cell.y, box.y)) return std::nullopt;
    all.x = {std::min(all.x.from, cell.x.from), std::max(all.x.to, cell.x.to)};
    all.y = {std::min(all.y.from, cell.y.from), std::max(all.y.to, cell.y.to)};
  }
  return Complaint{fmt::format("this band meets no '{}'", material), "",
                   fmt::format("x within [{:.6g}, {:.6g}], y within [{:.6g}, {:.6g}]",
                               1e3 * all.x.from, 1e3 * all.x.to, 1e3 * all.y.from, 1e3 * all.y.to),
                   "move the band; without x or without y it reaches from end to end"};
}

}  // namespace quoin::cases
