// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/quality.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "tools/answer/survey/left_out.hpp"

namespace quoin::tools {
namespace {

constexpr double from_zone = 0.400;  ///< a reference is further from every zone, m
constexpr std::size_t inside_to_name = 5, in_zone_to_name = 2;
constexpr double thick_wall = 0.300;  ///< from which sun is remembered for a day, m

std::vector<double> medians_of(const SurveyModel& model) {
  std::vector<double> medians;
  for (const SurveyUnknown& unknown : model.unknowns) medians.push_back(unknown.before.median);
  return medians;
}

bool counts(const SurveyedReading& reading) { return reading.left_out.empty(); }

Fit grade(double value, double good_from, double refused_below) {
  if (value >= good_from) return Fit::good;
  return value >= refused_below ? Fit::weak : Fit::refused;
}

/// The reading whose wall the airs are told for: of the plainest place, far from zones and angles.
const SurveyedReading* plainest(const SurveyModel& model) {
  const SurveyedReading* best = nullptr;
  double best_distance = -1.0;
  for (const SurveyedReading& reading : model.readings) {
    if (!counts(reading) || !reading.is_inside) continue;
    double distance = std::min(reading.to_angle, 10.0);
    for (const double to_zone : reading.to_zone) distance = std::min(distance, to_zone);
    if (distance > best_distance) {
      best_distance = distance;
      best = &reading;
    }
  }
  return best;
}

class Rules {
 public:
  explicit Rules(const SurveyModel& model) : model_(model), survey_(*model.survey) {}

  Quality quality() {
    difference();
    outdoors();
    heating();
    sun();
    water();
    reference();
    enough();
    if (auto rule = left_out_rule(model_)) add(std::move(*rule));
    for (const QualityRule& rule : quality_.rules) quality_.fit = std::max(quality_.fit, rule.fit);
    return std::move(quality_);
  }

 private:
  void add(QualityRule rule) { quality_.rules.push_back(std::move(rule)); }

  void difference() {
    const std::vector<FeltAir> airs = felt_airs_of(model_);
    std::map<std::string, cases::SpaceKind> kind;
    for (const SurveyedSection& section : model_.sections) {
      for (const cases::SpaceId id : section.airs)
        kind[section.variant->spaces[id].name] = section.variant->spaces[id].is;
    }
    double inside = -1e9, outside = 1e9;
    for (const FeltAir& air : airs) {
      if (kind[air.space] == cases::SpaceKind::inside) inside = std::max(inside, air.felt);
      if (kind[air.space] != cases::SpaceKind::inside) outside = std::min(outside, air.felt);
    }
    const double span = inside > -1e8 && outside < 1e8 ? inside - outside : 0.0;
    const Fit fit = grade(span, 10.0, 5.0);
    add({"difference felt between inside and outside", span, "K", 10.0, 5.0, fit,
         fit == Fit::good ? fmt::format("The wall felt {:.1f} K between inside and outside.", span)
         : span < 0.0
             ? fmt::format(
                   "It was {:.1f} K warmer outside than inside: cold places show only where "
                   "it is cold outside. Read again on a cold night.",
                   -span)
             : fmt::format("The wall felt only {:.1f} K between inside and outside: at {} what is "
                           "wrong hides in what thermometers err. Read again on a colder night.",
                           span, fit == Fit::weak ? "less than 10 K" : "less than 5 K")});
  }

  void outdoors() {
    const SurveyedReading* plain = plainest(model_);
    for (const SurveyUnknown& unknown : model_.unknowns) {
      if (unknown.kind != UnknownKind::air_felt) continue;
      spot_value(unknown, plain);
    }
    if (plain == nullptr) return;
    for (const FeltAir& air : felt_airs_of(model_)) {
      const SurveyedSection& section = model_.sections[plain->section];
      for (std::size_t a = 0; a < section.airs.size(); ++a) {
        const cases::Space& space = section.variant->spaces[section.airs[a]];
        if (space.name != air.space || space.is != cases::SpaceKind::outside) continue;
        felt(air, share_at(*plain, a));
      }
    }
  }

  double share_at(const SurveyedReading& reading, std::size_t air) const {
    const std::size_t s = reading.section, airs = model_.sections[s].airs.size();
    std::vector<double> shares(model_.watched[s].size() * airs);
    const std::vector<ZoneExtent> extents(survey_.zones.size(), ZoneExtent::as_drawn);
    model_.fields[s]->evaluate(
        solver::setting_at({model_.base[s], growth_of(model_, s, extents)}, medians_of(model_)),
        shares);
    return shares[reading.watched * airs + air];
  }

  void felt(const FeltAir& air, double share) {
    const double moved = air.uncertainty * share;
    const bool lost = moved > 1.0;
    if (lost) quality_.may_tell_conductivity = false;
    const Fit fit = moved <= 0.5 ? Fit::good : Fit::weak;
    add({"what is uncertain of the outside air felt, at the surface", moved, "K", 0.5, std::nullopt,
         fit,
         fit == Fit::good
             ? fmt::format("'{}' is known well enough: what is open of it moves the surface by "
                           "{:.1f} K.",
                           air.space, moved)
             : fmt::format("What the wall felt of '{}' is open by {:.1f} K, which moves the "
                           "surface by {:.1f} K{}. A log of a day or two, or its lowest and "
                           "highest temperature, would settle it.",
                           air.space, air.uncertainty, moved,
                           lost ? ": no conductivity is told" : "")});
  }

  void spot_value(const SurveyUnknown& unknown, const SurveyedReading* plain) {
    const cases::SurveyedAir* said = surveyed_air(survey_, unknown.of);
    if (plain == nullptr || (said != nullptr && said->day_mean)) return;
    const bool by_day = !survey_.hour || (*survey_.hour >= 9.0 && *survey_.hour <= 20.0);
    add({"hour of a single outside temperature", survey_.hour, "h", std::nullopt, std::nullopt,
         by_day ? Fit::weak : Fit::good,
         by_day ? "Outdoors was read once, by day or at an hour not stated: a wall remembers the "
                  "night. Read before 9 h or after 20 h, or keep a log."
                : "Outdoors was read once, at an hour when it says most."});
  }

  void heating() {
    bool by_history = false;
    for (const SurveyedSection& section : model_.sections) {
      for (const cases::SpaceId id : section.airs) {
        const cases::SurveyedAir* said = surveyed_air(survey_, section.variant->spaces[id].name);
        if (section.variant->spaces[id].is == cases::SpaceKind::inside && said != nullptr &&
            said->history)
          by_history = true;
      }
    }
    const bool steady = by_history || survey_.heating.value_or(0.0) >= 12.0;
    add({"heating steady for", survey_.heating, "h", 12.0, std::nullopt,
         steady ? Fit::good : Fit::weak,
         steady ? (by_history ? "The temperature inside is known hour by hour."
                              : "The heating was steady for half a day or more.")
                : "The heating was not steady for 12 h, or that is not said: after a change walls "
                  "are half a kelvin off."});
  }

  void sun() {
    double thickest = 0.0;
    for (const SurveyedSection& section : model_.sections)
      thickest = std::max(thickest, section.variant->thickness);
    const double wanted = thickest >= thick_wall ? 24.0 : 12.0;
    const bool shone = survey_.sun && *survey_.sun < wanted;
    add({"sun on the wall, ago", survey_.sun, "h", wanted, std::nullopt,
         shone ? Fit::weak : Fit::good,
         shone ? fmt::format("Sun lay on the wall within {:.0f} h of the readings.", wanted)
               : "No sun lay on the wall lately."});
  }

  void water() {
    const bool rained = survey_.rain && *survey_.rain < 48.0;
    quality_.water_may_evaporate = rained || survey_.wet;
    add({"rain on the wall, ago", survey_.rain, "h", 48.0, std::nullopt,
         quality_.water_may_evaporate ? Fit::weak : Fit::good,
         quality_.water_may_evaporate
             ? "Rain within two days, or a surface wet to the eye: water that evaporates cools a "
               "wall as one that conducts better does."
             : "No rain lay on the wall for two days, and its surface looked dry."});
  }

  void reference() {
    if (survey_.zones.empty()) return;
    // By instrument and room: how many lie away from every zone, and who reads within one.
    std::map<std::pair<std::string, std::string>, std::size_t> away;
    std::map<std::pair<std::string, std::string>, std::size_t> within;
    for (const SurveyedReading& reading : model_.readings) {
      if (!counts(reading) || !reading.is_inside || reading.instrument == nullptr) continue;
      const SurveyedSection& section = model_.sections[reading.section];
      const cases::SpaceId air = section.variant->spaces[reading.space].air;
      const std::pair key{reading.instrument->name, section.variant->spaces[air].name};
      const double nearest = *std::min_element(reading.to_zone.begin(), reading.to_zone.end());
      if (nearest >= from_zone) ++away[key];
      if (nearest == 0.0) ++within[key];
    }
    std::size_t most = 0;
    for (const auto& [key, number] : within) most = std::max(most, away[key]);
    quality_.may_tell_ratio = most >= 1;
    // Without a reference no zone is compared; what is told of the whole wall stands: weak.
    add({"readings of a reference", static_cast<double>(most), "", 2.0, std::nullopt,
         most >= 2 ? Fit::good : Fit::weak,
         most >= 2   ? "Sound wall was read beside the zone, by the same thermometer."
         : most == 1 ? "A single spot of sound wall was read: two or more tell how even it is."
                     : "No sound wall was read by the same thermometer in the same room, 400 mm "
                       "from every zone: no zone is compared with it."});
  }

  void enough() {
    std::size_t inside = 0, in_zone = 0;
    for (const SurveyedReading& reading : model_.readings) {
      if (!counts(reading) || !reading.is_inside) continue;
      ++inside;
      if (!reading.to_zone.empty() &&
          *std::min_element(reading.to_zone.begin(), reading.to_zone.end()) == 0.0)
        ++in_zone;
    }
    const bool zones = !survey_.zones.empty();
    quality_.may_name = inside >= inside_to_name && (!zones || in_zone >= in_zone_to_name);
    add({"readings inside", static_cast<double>(inside), "", 5.0, std::nullopt,
         quality_.may_name ? Fit::good : Fit::weak,
         quality_.may_name
             ? fmt::format("{} readings count.", inside)
             : fmt::format("{} readings inside{}: at least five{} are needed before an "
                           "explanation is named.",
                           inside, zones ? fmt::format(", {} in a zone", in_zone) : "",
                           zones ? ", two of them in a zone," : "")});
  }

  const SurveyModel& model_;
  const cases::Survey& survey_;
  Quality quality_;
};

std::string source_of(const cases::Survey& survey, const cases::SurveyedAir* said, bool outdoors) {
  if (said != nullptr && said->history)
    return fmt::format("{} h of '{}'", said->history->hourly.size() - 1, said->history->table);
  if (said != nullptr && said->day_mean && outdoors) return "the mean of the day before";
  if (!outdoors) return "what is stated";
  return survey.hour ? fmt::format("one value at {:.0f} h", *survey.hour)
                     : "one value at an hour not stated";
}

}  // namespace

std::vector<FeltAir> felt_airs_of(const SurveyModel& model) {
  std::vector<FeltAir> airs;
  const Hypothesis drawn = as_drawn(model);
  const std::vector<double> medians = medians_of(model);
  FeltAirs felt;
  const SurveyedReading* plain = plainest(model);
  for (std::size_t s = 0; s < model.sections.size(); ++s) {
    const SurveyedSection& section = model.sections[s];
    for (std::size_t a = 0; a < section.airs.size(); ++a) {
      const cases::Space& space = section.variant->spaces[section.airs[a]];
      const bool told = std::any_of(airs.begin(), airs.end(),
                                    [&](const FeltAir& air) { return air.space == space.name; });
      if (told) continue;
      FeltAir air;
      air.space = space.name;
      air.said = space.temperature;
      air.felt = air.said;
      if (plain != nullptr && plain->section == s)
        air.felt = felt.at(model, *plain, a, drawn, medians);
      const bool outdoors = space.is == cases::SpaceKind::outside;
      auto u = model.find(UnknownKind::air_felt, space.name);
      if (!u) u = model.find(UnknownKind::air_now, space.name);
      air.uncertainty = u ? model.unknowns[*u].before.sd : 0.0;
      air.from = source_of(*model.survey, surveyed_air(*model.survey, space.name), outdoors);
      airs.push_back(std::move(air));
    }
  }
  return airs;
}

Quality quality_of(const SurveyModel& model) { return Rules(model).quality(); }

}  // namespace quoin::tools
