// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/placed_readings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>
#include <utility>

#include "tools/answer/survey/unknowns.hpp"

namespace quoin::tools {
namespace {

using geometry::Point;

constexpr double on_the_surface = 0.003;  // m
constexpr double least_emissivity = 0.85;
const std::string unnamed = "thermometer";

/// The instrument of a reading; one that names none has a thermometer of its own sort.
const cases::Instrument* instrument_of(const SurveyModel& model,
                                       const cases::SurveyReading& reading) {
  const std::string& name = reading.with.empty() ? unnamed : reading.with;
  for (const cases::Instrument& one : model.instruments) {
    if (one.name == name) return &one;
  }
  return nullptr;
}

const cases::Pad* pad_of(const cases::Survey& survey, const std::string& name) {
  for (const cases::Pad& pad : survey.pads) {
    if (pad.name == name) return &pad;
  }
  return nullptr;
}

double away(const cases::SurveyBox& box, Point place) {
  const double x = std::max({box.x_from - place.x, place.x - box.x_to, 0.0});
  const double y = std::max({box.y_from - place.y, place.y - box.y_to, 0.0});
  return std::hypot(x, y);
}

void leave_out_unfit(SurveyedReading& reading) {
  const cases::Instrument* one = reading.instrument;
  if (one == nullptr || !one->infrared) return;
  if (is_too_shiny(reading)) {
    reading.left_out = fmt::format("surface of emissivity {:.2f}, below {:.2f}", one->emissivity,
                                   least_emissivity);
  } else if (one->spot > reading.to_angle) {
    reading.left_out = fmt::format("spot of {:.0f} mm reaches round the angle {:.0f} mm away",
                                   1000 * one->spot, 1000 * reading.to_angle);
  }
}

/// The place of a reading and what is watched for it.
void place(SurveyModel& model, std::size_t s, SurveyedReading& reading) {
  const SurveyedSection& section = model.sections[s];
  std::vector<solver::Watched>& watched = model.watched[s];
  reading.watched = watched.size();
  const auto found = nearest_on_surface(section, reading.place);
  reading.on_surface = found && found->distance <= on_the_surface;
  if (!reading.on_surface) {
    for (int k = 0; k < 3; ++k) watched.push_back(at_point(section, reading.place));
    reading.is_inside = false;
    return;
  }
  const geometry::Surface& surface = section.surfaces[found->surface];
  const double width = reading.pad != nullptr ? 0.0 : reading.instrument->spot;
  watched.push_back(mean_about(section, *found, width));
  for (const double way : {-before::placing / 2, before::placing / 2}) {
    OnSurface moved = *found;
    moved.along = std::clamp(moved.along + way, surface.along.front(), surface.along.back());
    watched.push_back(mean_about(section, moved, std::max(width, 1e-4)));
  }
  const geometry::Face& face = surface.faces[found->face];
  reading.space = face.space;
  reading.is_inside = section.variant->spaces[face.space].is != cases::SpaceKind::outside;
  const auto& faces = section.parametrised.faces;
  const auto same = std::find_if(faces.begin(), faces.end(), [&](const geometry::Face& one) {
    return one.from == face.from && one.to == face.to && one.space == face.space;
  });
  reading.group = section.parametrised.group[static_cast<std::size_t>(same - faces.begin())];
  reading.behind = wall_behind(section, *found);
  for (const Point angle : section.angles)
    reading.to_angle = std::min(reading.to_angle,
                                std::hypot(angle.x - reading.place.x, angle.y - reading.place.y));
  leave_out_unfit(reading);
}

/// A reading as the file has it.
SurveyedReading reading_of(const SurveyModel& model, std::size_t s, std::size_t number) {
  const SurveyedSection& section = model.sections[s];
  const cases::SurveyReading& read = model.survey->readings[number];
  SurveyedReading reading;
  reading.section = s;
  reading.number = number;
  reading.probe = read.probe;
  for (const cases::Probe& probe : section.variant->probes) {
    if (probe.name == read.probe) reading.place = probe.place;
  }
  if (read.difference) {
    reading.pad = pad_of(*model.survey, read.across);
    reading.read = *read.difference;
    reading.joints = 0.0;
    reading.deviation = read.plus_or_minus ? *read.plus_or_minus / 2 : before::pad_difference;
  } else {
    reading.instrument = instrument_of(model, read);
    reading.read = read.temperature;
    reading.joints = before::joints;
    reading.deviation =
        (read.plus_or_minus ? *read.plus_or_minus : reading.instrument->plus_or_minus) / 2;
  }
  for (const cases::Zone& zone : model.survey->zones)
    reading.to_zone.push_back(zone.section == section.name ? away(zone.box, reading.place) : 1e9);
  return reading;
}

/// By place, then by what was read there.
bool comes_before(const SurveyedReading& a, const SurveyedReading& b) {
  return std::tuple{a.place.x, a.place.y, a.pad != nullptr, a.read, a.deviation} <
         std::tuple{b.place.x, b.place.y, b.pad != nullptr, b.read, b.deviation};
}

/// A place of a section that was not read, as if by an instrument.
SurveyedReading unread(SurveyModel& model, std::size_t s, const std::string& probe, Point at,
                       const cases::Instrument* instrument) {
  SurveyedReading reading;
  reading.section = s;
  reading.probe = probe;
  reading.place = at;
  reading.instrument = instrument;
  reading.deviation = instrument->plus_or_minus / 2;
  reading.joints = before::joints;
  for (const cases::Zone& zone : model.survey->zones)
    reading.to_zone.push_back(zone.section == model.sections[s].name ? away(zone.box, at) : 1e9);
  place(model, s, reading);
  return reading;
}

/// Probes without a reading, and outside faces opposite to those with one.
void place_candidates(SurveyModel& model) {
  const auto used =
      std::find_if(model.readings.begin(), model.readings.end(),
                   [](const SurveyedReading& reading) { return reading.instrument != nullptr; });
  if (used == model.readings.end()) return;
  const cases::Instrument* instrument = used->instrument;
  const auto was_read = [&](std::size_t s, Point at) {
    return std::any_of(model.readings.begin(), model.readings.end(),
                       [&](const SurveyedReading& reading) {
                         return reading.section == s &&
                                std::hypot(reading.place.x - at.x, reading.place.y - at.y) < 0.02;
                       });
  };
  for (std::size_t s = 0; s < model.sections.size(); ++s) {
    for (const cases::Probe& probe : model.sections[s].variant->probes) {
      if (!was_read(s, probe.place))
        model.candidates.push_back(unread(model, s, probe.name, probe.place, instrument));
    }
  }
  for (std::size_t r = 0; r < model.readings.size(); ++r) {
    const SurveyedReading& reading = model.readings[r];
    if (!reading.is_inside || !reading.behind.opposite.valid() || reading.instrument == nullptr ||
        reading.to_angle < 0.3 || was_read(reading.section, reading.behind.exit))
      continue;
    model.candidates.push_back(unread(model, reading.section,
                                      fmt::format("the outside face opposite {}", reading.probe),
                                      reading.behind.exit, instrument));
  }
}

}  // namespace

void place_readings(SurveyModel& model) {
  model.instruments = model.survey->instruments;
  const bool named = std::any_of(model.instruments.begin(), model.instruments.end(),
                                 [](const cases::Instrument& one) { return one.name == unnamed; });
  if (!named) {
    cases::Instrument own;
    own.name = unnamed;
    own.plus_or_minus = 0.5;
    model.instruments.push_back(own);
  }
  model.watched.resize(model.sections.size());
  for (std::size_t s = 0; s < model.sections.size(); ++s) {
    std::vector<SurveyedReading> of_section;
    for (std::size_t r = 0; r < model.survey->readings.size(); ++r) {
      if (model.survey->readings[r].section == model.sections[s].name)
        of_section.push_back(reading_of(model, s, r));
    }
    // What is told must not hang on the order of the file.
    std::stable_sort(of_section.begin(), of_section.end(), comes_before);
    for (SurveyedReading& reading : of_section) {
      place(model, s, reading);
      model.readings.push_back(std::move(reading));
    }
  }
  place_candidates(model);
}

bool is_too_shiny(const SurveyedReading& reading) {
  const cases::Instrument* one = reading.instrument;
  return one != nullptr && one->infrared && one->emissivity < least_emissivity;
}

void place_beside(SurveyModel& model) {
  const Hypothesis drawn = as_drawn(model);
  FeltAirs felt_airs;
  std::vector<double> medians;
  for (const solver::Unknown& unknown : drawn.before) medians.push_back(unknown.median);
  for (std::size_t s = 0; s < model.sections.size(); ++s) {
    const SurveyedSection& section = model.sections[s];
    const std::size_t airs = section.airs.size();
    std::vector<double> shares(model.watched[s].size() * airs);
    model.fields[s]->evaluate(
        solver::setting_at({model.base[s], growth_of(model, s, drawn.extents)}, medians), shares);
    for (SurveyedReading& reading : model.readings) {
      if (reading.section != s) continue;
      std::array<double, 3> there{};
      double coldest = 1e9, warmest = -1e9, air_deviation = 0.0;
      for (std::size_t a = 0; a < airs; ++a) {
        const double air = felt_airs.at(model, reading, a, drawn, medians);
        const auto now =
            model.find(UnknownKind::air_now, section.variant->spaces[section.airs[a]].name);
        coldest = std::min(coldest, air);
        warmest = std::max(warmest, air);
        if (now) air_deviation = std::max(air_deviation, model.unknowns[*now].before.sd);
        for (std::size_t k = 0; k < there.size(); ++k)
          there[k] += shares[(reading.watched + k) * airs + a] * air;
      }
      const double beside = std::max(std::abs(there[1] - there[0]), std::abs(there[2] - there[0]));
      if (reading.pad == nullptr) {
        reading.deviation = std::hypot(reading.deviation, beside);
        const double u =
            std::hypot(reading.deviation, air_deviation, reading.instrument->shared / 2);
        if (reading.left_out.empty() &&
            (reading.read > warmest + 2 * u || reading.read < coldest - 2 * u))
          reading.left_out = "beyond the temperatures of the airs";
        if (reading.left_out.empty() && 2 * reading.deviation > warmest - coldest)
          reading.left_out = "may be off by more than the airs differ";
      }
    }
  }
}

}  // namespace quoin::tools
