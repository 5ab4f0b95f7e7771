// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/find/timber_ends.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "materials/moist_air.hpp"

namespace quoin::tools {
namespace {

/// Timber that stays above it for months can rot. Common practice, no source.
constexpr double rot_humidity = 0.85;

/// Whether a material is likely timber: a floor may be a slab of concrete or steel as well. Common
/// practice, no source.
bool can_rot(const materials::Material& material) {
  return material.conductivity.value < 0.5 && material.density.value < 1000.0;
}

/// The material that ends at a probe, towards the room: the recipe lays its end to the right.
const materials::Material* ends_at(const SolvedVariant& solved, geometry::Point place) {
  const geometry::Section& section = solved.surface.field.mesh.section;
  const geometry::Crossing at = geometry::crossing_at({section.x, section.y}, place);
  if (at.i == 0 || at.j >= section.rows()) return nullptr;
  const auto* region = std::get_if<geometry::RegionId>(&section.cell(at.i - 1, at.j).below);
  return region == nullptr ? nullptr : &solved.variant.regions[*region].material;
}

/// The inside air with the highest vapour pressure, Pa; not valid where no humidity is known.
std::pair<SpaceId, double> most_humid(const cases::Variant& variant) {
  SpaceId most;
  double highest = 0.0;
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    const cases::Space& space = variant.spaces[id];
    if (space.is != cases::SpaceKind::inside || space.air != id || !space.humidity) continue;
    const double pressure = *space.humidity * materials::saturation_pressure(space.temperature);
    if (pressure <= highest) continue;
    highest = pressure;
    most = id;
  }
  return {most, highest};
}

}  // namespace

std::vector<TimberEnd> timber_ends(const SolvedVariant& solved) {
  const auto& probes = solved.variant.probes;
  std::vector<TimberEnd> ends;
  for (const geometry::NamedPlace& named : solved.variant.timber_ends) {
    const auto probe = std::find_if(probes.begin(), probes.end(), [&](const cases::Probe& one) {
      return one.name == named.name;
    });
    if (probe == probes.end()) continue;
    const materials::Material* material = ends_at(solved, probe->place);
    if (material != nullptr && !can_rot(*material)) continue;
    const auto number = static_cast<std::size_t>(probe - probes.begin());
    TimberEnd end{named.name, probe->place, solved.surface.probes[number].temperature, {}, {}};
    const auto [room, pressure] = most_humid(solved.variant);
    if (room.valid()) {
      end.room = room;
      end.humidity = pressure / materials::saturation_pressure(end.temperature.value);
    }
    ends.push_back(std::move(end));
  }
  return ends;
}

std::string words_for_timber_ends(const SolvedVariant& solved) {
  std::string text;
  for (const TimberEnd& end : solved.timber_ends) {
    text += fmt::format(" At {} it is {:.1f} °C", end.name, end.temperature.value);
    if (!end.humidity) {
      text += ".";
      continue;
    }
    text += fmt::format(
        "; the air of {}, if it got there, would have {:.0f} % humidity: an upper "
        "estimate.",
        solved.variant.spaces[end.room].name, 100 * *end.humidity);
    if (*end.humidity > rot_humidity)
      text += " Over months that rots timber: keep the room's air out of the pocket.";
  }
  return text;
}

}  // namespace quoin::tools
