// SPDX-License-Identifier: Apache-2.0
#include "cases/bands.hpp"

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

Box box_of(const geometry::Sheet& sheet, const std::vector<geometry::RegionId>& regions) {
  Box all;
  for (const Box& box : boxes_of(sheet, regions)) {
    all.x = {std::min(all.x.from, box.x.from), std::max(all.x.to, box.x.to)};
    all.y = {std::min(all.y.from, box.y.from), std::max(all.y.to, box.y.to)};
  }
  return all;
}

bool meets(const geometry::Sheet& sheet, const std::vector<geometry::RegionId>& regions,
           const Box& box) {
  const std::vector<Box> boxes = boxes_of(sheet, regions);
  return std::any_of(boxes.begin(), boxes.end(), [&](const Box& cell) {
    return overlap(cell.x, box.x) && overlap(cell.y, box.y);
  });
}

}  // namespace quoin::cases
