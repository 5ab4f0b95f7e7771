// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/inside_surface.hpp"

#include <algorithm>
#include <variant>

#include "cases/model/case.hpp"
#include "geometry/section.hpp"

namespace quoin::cases {

bool meets_inside_surface(const Variant& variant, const SurveyBox& box) {
  const geometry::Section section = geometry::section_of(variant.sheet);
  const auto is_room = [&](const geometry::Fill& fill) {
    const auto* space = std::get_if<SpaceId>(&fill);
    return space != nullptr && variant.spaces[*space].is != SpaceKind::outside;
  };
  const auto between = [](double at, double low, double high) {
    return at >= low - geometry::snap && at <= high + geometry::snap;
  };
  const auto overlaps = [](double a, double b, double low, double high) {
    return std::min(b, high) - std::max(a, low) > geometry::snap;
  };
  for (std::size_t j = 0; j < section.rows(); ++j) {
    for (std::size_t i = 0; i < section.columns(); ++i) {
      const geometry::Cell& here = section.cell(i, j);
      const auto meets = [&](const geometry::Cell& next) {
        return (is_room(here.above) || is_room(here.below)) !=
                   (is_room(next.above) || is_room(next.below)) &&
               (geometry::is_solid(here) || geometry::is_solid(next));
      };
      if (i + 1 < section.columns() && meets(section.cell(i + 1, j)) &&
          between(section.x[i + 1], box.x_from, box.x_to) &&
          overlaps(section.y[j], section.y[j + 1], box.y_from, box.y_to))
        return true;
      if (j + 1 < section.rows() && meets(section.cell(i, j + 1)) &&
          between(section.y[j + 1], box.y_from, box.y_to) &&
          overlaps(section.x[i], section.x[i + 1], box.x_from, box.x_to))
        return true;
      if (here.split != geometry::Split::none && (is_room(here.above) != is_room(here.below)) &&
          overlaps(section.x[i], section.x[i + 1], box.x_from, box.x_to) &&
          overlaps(section.y[j], section.y[j + 1], box.y_from, box.y_to))
        return true;
    }
  }
  return false;
}

}  // namespace quoin::cases
