// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/cold_surfaces.hpp"

#include <fmt/format.h>

#include <optional>
#include <string_view>

#include "cases/model/fixed_resistance.hpp"

namespace quoin::cases {
namespace {

using Written = Named<WrittenSpace>;

Mark mark_of(const Written& space, std::string_view key) {
  const Entry* entry = space.node->find(key);
  return entry == nullptr ? space.mark : entry->mark;
}

/// The surface resistance of a space where it does not depend on the purpose, m2K/W.
std::optional<double> one_resistance(const Space& space) {
  if (!space.resistance && space.is != SpaceKind::outside) return std::nullopt;
  return fixed_resistance(space);
}

std::string_view name_of(const materials::Evaporation& evaporation) {
  return std::visit([](const auto& one) { return one.name; }, evaporation);
}

/// Whether a space may be colder to its surfaces than its air; with a fault where not.
bool can_cool(const Written& written, const Space& space, std::string_view key, FaultList& faults) {
  const Mark mark = mark_of(written, key);
  if (!written.value.like.empty()) {
    faults.add(mark, {fmt::format("'{}' needs a space with an air of its own", key), "",
                      "its temperature in place of `like`", ""});
    return false;
  }
  if (!one_resistance(space)) {
    faults.add(mark,
               {fmt::format("'{}' needs the surface resistance: inside it differs by purpose", key),
                "", "resistance: 0.13", "fix `resistance` in this space"});
    return false;
  }
  return true;
}

void cool_by_sky(const Written& written, Space& space, FaultList& faults,
                 std::vector<Remark>& remarks) {
  constexpr std::string_view key = "clear sky";
  if (space.is != SpaceKind::outside) {
    faults.add(mark_of(written, key),
               {"a clear sky is outside", "", "a space that is outside", "remove `clear sky`"});
    return;
  }
  if (!can_cool(written, space, key, faults)) return;
  space.sky = written.value.sky;
  const double cooling = materials::cooling_by(*space.sky, *one_resistance(space));
  space.cooling += cooling;
  remarks.push_back(
      {fmt::format("a clear sky {:.3g} K colder than the air, of which the surfaces see {:.0f} %, "
                   "cools those of '{}' like air of {:.1f} K less: for comparing with readings of "
                   "such a night, not for a judgement",
                   space.sky->colder_by, 100 * space.sky->view, space.name, cooling),
       mark_of(written, key).line});
}

void cool_by_water(const Written& written, Space& space, FaultList& faults,
                   std::vector<Remark>& remarks) {
  const materials::Evaporation& evaporation = *written.value.evaporation;
  const std::string_view key = name_of(evaporation);
  if (!can_cool(written, space, key, faults)) return;
  if (std::holds_alternative<materials::WetSurface>(evaporation) && !space.humidity) {
    faults.add(mark_of(written, key), {fmt::format("'{}' needs the humidity of its air", key), "",
                                       "humidity: 80 in this space", ""});
    return;
  }
  space.evaporation = evaporation;
  const auto* stated = std::get_if<materials::EvaporationRate>(&evaporation);
  if (stated == nullptr) return;
  const double heat = stated->rate * materials::heat_of_evaporation;
  const double cooling = *one_resistance(space) * heat;
  space.cooling += cooling;
  remarks.push_back({fmt::format("that {:.3g} g/(m²·h) leave the surfaces of '{}' is the author's "
                                 "claim: it takes {:.3g} W/m² from them, like air of {:.1f} K less",
                                 stated->rate * 3.6e6, space.name, heat, cooling),
                     mark_of(written, key).line});
}

}  // namespace

void cool_surfaces(const std::vector<Written>& written, Per<SpaceId, Space>& spaces,
                   FaultList& faults, std::vector<Remark>& remarks) {
  for (const SpaceId id : geometry::ids(spaces)) {
    const Written& one = written[id.index];
    if (one.value.sky) cool_by_sky(one, spaces[id], faults, remarks);
    if (one.value.evaporation) cool_by_water(one, spaces[id], faults, remarks);
  }
}

}  // namespace quoin::cases
