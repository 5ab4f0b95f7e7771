// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/judge/lined.hpp"

#include <fmt/format.h>

#include <set>

#include "geometry/lines.hpp"
#include "geometry/shape.hpp"
#include "materials/mineral.hpp"
#include "tools/answer/judge/gate.hpp"

namespace quoin::tools {
namespace {

using geometry::RegionId;

constexpr double masonry = 0.05;  // m; plaster is thinner. Common practice, no source.

/// The regions that are masonry: mineral, and thick, though a line may meet the end of a thin one.
std::set<RegionId> masonry_of(const cases::Variant& variant, const geometry::Section& section) {
  std::set<RegionId> all;
  for (const RegionId id : geometry::ids(variant.regions)) {
    const cases::Region& region = variant.regions[id];
    const bool mineral =
        region.part == materials::Part::fabric && materials::is_mineral(region.material);
    const geometry::Shape shape = mineral ? geometry::shape_of(section, id) : geometry::Shape{};
    if (shape.area > masonry * (shape.width + shape.height)) all.insert(id);
  }
  return all;
}

/// The lining between a space inside, with which the pieces of a line begin, and masonry.
std::optional<Lined> lined_on(const std::vector<geometry::LinePiece>& pieces,
                              const cases::Variant& variant,
                              const std::set<RegionId>& all_masonry) {
  RegionId lining, behind;
  double thickness = 0.0;
  bool from_inside = false, apart = false;  // apart: air lies behind the lining
  for (const geometry::LinePiece& piece : pieces) {
    const auto* id = std::get_if<RegionId>(&piece.fill);
    if (id == nullptr) {
      const auto* space = std::get_if<geometry::SpaceId>(&piece.fill);
      from_inside = space != nullptr && variant.spaces[*space].is == cases::SpaceKind::inside;
      lining = behind = {};
      apart = false;
      continue;
    }
    const cases::Region& region = variant.regions[*id];
    if (!from_inside) continue;
    if (!lining.valid() && insulates(region, false)) lining = *id;
    apart = apart || (lining.valid() && region.material.air_layer.has_value());
    if (*id != behind) thickness = 0.0;
    behind = *id;
    thickness += piece.length;
    const bool solid = all_masonry.count(*id) > 0 && thickness >= masonry;
    if (solid && lining.valid() && insulates(variant.regions[lining], apart))
      return Lined{lining, *id};
    if (solid) from_inside = false;  // the masonry stands before it
  }
  return std::nullopt;
}

}  // namespace

std::optional<Lined> lined_inside(const cases::Variant& variant) {
  const geometry::Section section = geometry::painted(variant.sheet);
  const std::set<RegionId> all_masonry = masonry_of(variant, section);
  return geometry::first_found(section, [&](const std::vector<geometry::LinePiece>& pieces) {
    return lined_on(pieces, variant, all_masonry);
  });
}

std::string lining_remark(const cases::Variant& variant) {
  const std::optional<Lined> lined = lined_inside(variant);
  if (!lined || variant.vapour) return "";
  return fmt::format(
      "'{}' keeps '{}' behind it cold: whether vapour condenses there is not computed, and no "
      "outcome counts it; state `vapour`, and have a transient assessment (EN 15026) made before "
      "it is built",
      variant.regions[lined->lining].name, variant.regions[lined->masonry].name);
}

}  // namespace quoin::tools
