// SPDX-License-Identifier: Apache-2.0
#include "geometry/close_up.hpp"

#include <algorithm>

namespace quoin::geometry {
namespace {

/// The strips of some lines that reach into an interval: the first, and one past the last.
std::pair<std::size_t, std::size_t> within(const std::vector<double>& lines, double from,
                                           double to) {
  std::size_t first = 0, last = lines.size() - 1;
  while (first + 1 < last && lines[first + 1] <= from + snap) ++first;
  while (last - 1 > first && lines[last - 1] >= to - snap) --last;
  return {first, last};
}

}  // namespace

Section close_up(const Section& section, const Outline& rectangle) {
  const auto [low, high] = std::minmax_element(rectangle.begin(), rectangle.end());
  const Section lined = with_lines_through(section, {*low, *high});
  const auto [west, east] = within(lined.x, low->x, high->x);
  const auto [south, north] = within(lined.y, low->y, high->y);
  Section part = lined;
  const auto of = [](const std::vector<double>& lines, std::size_t from, std::size_t to) {
    return std::vector<double>(lines.begin() + static_cast<std::ptrdiff_t>(from),
                               lines.begin() + static_cast<std::ptrdiff_t>(to) + 1);
  };
  part.x = of(lined.x, west, east);
  part.y = of(lined.y, south, north);
  part.cells.clear();
  for (std::size_t j = south; j < north; ++j) {
    for (std::size_t i = west; i < east; ++i) part.cells.push_back(lined.cell(i, j));
  }
  return part;
}

}  // namespace quoin::geometry
