// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/spaces.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string_view>

#include "cases/meaning/air.hpp"
#include "cases/meaning/cold_surfaces.hpp"
#include "cases/meaning/frame_corners.hpp"
#include "cases/meaning/logged_table.hpp"
#include "cases/text/words.hpp"

namespace quoin::cases {
namespace {

using Written = Named<WrittenSpace>;

/// The place of a key's value, or of the name where there is no such key.
Mark mark_of(const Written& space, std::string_view key) {
  const Entry* entry = space.node->find(key);
  return entry == nullptr ? space.mark : entry->value.mark;
}

/// Whether the temperature of a space is not written but follows from other spaces.
bool temperature_follows(const Written& space) {
  return space.node->find("temperature") == nullptr &&
         (space.node->find("b") != nullptr || space.node->find("losses") != nullptr ||
          space.node->find("air bricks") != nullptr);
}

/// Faults of what stands before the surface of a space of this kind.
void check_behind(const Written& space, SpaceKind kind, FaultList& faults) {
  if (!space.value.behind) return;
  if (kind != SpaceKind::inside) {
    faults.add(mark_of(space, "behind"), {"'behind' is for surfaces inside", "",
                                          "a space that is inside", "remove `behind`"});
  }
  if (space.value.resistance) {
    faults.add(mark_of(space, "behind"),
               {fmt::format("the surface resistance of '{}' is given twice", space.name), "",
                "one of: resistance, behind", "remove one of the two"});
  }
}

/// Faults of the way that heat is said to cross the level surfaces of a space of this kind.
void check_heat(const Written& space, SpaceKind kind, FaultList& faults) {
  if (!space.value.heat) return;
  if (kind == SpaceKind::outside) {
    faults.add(mark_of(space, "heat goes"),
               {"which way the heat goes makes no difference outside", "",
                "a space that is inside or unheated", "remove `heat goes`"});
  } else if (space.value.resistance || space.value.behind) {
    faults.add(
        mark_of(space, "heat goes"),
        {fmt::format("the surface resistance of '{}' is given: it goes by no way of heat",
                     space.name),
         "", fmt::format("one of: heat goes, {}", space.value.behind ? "behind" : "resistance"),
         "remove one of the two"});
  }
}

/// Faults of a space that is no other's `like`.
void check_own_air(const Written& space, FaultList& faults) {
  if (space.node->kind != Node::Kind::map) return;  // said already
  for (const std::string_view key : {"is", "temperature"}) {
    if (key == "temperature" && temperature_follows(space)) continue;
    if (space.node->find(key) == nullptr && !has_mistyped(*space.node, key)) {
      faults.add(space.mark, {fmt::format("'{}' is missing in the space '{}'", key, space.name), "",
                              key == "is" ? "is: inside, outside or unheated"
                                          : "temperature: that of its air, °C",
                              "or make it `like` another space"});
    }
  }
  check_behind(space, space.value.is.value_or(SpaceKind::inside), faults);
  check_heat(space, space.value.is.value_or(SpaceKind::inside), faults);
  if (space.value.wind && space.value.is && *space.value.is != SpaceKind::outside) {
    faults.add(mark_of(space, "wind"), {"wind matters only outside", "", "a space that is outside",
                                        "remove `wind`, or fix `resistance`"});
  }
}

/// A surface that hardly resists has the temperature of its air: outside that may be meant to fix a
/// temperature, inside it hides every cold spot. One that shares an air is taken as inside.
void remark_on_low_resistance(const Written& space, std::vector<Remark>& remarks) {
  constexpr double low = 0.02;  // m2K/W
  const auto& resistance = space.value.resistance;
  if (!resistance || *resistance >= low) return;
  const bool inside = space.value.is.value_or(SpaceKind::inside) == SpaceKind::inside;
  if (*resistance == 0.0 && !inside) return;
  remarks.push_back(
      {*resistance == 0.0
           ? fmt::format("the surfaces of '{}' have no resistance: they are as warm as its air, "
                         "so that no cold spot and no mould can show there",
                         space.name)
           : fmt::format("the surface resistance of '{}' is very low", space.name),
       mark_of(space, "resistance").line});
}

/// Faults of a space that shares the air of another.
void check_shared_air(const Written& space, FaultList& faults) {
  std::vector<std::string_view> keys{"is", "temperature", "b", "losses", "air bricks", "humidity"};
  if (space.value.moisture) keys.push_back(materials::name_of(*space.value.moisture));
  for (const std::string_view key : keys) {
    if (const Entry* entry = space.node->find(key)) {
      faults.add(entry->mark, {fmt::format("'{}' is given twice: '{}' is the same air as '{}'", key,
                                           space.name, space.value.like),
                               "", fmt::format("the {} of '{}'", key, space.value.like),
                               fmt::format("remove `{}`, or remove `like`", key)});
    }
  }
}

/// The space another is `like`; not valid, with a fault, where there is no such space. `named`:
/// each space by its name.
SpaceId original_of(const Written& space, const std::vector<Written>& all,
                    const std::map<std::string_view, SpaceId>& named, FaultList& faults) {
  const Mark mark = mark_of(space, "like");
  const auto found = named.find(space.value.like);
  if (found == named.end()) {
    faults.add(mark, [&]() -> Complaint {
      std::vector<std::string> names;
      for (const Written& one : all) {
        if (one.name != space.name) names.push_back(one.name);
      }
      return {fmt::format("unknown space '{}'", space.value.like), space.value.like,
              "one of: " + joined(names, ", "), did_you_mean(space.value.like, names)};
    });
    return {};
  }
  const Written& original = all[found->second.index];
  if (&original == &space) {
    faults.add(mark, {"a space cannot be like itself", space.name, "another space", ""});
  } else if (!original.value.like.empty()) {
    faults.add(mark, {fmt::format("'{}' is itself like another space", original.name), "",
                      "a space with an air of its own",
                      fmt::format("write like: {}", original.value.like)});
  } else {
    return found->second;
  }
  return {};
}

void check_differences(const std::vector<Written>& written, const Per<SpaceId, Space>& spaces,
                       FaultList& faults, std::vector<Remark>& remarks) {
  // Only airs whose temperature was read.
  const Written* coldest = nullptr;
  const Written* warmest = nullptr;
  for (const Written& space : written) {
    if (!space.value.temperature) {
      const bool as_it_should =
          space.value.is == SpaceKind::unheated && (space.value.b || !space.value.losses.empty());
      if (space.value.like.empty() && !as_it_should) return;
      continue;
    }
    if (!coldest || *space.value.temperature < *coldest->value.temperature) coldest = &space;
    if (!warmest || *space.value.temperature > *warmest->value.temperature) warmest = &space;
  }
  if (coldest == nullptr) return;
  const double span = *warmest->value.temperature - *coldest->value.temperature;
  if (span == 0.0) {
    faults.add(mark_of(*coldest, "temperature"),
               {"all spaces have the same temperature: no heat flows, and there is no factor", "",
                "at least two temperatures", "give the outside its winter temperature"});
    return;
  }
  const auto remark = [&](const Written& space, std::string text) {
    remarks.push_back({std::move(text), mark_of(space, "temperature").line});
  };
  for (const Space& space : spaces) {
    if (space.is == SpaceKind::inside && space.temperature >= 50.0) {
      remark(*warmest,
             fmt::format("'{}' has {:.4g} °C: is that °F?", space.name, space.temperature));
      break;
    }
  }
  if (warmest->value.is == SpaceKind::outside && coldest->value.is == SpaceKind::inside)
    remark(*warmest, "it is warmer outside than inside: vapour moves inwards");
}

}  // namespace

SpaceId find_space(const Per<SpaceId, Space>& spaces, std::string_view name) {
  for (const SpaceId id : geometry::ids(spaces)) {
    if (spaces[id].name == name) return id;
  }
  return {};
}

std::vector<std::string> names_of(const Per<SpaceId, Space>& spaces) {
  std::vector<std::string> names;
  for (const Space& space : spaces) names.push_back(space.name);
  return names;
}

Per<SpaceId, Space> spaces_of(std::vector<Written> written, const Files& files, FaultList& faults,
                              std::vector<Remark>& remarks) {
  fetch_logs(written, files, faults, remarks);
  Per<SpaceId, Space> spaces;
  for (const Written& space : written) {
    if (space.name == nothing) {
      faults.add(space.mark, {"a space cannot be called 'nothing'", "", "another name",
                              "`fill: nothing` erases what was painted"});
    }
    const WrittenSpace& value = space.value;
    const SpaceId id = spaces.add({.name = space.name,
                                   .is = value.is.value_or(SpaceKind::inside),
                                   .temperature = value.temperature.value_or(0.0),
                                   .b = {},
                                   .losses = {},
                                   .humidity = value.humidity,
                                   .humidity_spread = value.humidity_spread,
                                   .moisture = {},
                                   .wind = value.wind,
                                   .resistance = value.resistance,
                                   .behind = value.behind,
                                   .sky = {},
                                   .evaporation = {},
                                   .coat = value.coat,
                                   .cooling = 0.0,
                                   .frame_corners = value.frame_corners,
                                   .heat = value.heat,
                                   .in_layer = {},
                                   .strips_of = {},
                                   .air = {}});
    if (value.is) spaces[id].air = id;
    if (value.behind) spaces[id].resistance = materials::resistance_behind(*value.behind);
    remark_on_low_resistance(space, remarks);
  }
  derive_air(written, spaces, faults, remarks);
  cool_surfaces(written, spaces, faults, remarks);
  std::map<std::string_view, SpaceId> named;
  for (const SpaceId id : geometry::ids(spaces)) named.emplace(written[id.index].name, id);
  for (std::size_t i = 0; i < written.size(); ++i) {
    if (written[i].value.like.empty()) {
      check_own_air(written[i], faults);
      continue;
    }
    check_shared_air(written[i], faults);
    const SpaceId original = original_of(written[i], written, named, faults);
    Space& space = spaces[SpaceId(i)];
    space.air = original;
    if (!original.valid()) continue;
    const Space& air = spaces[original];
    space.is = air.is;
    space.temperature = air.temperature;
    space.humidity = air.humidity;
    space.humidity_spread = air.humidity_spread;
    space.moisture = air.moisture;
    check_behind(written[i], air.is, faults);
    check_heat(written[i], air.is, faults);
    if (!space.wind) space.wind = air.wind;
    if (!space.heat && !space.resistance) space.heat = air.heat;
    if (!space.coat) space.coat = air.coat;
  }
  check_frame_corners(written, spaces, faults);
  check_differences(written, spaces, faults, remarks);
  return spaces;
}

}  // namespace quoin::cases
