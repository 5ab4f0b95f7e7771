// SPDX-License-Identifier: Apache-2.0
#include "tests/coverage/made_survey.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <random>
#include <utility>

#include "cases/read.hpp"
#include "solver/survey/quasi_random.hpp"
#include "tests/coverage/true_section.hpp"
#include "tests/coverage/weather.hpp"

namespace quoin::testing {
namespace {

using cases::ExplanationKind;
using tools::UnknownKind;

constexpr std::uint32_t most_unknowns = 24;
constexpr std::size_t marched_hours = 12 * 24;
constexpr std::size_t known_hours = 48;

double normal(std::mt19937& random) { return std::normal_distribution<double>()(random); }

/// Numbers that are the same for the same recipe and numbers, and otherwise have nothing to do with
/// each other.
std::mt19937 random_of(const Recipe& recipe, std::uint32_t number, std::uint32_t of) {
  std::seed_seq seed{number,
                     of,
                     static_cast<std::uint32_t>(recipe.detail),
                     static_cast<std::uint32_t>(recipe.truth),
                     static_cast<std::uint32_t>(recipe.wrong),
                     static_cast<std::uint32_t>(recipe.weather),
                     static_cast<std::uint32_t>(recipe.read)};
  return std::mt19937(seed);
}

/// Standard normal values of every unknown. Each is spread evenly over the surveys of a block, one
/// in each twentieth of its chances, in an order of its own.
std::vector<double> spread_of(const Recipe& recipe, std::uint32_t number) {
  constexpr std::uint32_t block = 20;
  std::vector<double> spread;
  for (std::uint32_t u = 0; u < most_unknowns; ++u) {
    std::mt19937 random = random_of(recipe, number / block, u + 1);
    std::array<std::uint32_t, block> order{};
    for (std::uint32_t k = 0; k < block; ++k) order[k] = k;
    for (std::uint32_t left = block; left > 1; --left)
      std::swap(order[left - 1], order[random() % left]);
    const double within = (static_cast<double>(random()) + 0.5) * 0x1p-32;
    spread.push_back(solver::normal_quantile((static_cast<double>(order[number % block]) + within) /
                                             static_cast<double>(block)));
  }
  return spread;
}

/// Of Student's t with four degrees.
double student(std::mt19937& random) {
  const double chi = std::gamma_distribution<double>(2.0, 2.0)(random);
  return normal(random) / std::sqrt(chi / 4.0);
}

cases::Explanation explanation_of(ExplanationKind kind) {
  switch (kind) {
    case ExplanationKind::conducts_better:
    case ExplanationKind::conducts_less:
      return {kind, "zone", ""};
    case ExplanationKind::covered:
      return {kind, "cupboard", ""};
    case ExplanationKind::better_and_covered:
      return {kind, "zone", "cupboard"};
    case ExplanationKind::thermometer_off:
      return {kind, "probe", ""};
    case ExplanationKind::colder_outside:
      return {kind, "outdoors", ""};
    case ExplanationKind::as_drawn:
      break;
  }
  return {};
}

cases::Instrument instrument_of(const Recipe& recipe) {
  cases::Instrument probe;
  probe.name = "probe";
  if (recipe.read != Read::infrared) return probe;
  probe.infrared = true;
  probe.plus_or_minus = 0.6;
  probe.shared = 1.0;
  probe.reflected = 18.0;
  probe.spot = 0.04;
  return probe;
}

void add_reading(const std::string& place, const std::string& pad, cases::Survey& survey) {
  cases::SurveyReading reading;
  reading.probe = place;
  if (pad.empty()) {
    reading.with = "probe";
  } else {
    reading.difference = 0.0;
    reading.across = pad;
  }
  survey.readings.push_back(reading);
}

cases::Survey survey_of(const DrawnDetail& drawn, const Recipe& recipe) {
  cases::Survey survey;
  survey.hour = recipe.wrong == Wrong::afternoon ? 15.0 : 7.0;
  survey.heating = 20.0;
  survey.rain = recipe.wrong == Wrong::evaporation ? 20.0 : 60.0;
  survey.sun = 40.0;
  survey.instruments = {instrument_of(recipe)};
  survey.airs = {{"outdoors", 0.6, {}, {}}, {"room", 0.6, {}, {}}};
  survey.zones = {{"zone", "", "wall brick", drawn.zone}};
  if (recipe.brief) {
    for (const ExplanationKind kind : {ExplanationKind::as_drawn, ExplanationKind::conducts_better,
                                       ExplanationKind::conducts_less})
      survey.explanations.push_back(explanation_of(kind));
  } else {
    survey.stretches = {{"cupboard", "", drawn.stretch, {}}};
  }
  std::vector<std::string> inside = drawn.inside;
  if (recipe.few) {
    inside.pop_back();
    inside.pop_back();
    inside.erase(inside.begin() + 1, inside.begin() + 3);
  }
  for (const std::string& name : inside) add_reading(name, "", survey);
  for (const std::string& name : drawn.outside) add_reading(name, "", survey);
  if (recipe.read == Read::pads) {
    survey.pads = {{"pad", 0.10, 0.05}};
    add_reading(inside[inside.size() - 5], "pad", survey);
    add_reading(inside.back(), "pad", survey);
  }
  return survey;
}

/// Writes what was read into a survey.
void write_readings(const TrueSection& truth, const std::vector<double>& values,
                    const Recipe& recipe, std::mt19937& random, cases::Survey& survey) {
  const double common = std::exp(0.35 * normal(random));
  for (std::size_t r = 0; r < values.size(); ++r) {
    const tools::SurveyedReading& reading = truth.model.readings[r];
    const double scale = std::hypot(reading.deviation, reading.joints);
    double off = common * scale * student(random);
    if (recipe.wrong == Wrong::rough) off = scale * normal(random) + 0.4 * normal(random);
    if (recipe.wrong == Wrong::wild)
      off = scale * normal(random) +
            (std::uniform_real_distribution<double>()(random) < 0.12 ? 1.5 * normal(random) : 0.0);
    cases::SurveyReading& written = survey.readings[reading.number];
    if (written.difference) {
      written.difference = std::round(100 * (values[r] + common * scale * student(random))) / 100;
    } else {
      written.temperature = std::round(10 * (values[r] + off)) / 10;
    }
  }
}

/// What each air of a section was through the days before, and what is said of it.
std::vector<std::vector<double>> weather_of(const TrueSection& truth, const Recipe& recipe,
                                            std::mt19937& random, MadeSurvey& made) {
  std::vector<std::vector<double>> hourly;
  if (recipe.weather == Weather::steady) return hourly;
  const double off = 0.3 * normal(random);  // of the thermometer outside
  cases::Variant& variant = made.source.variants.front();
  for (const cases::SpaceId air : truth.model.sections[0].airs) {
    cases::Space& space = variant.spaces[air];
    if (space.is != cases::SpaceKind::outside) {
      const auto u = truth.model.find(UnknownKind::air_now, space.name);
      hourly.emplace_back(marched_hours + 1, space.temperature + truth.unknowns[*u]);
      continue;
    }
    hourly.push_back(winter_weather(space.temperature, *made.survey.hour, marched_hours, random));
    const std::vector<double>& all = hourly.back();
    space.temperature = std::round(10 * (all.back() + off)) / 10;
    cases::SurveyedAir& said = made.survey.airs.front();
    if (recipe.weather == Weather::lowest) {
      const auto [lowest, highest] = std::minmax_element(all.end() - 25, all.end());
      said.day_mean = (*lowest + *highest) / 2 + off;
    }
    if (recipe.weather == Weather::history) {
      cases::AirHistory history;
      for (std::size_t k = 0; k <= known_hours; ++k)
        history.hourly.push_back(all[all.size() - 1 - k] + off);
      said.history = history;
    }
  }
  return hourly;
}

}  // namespace

MadeSurvey made_survey(const Recipe& recipe, std::uint32_t number) {
  std::mt19937 random = random_of(recipe, number, 0);
  const DrawnDetail detail = drawn_detail(recipe.detail);
  MadeSurvey made;
  made.truth = explanation_of(recipe.truth);
  made.source = cases::case_of(detail.text, "made.yaml");
  made.survey = survey_of(detail, recipe);
  cases::Survey truly = made.survey;
  if (recipe.wrong == Wrong::extent) truly.zones[0].box = detail.half_zone;
  const std::vector<double> spread = spread_of(recipe, number);
  const TrueSection truth =
      true_section(made.source.variants.front(), truly, recipe, made.truth, spread);
  const auto hourly = weather_of(truth, recipe, random, made);
  write_readings(truth, true_readings(truth, recipe, hourly, random), recipe, random, made.survey);
  const auto ratio = *truth.model.find(UnknownKind::ratio, "zone");
  const auto brick = *truth.model.find(UnknownKind::conductivity, "wall brick");
  made.ratio = std::exp(truth.unknowns[ratio]);
  made.conductivity = truth.model.unknowns[brick].reference * std::exp(truth.unknowns[brick]);
  made.surface_factor = true_factor(truth);
  return made;
}

}  // namespace quoin::testing
