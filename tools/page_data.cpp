// SPDX-License-Identifier: Apache-2.0
#include "tools/page_data.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <nlohmann/json.hpp>
#include <set>

#include "geometry/close_up.hpp"
#include "tools/answer/words/advice.hpp"
#include "tools/base64.hpp"
#include "tools/conditions.hpp"
#include "tools/draw/canvas/colours.hpp"
#include "tools/draw/section/view.hpp"
#include "tools/gate.hpp"
#include "tools/grade.hpp"
#include "tools/physics.hpp"
#include "tools/places.hpp"

namespace quoin::tools {
namespace {

using Json = nlohmann::ordered_json;

Json list() { return Json::array(); }

/// Metres as mm, to the thousandth.
double mm(double metres) { return std::round(metres * 1e6) / 1e3; }

Json all_mm(const std::vector<double>& lines) {
  Json all = list();
  for (const double line : lines) all.push_back(mm(line));
  return all;
}

/// Numbers up to 65535 as base64 of their two bytes each, the low one first.
std::string packed(const std::vector<std::uint16_t>& numbers) {
  std::vector<std::uint8_t> bytes;
  bytes.reserve(2 * numbers.size());
  for (const std::uint16_t number : numbers) {
    bytes.push_back(static_cast<std::uint8_t>(number & 0xFFU));
    bytes.push_back(static_cast<std::uint8_t>(number >> 8U));
  }
  return base64(bytes);
}

std::string packed_basis(const std::vector<double>& basis) {
  std::vector<std::uint16_t> shares;
  shares.reserve(basis.size());
  for (const double g : basis)
    shares.push_back(static_cast<std::uint16_t>(std::lround(std::clamp(g, 0.0, 1.0) * 65535.0)));
  return packed(shares);
}

/// A fill as a number: 0 nothing, then the regions, then the spaces.
std::uint16_t code_of(const geometry::Fill& fill, std::size_t regions) {
  if (const auto* region = std::get_if<RegionId>(&fill))
    return static_cast<std::uint16_t>(1 + region->index);
  if (const auto* space = std::get_if<SpaceId>(&fill))
    return static_cast<std::uint16_t>(1 + regions + space->index);
  return 0;
}

/// What each cell shows: below and above its diagonal where it is divided.
Json cells_of(const geometry::Mesh& mesh, std::size_t regions) {
  std::vector<std::uint16_t> below, above, split;
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    for (std::size_t i = 0; i < mesh.columns(); ++i) {
      const geometry::Cell& cell = mesh.cell(i, j);
      below.push_back(code_of(cell.below, regions));
      above.push_back(code_of(cell.above, regions));
      split.push_back(static_cast<std::uint16_t>(cell.split));
    }
  }
  Json json = {{"below", packed(below)}};
  if (!mesh.cells.empty()) {
    json["above"] = packed(above);
    json["split"] = packed(split);
  }
  return json;
}

Json grid_of(const SolvedVariant& solved) {
  const solver::Field& field = solved.surface.field;
  Json basis = list();
  for (std::size_t a = 0; a + 1 < field.airs.size(); ++a)
    basis.push_back(packed_basis(field.basis[a]));
  return {{"x_mm", all_mm(field.mesh.x)},
          {"y_mm", all_mm(field.mesh.y)},
          {"cells", cells_of(field.mesh, solved.variant.regions.size())},
          {"basis", std::move(basis)}};
}

/// How each air of the field follows the spaces that may be changed: K by K. Shape: airs by
/// `drivers`.
Json follows(const SolvedVariant& solved, const std::vector<SpaceId>& drivers) {
  const solver::SpaceTemperatures stated = temperatures_of(solved.variant);
  const solver::SpaceTemperatures before = temperatures_with(solved, stated);
  Json rows = list();
  for (const SpaceId air : solved.surface.field.airs) {
    Json row = list();
    for (const SpaceId driver : drivers) {
      solver::SpaceTemperatures warmer = stated;
      warmer[driver] += 1.0;
      const double by = temperatures_with(solved, warmer)[air] - before[air];
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

std::size_t node_of(const geometry::Mesh& mesh, geometry::Point place) {
  const auto nearest = [](const std::vector<double>& lines, double at) {
    const auto closer = [at](double a, double b) { return std::abs(a - at) < std::abs(b - at); };
    return static_cast<std::size_t>(std::min_element(lines.begin(), lines.end(), closer) -
                                    lines.begin());
  };
  return mesh.node(nearest(mesh.x, place.x), nearest(mesh.y, place.y));
}

Json rooms_of(const SolvedVariant& solved) {
  Json rooms = list();
  for (const solver::AirSurface& surface : solved.surface.airs) {
    Json spots = list();
    for (const solver::Spot& spot : surface.cold_spots) {
      spots.push_back({{"node", node_of(solved.surface.field.mesh, spot.place)},
                       {"where", words_for(solved, spot)}});
    }
    rooms.push_back({{"air", surface.air.index},
                     {"coldest", node_of(solved.surface.field.mesh, surface.coldest.place)},
                     {"band_K", surface.coldest.temperature.band},
                     {"spots", std::move(spots)},
                     {"nodes", surface_nodes(solved.surface, surface.air)}});
  }
  return rooms;
}

Json criteria_of(const cases::Variant& variant) {
  Json all = list();
  for (const cases::Criterion& criterion : variant.criteria) {
    Json json = {{"name", criterion.name}};
    std::visit([&](const auto& test) { json["test"] = test.name; }, criterion.test);
    if (const auto* humidity = std::get_if<cases::SurfaceHumidityLimit>(&criterion.test))
      json["limit"] = humidity->limit;
    if (const auto* factor = std::get_if<cases::FactorThreshold>(&criterion.test))
      json["limit"] = factor->threshold;
    all.push_back(std::move(json));
  }
  return all;
}

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
    if (const std::optional<Box> room = room_of(view, id)) {
      const geometry::Point centre = view.place_of(room->centre);
      json["label_mm"] = {mm(centre.x), mm(centre.y), mm(room->width / view.scale()),
                          mm(room->height / view.scale())};
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
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    const cases::Space& space = variant.spaces[id];
    if (space.air == id && space.is != cases::SpaceKind::unheated) changed.push_back(id);
  }
  for (const SpaceId id : changed) drivers.push_back(id.index);
  for (std::size_t p = 0; p < variant.probes.size(); ++p) {
    const geometry::Point place = variant.probes[p].place;
    probes.push_back({{"name", variant.probes[p].name}, {"at_mm", {mm(place.x), mm(place.y)}}});
  }
  const bool wet =
      std::any_of(variant.spaces.begin(), variant.spaces.end(), [](const cases::Space& space) {
        return space.evaporation &&
               std::holds_alternative<materials::WetSurface>(*space.evaporation);
      });
  Json json = {{"name", variant.name},
               {"spaces", spaces_of(solved)},
               {"regions", std::move(regions)},
               {"airs", std::move(airs)},
               {"outside", outside_of(variant).index},
               {"drivers", std::move(drivers)},
               {"follows", follows(solved, changed)},
               {"rooms", rooms_of(solved)},
               {"probes", std::move(probes)},
               {"criteria", criteria_of(variant)},
               {"gate", gate(variant)},
               {"wet", wet}};
  if (variant.close_up) {
    const auto [west, east] = std::minmax_element(
        variant.close_up->begin(), variant.close_up->end(),
        [](const geometry::Point& a, const geometry::Point& b) { return a.x < b.x; });
    const auto [south, north] = std::minmax_element(
        variant.close_up->begin(), variant.close_up->end(),
        [](const geometry::Point& a, const geometry::Point& b) { return a.y < b.y; });
    json["close_up_mm"] = {mm(west->x), mm(east->x), mm(south->y), mm(north->y)};
  }
  if (field.mesh.nx() * field.mesh.ny() <= limit) json["grid"] = grid_of(solved);
  return json;
}

}  // namespace

std::string page_data(const Results& results, std::size_t limit) {
  Json colours = list();
  constexpr int shades = 64;
  for (int k = 0; k <= shades; ++k)
    colours.push_back(hex(shown(temperature_colour(static_cast<double>(k) / shades))));
  Json json = {{"colours", std::move(colours)},
               {"spreads", {{"humidity", humidity_spread}, {"factor", factor_spread}}},
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
