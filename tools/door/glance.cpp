// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "solver/solution.hpp"
#include "tools/answer/ask/physics.hpp"
#include "tools/answer/ask/question.hpp"
#include "tools/answer/find/developed.hpp"
#include "tools/answer/find/places.hpp"
#include "tools/answer/find/unheated.hpp"
#include "tools/answer/find/wet_surfaces.hpp"
#include "tools/answer/judge/judge.hpp"
#include "tools/door/case_text.hpp"
#include "tools/door/plate.hpp"
#include "tools/door/told.hpp"
#include "tools/draw/canvas/colours.hpp"
#include "tools/draw/field/bands.hpp"

namespace quoin::door {
namespace {

using Json = nlohmann::ordered_json;
using tools::SolvedVariant;

/// As far as solve() goes for the temperatures of surfaces.
SolvedVariant surface_solved(const cases::Variant& variant) {
  const solver::Effort effort;
  SolvedVariant solved;
  solved.variant = variant;
  solved.conductivity = tools::conductivities(variant);
  const bool wants_flows =
      std::any_of(variant.spaces.begin(), variant.spaces.end(), [](const cases::Space& space) {
        return !space.losses.empty() || space.evaporation.has_value();
      });
  if (wants_flows) {
    solved.heat =
        solver::solution_of(tools::question_of(variant, materials::Purpose::heat_flow), effort);
    tools::balance_unheated(solved);
  }
  solved.surface = solver::solution_of(
      tools::question_of(solved.variant, materials::Purpose::surface_temperature), effort);
  if (wants_flows) (void)tools::evaporate(solved);
  solved.humidity = tools::humidities(solved);
  return solved;
}

Json number_or_null(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

Json rooms_of(const SolvedVariant& solved) {
  Json rooms = Json::array();
  for (const solver::AirSurface* surface : tools::judged_surfaces(solved)) {
    const cases::Space& space = solved.variant.spaces[surface->air];
    const solver::Spot& coldest = surface->coldest;
    Json room = {{"space", space.name},
                 {"temperature_C", space.temperature},
                 {"humidity", space.humidity ? Json(*space.humidity) : Json(nullptr)},
                 {"coldest_C", coldest.temperature.value},
                 {"where", tools::words_for(solved, coldest)},
                 {"x_mm", in_mm(coldest.place.x)},
                 {"y_mm", in_mm(coldest.place.y)}};
    if (const tools::AirHumidity* air = tools::humidity_of(solved, surface->air)) {
      room["dew_point_C"] = number_or_null(air->dew_point);
      room["mould_C"] = number_or_null(air->mould_temperature);
    }
    rooms.push_back(std::move(room));
  }
  return rooms;
}

Json colours_of(const cases::Variant& variant) {
  const tools::Bands bands = tools::bands_of(variant);
  Json colours = Json::array();
  for (std::size_t k = 0; k <= bands.levels.size(); ++k) {
    colours.push_back({{"from_C", k == 0 ? bands.low : bands.levels[k - 1]},
                       {"to_C", k == bands.levels.size() ? bands.high : bands.levels[k]},
                       {"colour", tools::hex(tools::shown(bands.colour(k)))}});
  }
  return colours;
}

Json field_of(const SolvedVariant& solved) {
  const solver::Field& field = solved.surface.field;
  Json x = Json::array(), y = Json::array(), values = Json::array();
  for (const double line : field.mesh.x) x.push_back(in_mm(line));
  for (const double line : field.mesh.y) y.push_back(in_mm(line));
  for (std::size_t n = 0; n < field.mesh.nx() * field.mesh.ny(); ++n) {
    const double here = solved.surface.temperature[n];
    values.push_back(field.solid[n] == 0 ? Json(nullptr) : Json(std::round(here * 1e3) / 1e3));
  }
  return {{"x_mm", std::move(x)}, {"y_mm", std::move(y)}, {"temperature_C", std::move(values)}};
}

Json surfaces_of(const SolvedVariant& solved) {
  Json surfaces = Json::array();
  for (const tools::DevelopedSurface& surface : tools::developed_surfaces(solved)) {
    Json points = Json::array(), names = Json::array();
    for (std::size_t k = 0; k < surface.place.size(); ++k) {
      points.push_back({in_mm(surface.place[k].x), in_mm(surface.place[k].y),
                        in_mm(surface.along[k]), std::round(surface.temperature[k] * 1e3) / 1e3});
    }
    for (const tools::NamedStretch& named : tools::named_stretches(solved.variant, surface)) {
      names.push_back(
          {{"name", named.name}, {"from_mm", in_mm(named.from)}, {"to_mm", in_mm(named.to)}});
    }
    surfaces.push_back({{"space", solved.variant.spaces[surface.air].name},
                        {"points", std::move(points)},
                        {"places", std::move(names)}});
  }
  return surfaces;
}

}  // namespace

std::string glance(std::string_view text, const Look& look) {
  return or_refusal([&] {
    const cases::Case source = case_in(text, look.beside, look.of_house);
    const SolvedVariant solved = surface_solved(variant_in(source, look.variant));
    const tools::View view = plate_view(solved.variant, solved.surface.field.mesh.section);
    Json json = {{"variant", solved.variant.name},
                 {"rooms", rooms_of(solved)},
                 {"view", view_json(view)},
                 {"handles", handles_json(Written(text), solved.variant, view)},
                 {"colours", colours_of(solved.variant)},
                 {"picture", plate_svg(solved, look.letters)}};
    if (look.field) {
      json["field"] = field_of(solved);
      json["surfaces"] = surfaces_of(solved);
    }
    return told(json);
  });
}

}  // namespace quoin::door
