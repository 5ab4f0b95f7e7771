// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/survey_unknowns.hpp"

#include <algorithm>
#include <cmath>

#include "geometry/shape.hpp"
#include "materials/conductivity.hpp"
#include "materials/surface_resistance.hpp"
#include "tools/answer/ask/physics.hpp"
#include "tools/answer/survey/felt_air.hpp"
#include "tools/answer/survey/unknowns.hpp"

namespace quoin::tools {
namespace {

const std::string plain_surfaces = "plain surfaces";

void add(SurveyModel& model, UnknownKind kind, const std::string& of,
         const solver::Unknown& unknown, double reference = 1.0) {
  if (!model.find(kind, of)) model.unknowns.push_back({kind, of, unknown, reference});
}

const cases::Space& air_of(const SurveyedSection& section, cases::SpaceId space) {
  return section.variant->spaces[section.variant->spaces[space].air];
}

void list_conductivities(SurveyModel& model) {
  for (const SurveyedSection& section : model.sections) {
    const auto conductivity = conductivities(*section.variant);
    // The largest region of a name is what the name stands for.
    for (const cases::RegionId id : geometry::ids(section.variant->regions)) {
      if (!is_masonry(section, id)) continue;
      const cases::Region& region = section.variant->regions[id];
      add(model, UnknownKind::conductivity, region.name, {0.0, conductivity_spread(region)},
          conductivity[id].value);
    }
  }
  for (const cases::Zone& zone : model.survey->zones)
    add(model, UnknownKind::ratio, zone.name, before::ratio_as_drawn);
}

void list_surfaces(SurveyModel& model) {
  for (const SurveyedSection& section : model.sections) {
    for (const SurfaceKind& kind : section.kinds) {
      for (const auto& [unknown, of] : surface_unknowns(model, section, kind)) {
        switch (unknown) {
          case UnknownKind::surface:
            add(model, unknown, of, before::surface, before::inside_resistance);
            break;
          case UnknownKind::angle:
            add(model, unknown, of, before::angle);
            break;
          case UnknownKind::cover:
            add(model, unknown, of, {0.0, 0.0});
            break;
          case UnknownKind::stated_surface:
            add(model, unknown, of,
                {0.0, section.variant->spaces[kind.space].behind ? before::behind_spread
                                                                 : before::surface.sd},
                *kind.stated);
            break;
          default: {
            const auto wind = section.variant->spaces[kind.space].wind;
            add(model, unknown, of, before::outside_surface,
                wind ? materials::outside_resistance(*wind) : before::outside_resistance);
          }
        }
      }
    }
  }
}

/// The longest lag of any wall that was read from inside, h.
double longest_lag(const SurveyModel& model) {
  constexpr double of_one_brick = 10.8;
  double longest = 0.0;
  const std::vector<double> medians(model.unknowns.size(), 0.0);
  for (const SurveyedReading& reading : model.readings) {
    if (!reading.is_inside) continue;
    if (const auto lag = lag_of(model, reading, medians)) longest = std::max(longest, *lag);
  }
  return longest > 0.0 ? longest : of_one_brick;
}

void list_airs(SurveyModel& model) {
  const double lag = longest_lag(model);
  for (const SurveyedSection& section : model.sections) {
    for (const cases::SpaceId id : section.airs) {
      const cases::Space& space = section.variant->spaces[id];
      const cases::SurveyedAir* said = surveyed_air(*model.survey, space.name);
      const double own =
          (said != nullptr ? said->plus_or_minus : cases::SurveyedAir{}.plus_or_minus) / 2;
      const bool history = said != nullptr && said->history;
      if (space.is != cases::SpaceKind::outside) {
        const bool steady = history || model.survey->heating.value_or(0.0) >= 12.0;
        add(model, UnknownKind::air_now, space.name,
            {0.0, steady ? own : std::hypot(own, before::unsteady)});
        continue;
      }
      if (history) {
        const double hours = static_cast<double>(said->history->hourly.size() - 1);
        add(model, UnknownKind::air_now, space.name,
            {0.0, std::hypot(own, felt_from_history(hours, lag))});
        continue;
      }
      add(model, UnknownKind::air_now, space.name, {0.0, std::hypot(own, 0.4)});
      const double felt = said != nullptr && said->day_mean
                              ? felt_from_day(lag)
                              : felt_from_spot(model.survey->hour, lag);
      add(model, UnknownKind::air_felt, space.name, {0.0, std::hypot(own, felt)});
    }
  }
}

void list_instruments(SurveyModel& model) {
  for (const SurveyedReading& reading : model.readings) {
    if (reading.instrument == nullptr) continue;
    add(model, UnknownKind::offset, reading.instrument->name,
        {0.0, reading.instrument->shared / 2});
    if (reading.instrument->infrared)
      add(model, UnknownKind::emissivity, reading.instrument->name, before::emissivity);
  }
  for (const SurveyedReading& reading : model.readings) {
    if (reading.pad == nullptr) continue;
    add(model, UnknownKind::pad, reading.pad->name, {0.0, reading.pad->plus_or_minus / 2});
  }
}

void add_box(const cases::SurveyBox& box, std::vector<double>& place) {
  place.insert(place.end(), {box.x_from, box.x_to, box.y_from, box.y_to});
}

/// What an unknown is known by, whatever it is called and wherever it stands in the file.
std::vector<double> place_of(const SurveyModel& model, const SurveyUnknown& unknown) {
  std::vector<double> place{static_cast<double>(unknown.kind)};
  for (const cases::Zone& zone : model.survey->zones) {
    if (unknown.kind == UnknownKind::ratio && zone.name == unknown.of) add_box(zone.box, place);
  }
  for (const cases::Stretch& stretch : model.survey->stretches) {
    if (unknown.kind == UnknownKind::cover && stretch.name == unknown.of)
      add_box(stretch.box, place);
  }
  for (std::size_t r = 0; r < model.readings.size(); ++r) {
    const SurveyedReading& reading = model.readings[r];
    const bool by_it = reading.instrument != nullptr && reading.instrument->name == unknown.of;
    const bool across = reading.pad != nullptr && reading.pad->name == unknown.of;
    if ((by_it &&
         (unknown.kind == UnknownKind::offset || unknown.kind == UnknownKind::emissivity)) ||
        (across && unknown.kind == UnknownKind::pad))
      place.push_back(static_cast<double>(r));
  }
  for (const SurveyedSection& section : model.sections) {
    for (const cases::SpaceId air : section.airs) {
      const cases::Space& space = section.variant->spaces[air];
      if (space.name == unknown.of) place.push_back(space.temperature);
    }
  }
  place.insert(place.end(), {unknown.reference, unknown.before.median, unknown.before.sd});
  return place;
}

/// Which unknown goes with which coordinate of the draws must not hang on the order of the file.
void in_order(SurveyModel& model) {
  std::stable_sort(model.unknowns.begin(), model.unknowns.end(),
                   [&](const SurveyUnknown& a, const SurveyUnknown& b) {
                     return place_of(model, a) < place_of(model, b);
                   });
}

solver::Setting base_of(const SurveyModel& model, const SurveyedSection& section) {
  solver::Setting base;
  const auto conductivity = conductivities(*section.variant);
  for (const ZonedRegion& region : section.zoned.regions)
    base.conductivity.push_back(conductivity[region.region].value);
  for (const SurfaceKind& kind : section.kinds) {
    double resistance = 1e-6;  // as good as none
    for (const auto& [unknown, of] : surface_unknowns(model, section, kind)) {
      const auto u = model.find(unknown, of);
      if (unknown == UnknownKind::surface || unknown == UnknownKind::stated_surface ||
          unknown == UnknownKind::outside_surface)
        resistance = kind.stated ? *kind.stated : model.unknowns[*u].reference * kind.ratio;
    }
    base.conductance.push_back(1.0 / resistance);
  }
  return base;
}

}  // namespace

std::vector<std::pair<UnknownKind, std::string>> surface_unknowns(const SurveyModel& model,
                                                                  const SurveyedSection& section,
                                                                  const SurfaceKind& kind) {
  const cases::Space& space = section.variant->spaces[kind.space];
  std::vector<std::pair<UnknownKind, std::string>> all;
  if (kind.stated) {
    if (*kind.stated > 0.0) all.emplace_back(UnknownKind::stated_surface, space.name);
    return all;
  }
  if (space.is == cases::SpaceKind::outside)
    return {{UnknownKind::outside_surface, air_of(section, kind.space).name}};
  all.emplace_back(UnknownKind::surface, space.is == cases::SpaceKind::inside
                                             ? plain_surfaces
                                             : air_of(section, kind.space).name);
  if (kind.at_angle) all.emplace_back(UnknownKind::angle, "inside angles");
  for (const std::size_t s : kind.stretches)
    all.emplace_back(UnknownKind::cover, model.survey->stretches[s].name);
  return all;
}

void list_unknowns(SurveyModel& model) {
  list_conductivities(model);
  list_surfaces(model);
  for (const SurveyedSection& section : model.sections)
    model.base.push_back(base_of(model, section));
  list_airs(model);
  list_instruments(model);
  in_order(model);
}

bool is_masonry(const SurveyedSection& section, cases::RegionId id) {
  constexpr double least_conductivity = 0.2, most_conductivity = 5.0;  // W/(m K)
  constexpr double least_density = 700.0;                              // kg/m3
  constexpr double least_thickness = 0.045;                            // m
  const cases::Region& region = section.variant->regions[id];
  const materials::Material& material = region.material;
  if (region.part != materials::Part::fabric || material.cavity || material.air_layer) return false;
  if (material.conductivity.value < least_conductivity ||
      material.conductivity.value > most_conductivity || material.density.value < least_density)
    return false;
  const geometry::Section drawn = geometry::section_of(section.variant->sheet);
  const geometry::Shape shape = geometry::shape_of(drawn, id);
  return shape.pieces > 0 && shape.area >= least_thickness * (shape.width + shape.height);
}

double conductivity_spread(const cases::Region& region) {
  const materials::Sourced& value = region.material.conductivity;
  double spread = before::masonry_spread;
  if (value.low && value.high && *value.low > 0.0 && *value.high > *value.low)
    spread = std::log(*value.high / *value.low) / before::ninety_of_100;
  if (!region.driest || !region.wettest) return spread;
  const double dry = materials::conductivity_of(region.material, *region.driest).value;
  const double wet = materials::conductivity_of(region.material, *region.wettest).value;
  return std::hypot(spread, std::log(wet / dry) / before::ninety_of_100);
}

}  // namespace quoin::tools
