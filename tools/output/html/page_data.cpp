// SPDX-License-Identifier: Apache-2.0
#include "tools/output/html/page_data.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <nlohmann/json.hpp>
#include <set>
#include <string>

#include "geometry/close_up.hpp"
#include "tools/answer/ask/conditions.hpp"
#include "tools/answer/ask/physics.hpp"
#include "tools/answer/find/places.hpp"
#include "tools/answer/judge/gate.hpp"
#include "tools/answer/judge/judge.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/words/advice.hpp"
#include "tools/answer/words/figures.hpp"
#include "tools/answer/words/outcome_words.hpp"
#include "tools/draw/canvas/colours.hpp"
#include "tools/draw/section/rooms.hpp"
#include "tools/draw/section/view.hpp"
#include "tools/output/html/page_grid.hpp"

namespace quoin::tools {
namespace {

using Json = nlohmann::ordered_json;

Json list() { return Json::array(); }

/// How each air of the field follows the spaces whose temperature is stated: K by K. Shape: airs by
/// `drivers`.
Json follows(const SolvedVariant& solved, const std::vector<SpaceId>& drivers) {
  const solver::SpaceTemperatures stated = temperatures_of(solved.variant);
  const solver::SpaceTemperatures before = temperatures_as_stated(solved, stated);
  Json rows = list();
  for (const SpaceId air : solved.surface.field.airs) {
    Json row = list();
    for (const SpaceId driver : drivers) {
      solver::SpaceTemperatures warmer = stated;
      warmer[driver] += 1.0;
      const double by = temperatures_as_stated(solved, warmer)[air] - before[air];
      row.push_back(std::round(by * 1e9) / 1e9);
    }
    rows.push_back(std::move(row));
  }
  return rows;
}

/// The nodes on which the coldest spot of an air is looked for: those of the fabric, or all where
/// none is.
Json surface_nodes(const solver::Solution& solution, SpaceId air) {
  std::set<std::size_t> fabric, all;
  for (const geometry::Face& face : geometry::faces(solution.field.mesh)) {
    if (solution.physics.air[face.space] != air) continue;
    for (const std::size_t node : {face.from, face.to}) {
      all.insert(node);
      if (solution.physics.is_fabric[face.region] != 0) fabric.insert(node);
    }
  }
  Json nodes = list();
  for (const std::size_t node : fabric.empty() ? all : fabric) nodes.push_back(node);
  return nodes;
}

/// The node of material nearest to a place.
std::size_t node_of(const solver::Field& field, geometry::Point place) {
  std::size_t best = 0;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t n = 0; n < field.mesh.nx() * field.mesh.ny(); ++n) {
    const geometry::Point here = field.mesh.place(n);
    const double away = std::hypot(here.x - place.x, here.y - place.y);
    if (field.solid[n] == 0 || away >= least) continue;
    least = away;
    best = n;
  }
  return best;
}

Json rooms_of(const SolvedVariant& solved) {
  Json rooms = list();
  for (const solver::AirSurface& surface : solved.surface.airs) {
    Json spots = list();
    for (const solver::Spot& spot : surface.cold_spots) {
      spots.push_back({{"node", node_of(solved.surface.field, spot.place)},
                       {"where", words_for(solved, spot)}});
    }
    Json room = {{"air", surface.air.index},
                 {"coldest", node_of(solved.surface.field, surface.coldest.place)},
                 {"band_K", surface.coldest.temperature.band},
                 {"spots", std::move(spots)},
                 {"nodes", surface_nodes(solved.surface, surface.air)}};
    if (const Outcome* outcome = outcome_of(solved, surface.air)) {
      room["outcome"] = {{"words", badge(*outcome)}, {"tone", word_for(tone_of(outcome->kind))}};
      if (outcome->chance) room["outcome"]["chance"] = cases_of_100(*outcome->chance);
    }
    rooms.push_back(std::move(room));
  }
  return rooms;
}

/// The fRsi of each room by the resistances for heat flow, which do not change with the air between
/// two of them; null between more.
Json heat_factors(const SolvedVariant& solved) {
  if (solved.heat.field.airs.size() > 2) return nullptr;
  Json factors = Json::object();
  for (const solver::AirSurface& surface : solved.heat.airs)
    factors[std::to_string(surface.air.index)] = surface.coldest.factor.value;
  return factors;
}

Json criteria_of(const SolvedVariant& solved) {
  Json all = list();
  for (const cases::Criterion& criterion : solved.variant.criteria) {
    Json json = {{"name", criterion.name}, {"mould", is_for_mould(criterion)}};
    std::visit([&](const auto& test) { json["test"] = test.name; }, criterion.test);
    if (const auto* humidity = std::get_if<cases::SurfaceHumidityLimit>(&criterion.test))
      json["limit"] = humidity->limit;
    if (const auto* factor = std::get_if<cases::FactorThreshold>(&criterion.test))
      json["limit"] = factor->threshold;
    const solver::AirSurface& any = solved.surface.airs.front();
    if (&surface_for(solved, any, criterion) != &any) json["factors"] = heat_factors(solved);
    if (!json.contains("factors") || !json["factors"].is_null()) all.push_back(std::move(json));
  }
  return all;
}

/// From what the humidity of a room follows: the excess of vapour pressure, Pa, at 0 degC outside,
/// or what is given off and the air carries away.
struct HouseholdJson {
  Json operator()(const materials::HumidityClass& source) const {
    return {{"excess_Pa", materials::vapour_excess(source, 0.0, 0.0)}};
  }
  Json operator()(const materials::LoggedReading& source) const {
    return {{"excess_Pa", materials::vapour_excess(source, 0.0, 0.0)}};
  }
  Json operator()(const materials::MoistureProduction& source) const {
    return {{"given_off_kg_s", source.safety_factor * source.rate},
            {"volume_m3", source.volume},
            {"winter_1_s", source.air_change},
            {"summer_1_s", source.summer_air_change.value_or(source.air_change)}};
  }
};

Json spaces_of(const SolvedVariant& solved) {
  // Names stand in the largest free rectangle of their space, as on the pictures.
  const geometry::Section& section = solved.surface.field.mesh.section;
  const auto& rectangle = solved.variant.close_up;
  const View view(rectangle ? geometry::close_up(section, *rectangle) : section, {0.0, 0.0}, 600.0,
                  600.0);
  Json all = list();
  for (const SpaceId id : geometry::ids(solved.variant.spaces)) {
    const cases::Space& space = solved.variant.spaces[id];
    constexpr std::string_view kinds[] = {"inside", "outside", "unheated"};
    Json json = {{"name", space.name},
                 {"is", kinds[static_cast<std::size_t>(space.is)]},
                 {"air", space.air.index},
                 {"temperature_C", space.temperature},
                 {"cooling_K", space.cooling}};
    if (space.humidity) json["humidity"] = *space.humidity;
    if (space.moisture) json["household"] = std::visit(HouseholdJson{}, *space.moisture);
    if (const std::optional<Box> room = room_of(view, id)) {
      const geometry::Point centre = view.place_of(room->centre);
      json["label_mm"] = {page_mm(centre.x), page_mm(centre.y), page_mm(room->width / view.scale()),
                          page_mm(room->height / view.scale())};
    }
    all.push_back(std::move(json));
  }
  return all;
}

Json variant_json(const SolvedVariant& solved, std::size_t limit) {
  const cases::Variant& variant = solved.variant;
  const solver::Field& field = solved.surface.field;
  Json regions = list(), airs = list(), drivers = list(), probes = list();
  for (const cases::Region& region : variant.regions) regions.push_back(region.name);
  for (const SpaceId air : field.airs) airs.push_back(air.index);
  std::vector<SpaceId> changed;
  // What leaves a wet surface depends on the air in no straight line: such a variant stays as it
  // is.
  const bool wet =
      std::any_of(variant.spaces.begin(), variant.spaces.end(), [](const cases::Space& space) {
        return space.evaporation &&
               std::holds_alternative<materials::WetSurface>(*space.evaporation);
      });
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    if (!wet && states_its_temperature(variant, id)) changed.push_back(id);
  }
  for (const SpaceId id : changed) drivers.push_back(id.index);
  for (std::size_t p = 0; p < variant.probes.size(); ++p) {
    const geometry::Point place = variant.probes[p].place;
    probes.push_back(
        {{"name", variant.probes[p].name}, {"at_mm", {page_mm(place.x), page_mm(place.y)}}});
  }
  Json json = {{"name", variant.name},
               {"spaces", spaces_of(solved)},
               {"regions", std::move(regions)},
               {"airs", std::move(airs)},
               {"drivers", std::move(drivers)},
               {"follows", follows(solved, changed)},
               {"rooms", rooms_of(solved)},
               {"probes", std::move(probes)},
               {"criteria", solved.surface.airs.empty() ? list() : criteria_of(solved)},
               {"gate", gate(variant)},
               {"wet", wet}};
  if (variant.close_up) {
    const auto [west, east] = std::minmax_element(
        variant.close_up->begin(), variant.close_up->end(),
        [](const geometry::Point& a, const geometry::Point& b) { return a.x < b.x; });
    const auto [south, north] = std::minmax_element(
        variant.close_up->begin(), variant.close_up->end(),
        [](const geometry::Point& a, const geometry::Point& b) { return a.y < b.y; });
    json["close_up_mm"] = {page_mm(west->x), page_mm(east->x), page_mm(south->y),
                           page_mm(north->y)};
  }
  if (field.mesh.nx() * field.mesh.ny() <= limit) json["grid"] = grid_json(solved);
  return json;
}

}  // namespace

std::string page_data(const Results& results, std::size_t limit) {
  Json colours = list();
  constexpr int shades = 64;
  for (int k = 0; k <= shades; ++k)
    colours.push_back(hex(shown(temperature_colour(static_cast<double>(k) / shades))));
  Json json = {{"colours", std::move(colours)},
               {"chosen", results.variants.empty() ? 0 : advice_on(results).chosen},
               {"variants", list()}};
  for (const SolvedVariant& solved : results.variants)
    json["variants"].push_back(variant_json(solved, limit));
  // Plain ASCII, and no bracket that could end the element or open a comment in it.
  const std::string text = json.dump(-1, ' ', true, Json::error_handler_t::replace);
  std::string safe;
  safe.reserve(text.size());
  for (const char c : text) {
    switch (c) {
      case '<':
        safe += "\\u003c";
        break;
      case '>':
        safe += "\\u003e";
        break;
      case '&':
        safe += "\\u0026";
        break;
      default:
        safe += c;
    }
  }
  return safe;
}

}  // namespace quoin::tools
