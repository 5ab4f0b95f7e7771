// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/words/filled.hpp"

#include "tools/answer/words/overlaid.hpp"

namespace quoin::tools {
namespace {

bool is_cavity(const cases::Variant& variant, const geometry::Fill& fill) {
  const auto* region = std::get_if<RegionId>(&fill);
  const auto* space = std::get_if<SpaceId>(&fill);
  const RegionId layer = region != nullptr  ? *region
                         : space != nullptr ? variant.spaces[*space].in_layer
                                            : RegionId{};
  if (!layer.valid()) return false;
  const auto& air = variant.regions[layer].material.air_layer;
  return air && air->heat == materials::HeatDirection::horizontal;
}

/// Of all cavities, m2.
double area_of_cavities(const SolvedVariant& solved) {
  const geometry::Section& section = solved.surface.field.mesh.section;
  double area = 0.0;
  for (std::size_t j = 0; j < section.rows(); ++j) {
    for (std::size_t i = 0; i < section.columns(); ++i) {
      const geometry::Cell& cell = section.cell(i, j);
      const double half = (section.x[i + 1] - section.x[i]) * (section.y[j + 1] - section.y[j]) / 2;
      for (const geometry::Fill* fill : {&cell.below, &cell.above})
        area += is_cavity(solved.variant, *fill) ? half : 0.0;
    }
  }
  return area;
}

}  // namespace

bool fills_cavity(const SolvedVariant& first, const SolvedVariant& later) {
  // An outer layer may move the whole wall, so that another material lies where the air was.
  constexpr double rounding = 1e-9;  // m2
  if (area_of_cavities(later) > area_of_cavities(first) - rounding) return false;
  const auto filled = [&](const geometry::Fill& was, const geometry::Fill& is) {
    return is_cavity(first.variant, was) && std::holds_alternative<RegionId>(is) &&
           !is_cavity(later.variant, is);
  };
  return !everywhere(first.surface.field.mesh.section, later.surface.field.mesh.section,
                     [&](const geometry::Cell& was, const geometry::Cell& is) {
                       return !filled(was.below, is.below) && !filled(was.above, is.above);
                     });
}

}  // namespace quoin::tools
