// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/judge/gate.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>
#include <variant>
#include <vector>

#include "geometry/lines.hpp"
#include "materials/moisture.hpp"

namespace quoin::tools {
namespace {

using geometry::RegionId;

// Common practice, no source, as far as nothing else is said.
constexpr double insulates_anywhere = 0.10;  // W/(m K), dry: boards, batts, light plasters
constexpr double insulates_laid_on = 0.20;   // W/(m K), dry: insulating plasters, light blocks
/// Wood and plastics conduct as little as light blocks do. In the catalogue their dry mu is 50 and
/// more, that of insulating plasters and light blocks far below.
constexpr double vapour_resistance_of_wood = 30.0;
constexpr double thick_wall = 0.6;  // m

bool is_wet(const cases::Region& region) {
  return region.part == materials::Part::fabric &&  // the ground stays wet
         materials::wetter_than_damp(region.material, region.moisture);
}

/// Wet masonry, and the insulation that would cover it.
struct Covered {
  RegionId wet;
  RegionId cover;
};

/// The first wet masonry on a line that insulation farther along parts from a space.
std::optional<Covered> covered_on(const std::vector<geometry::LinePiece>& pieces,
                                  const cases::Variant& variant) {
  Covered found;
  double between = 0.0;
  bool apart = false;
  for (const geometry::LinePiece& piece : pieces) {
    const auto* id = std::get_if<RegionId>(&piece.fill);
    if (id == nullptr) {
      const bool ends_in_a_space = std::holds_alternative<geometry::SpaceId>(piece.fill);
      if (found.cover.valid() && ends_in_a_space) return found;
      found = {};
      continue;
    }
    if (found.cover.valid()) continue;
    const cases::Region& region = variant.regions[*id];
    const bool other = found.wet.valid() && variant.regions[found.wet].name != region.name;
    if (other && between <= thick_wall && insulates(region, apart)) {
      found.cover = *id;
    } else if (is_wet(region)) {
      found.wet = *id;
      between = 0.0;
      apart = false;
    } else {
      between += piece.length;
      apart = apart || region.material.air_layer.has_value();
    }
  }
  return std::nullopt;
}

}  // namespace

bool insulates(const cases::Region& region, bool apart) {
  const materials::Material& material = region.material;
  if (region.part != materials::Part::fabric || material.air_layer || material.cavity) return false;
  if (material.conductivity.value <= insulates_anywhere) return true;
  const bool like_wood = material.vapour_resistance_dry &&
                         material.vapour_resistance_dry->value >= vapour_resistance_of_wood;
  return !apart && !like_wood && material.conductivity.value <= insulates_laid_on;
}

std::string gate(const cases::Variant& variant) {
  if (std::none_of(variant.regions.begin(), variant.regions.end(), is_wet)) return {};
  const std::optional<Covered> covered = geometry::first_found(
      geometry::painted(variant.sheet),
      [&](const std::vector<geometry::LinePiece>& pieces) { return covered_on(pieces, variant); });
  if (!covered) return {};
  return fmt::format("{} would be closed in by {} while it is wetter than damp",
                     variant.regions[covered->wet].name, variant.regions[covered->cover].name);
}

}  // namespace quoin::tools
