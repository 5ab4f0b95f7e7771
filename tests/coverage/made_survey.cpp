// SPDX-License-Identifier: Apache-2.0
#include "tests/coverage/made_survey.hpp"

#include <algorithm>
#include <cmath>
#include <memory>

#include "cases/read.hpp"
#include "tools/answer/survey/design_factor.hpp"
#include "tools/answer/survey/placed_readings.hpp"
#include "tools/answer/survey/survey_unknowns.hpp"
#include "tools/answer/survey/unknowns.hpp"

namespace quoin::testing {
namespace {

using cases::ExplanationKind;
using tools::UnknownKind;
using Random = std::mt19937;

/// A detail as a case file, and where it is read.
struct Drawn {
  std::string text;
  cases::SurveyBox zone;
  cases::SurveyBox stretch;
  std::vector<std::string> inside;  ///< probes of the room
  std::vector<std::string> outside;
};

const std::string head =
    "quoin: 1\n"
    "note: invented\n"
    "spaces:\n"
    "  room: {is: inside, temperature: 18.5, humidity: 60}\n"
    "  outdoors: {is: outside, temperature: 3}\n"
    "materials:\n"
    "  wall brick: {like: common brick, moisture: sheltered}\n"
    "section:\n";

std::string probes_text(const std::vector<std::pair<std::string, geometry::Point>>& probes) {
  std::string text = "probes:\n";
  for (const auto& [name, at] : probes)
    text += "  " + name + ": [" + std::to_string(1000 * at.x) + ", " + std::to_string(1000 * at.y) +
            "]\n";
  return text;
}

Drawn corner(double brick) {
  const double t = brick + 0.015;
  const std::string thickness = std::to_string(1000 * brick);
  Drawn drawn;
  drawn.text = head +
               "  corner:\n    leg: 1800\n    layers:\n"
               "      - {material: lime plaster, thickness: 15}\n"
               "      - {material: wall brick, thickness: " +
               thickness + "}\n";
  std::vector<std::pair<std::string, geometry::Point>> probes{
      {"b0", {t, t}},        {"b1", {t + 0.05, t}}, {"b2", {t + 0.15, t}}, {"b3", {t + 0.30, t}},
      {"b4", {t, t + 0.30}}, {"b5", {t + 0.45, t}}, {"a1", {t + 1.2, t}},  {"a2", {t, t + 1.2}},
      {"a3", {t + 1.5, t}},  {"o1", {t + 0.30, 0}}, {"o2", {t + 1.2, 0}}};
  drawn.text += probes_text(probes);
  drawn.zone = {0, t + 0.56, 0, t + 0.56};
  drawn.stretch = {t + 0.08, t + 0.56, t - 0.001, t + 0.001};
  drawn.inside = {"b0", "b1", "b2", "b3", "b4", "b5", "a1", "a2", "a3"};
  drawn.outside = {"o1", "o2"};
  return drawn;
}

Drawn wall() {
  Drawn drawn;
  drawn.text = head +
               "  wall:\n    height: 4000\n    layers:\n"
               "      - {material: lime plaster, thickness: 15}\n"
               "      - {material: wall brick, thickness: 225}\n";
  std::vector<std::pair<std::string, geometry::Point>> probes;
  const std::vector<double> y{0.25, 0.5, 0.8, 1.1, 1.4, 2.2, 2.6, 3.0, 3.5};
  for (std::size_t k = 0; k < y.size(); ++k) {
    const std::string name = (k < 5 ? "b" : "a") + std::to_string(k);
    probes.push_back({name, {0, y[k]}});
    drawn.inside.push_back(name);
  }
  probes.push_back({"o1", {0.240, 0.8}});
  probes.push_back({"o2", {0.240, 2.6}});
  drawn.text += probes_text(probes);
  drawn.zone = {0, 0.24, 0, 1.6};
  drawn.stretch = {-0.001, 0.001, 0.4, 1.6};
  drawn.outside = {"o1", "o2"};
  return drawn;
}

Drawn drawn(Detail detail) {
  switch (detail) {
    case Detail::corner_225:
      return corner(0.225);
    case Detail::corner_327:
      return corner(0.327);
    case Detail::corner_500:
      return corner(0.500);
    default:
      return wall();
  }
}

double normal(Random& random) { return std::normal_distribution<double>()(random); }

double student(Random& random) {
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
    default:
      return {};
  }
}

cases::Survey survey_of(const Drawn& drawn, const Recipe& recipe) {
  cases::Survey survey;
  survey.hour = recipe.wrong == Wrong::afternoon ? 15.0 : 7.0;
  survey.heating = 20.0;
  survey.rain = 60.0;
  survey.sun = 40.0;
  cases::Instrument probe;
  probe.name = "probe";
  survey.instruments = {probe};
  survey.airs = {{"outdoors", 0.6, {}, {}}, {"room", 0.6, {}, {}}};
  survey.zones = {{"zone", "", "wall brick", drawn.zone}};
  survey.stretches = {{"cupboard", "", drawn.stretch, {}}};
  std::vector<std::string> inside = drawn.inside;
  if (recipe.few)
    inside.resize(inside.size() - 2), inside.erase(inside.begin() + 1, inside.begin() + 3);
  for (const std::vector<std::string>& side : {inside, drawn.outside}) {
    for (const std::string& name : side) {
      cases::SurveyReading reading;
      reading.probe = name;
      reading.with = "probe";
      survey.readings.push_back(reading);
    }
  }
  return survey;
}

/// Draws the unknowns, some of them otherwise than the inference knows.
std::vector<double> true_unknowns(const tools::SurveyModel& model,
                                  const tools::Hypothesis& hypothesis, Wrong wrong,
                                  Random& random) {
  std::vector<double> at;
  for (std::size_t u = 0; u < hypothesis.before.size(); ++u) {
    const solver::Unknown& known = hypothesis.before[u];
    double z = normal(random);
    const UnknownKind kind = model.unknowns[u].kind;
    if (wrong == Wrong::thermometer && kind == UnknownKind::offset)
      z = (z < 0 ? -1.0 : 1.0) / known.sd;
    if (wrong == Wrong::resistance && kind == UnknownKind::surface) z = z < 0 ? -2.0 : 2.0;
    if (wrong == Wrong::afternoon && kind == UnknownKind::air_felt) z = -3.0 / known.sd;
    at.push_back(known.median + known.sd * z);
  }
  return at;
}

void write_readings(const tools::SurveyModel& model, const solver::ReadingModel& truth,
                    const std::vector<double>& at, Wrong wrong, Random& random,
                    cases::Survey& survey) {
  std::vector<double> standard;
  for (const std::size_t u : truth.active)
    standard.push_back((at[u] - truth.unknowns[u].median) / truth.unknowns[u].sd);
  std::vector<double> predicted(truth.spots.size());
  truth.predict(standard, predicted, nullptr);
  const double common = std::exp(0.35 * normal(random));
  for (std::size_t j = 0; j < predicted.size(); ++j) {
    const tools::SurveyedReading& reading = model.readings[j];
    const double scale = std::hypot(reading.deviation, reading.joints);
    double off = common * scale * student(random);
    if (wrong == Wrong::rough) off = scale * normal(random) + 0.4 * normal(random);
    if (wrong == Wrong::wild)
      off = scale * normal(random) +
            (std::uniform_real_distribution<double>()(random) < 0.12 ? 1.5 * normal(random) : 0.0);
    survey.readings[j].temperature = std::round(10 * (predicted[j] + off)) / 10;
  }
}

}  // namespace

MadeSurvey made_survey(const Recipe& recipe, std::uint32_t seed) {
  Random random(seed);
  const Drawn detail = drawn(recipe.detail);
  MadeSurvey made;
  made.of = "zone";
  made.source = cases::case_of(detail.text, "made.yaml");
  made.survey = survey_of(detail, recipe);
  cases::Survey truth = made.survey;
  if (recipe.wrong == Wrong::extent) {
    cases::SurveyBox& box = truth.zones[0].box;
    const cases::SurveyBox drawn_box = box;
    const bool is_corner = detail.zone.x_to == detail.zone.y_to;
    const double t = detail.zone.y_to - 0.56;
    box.y_to = is_corner ? t + 0.30 : 0.55 * drawn_box.y_to;
    if (is_corner) box.x_to = t + 0.30;
  }
  // A model of the truth: its one field is solved in full at the true unknowns.
  tools::SurveyModel model;
  model.survey = &truth;
  model.sections.push_back(tools::surveyed_section("", made.source.variants.front(), truth, 12.0));
  tools::place_readings(model);
  tools::list_unknowns(model);
  const tools::Hypothesis hypothesis =
      tools::hypothesis_of(model, explanation_of(recipe.truth), tools::ZoneExtent::as_drawn);
  std::vector<double> at = true_unknowns(model, hypothesis, recipe.wrong, random);
  std::vector<solver::Growth> growth = tools::growth_of(model, 0, hypothesis.extents);
  const auto ratio = *model.find(UnknownKind::ratio, "zone");
  if (recipe.wrong == Wrong::graded) {
    // Half of what it conducts better where the zone as drawn goes on beyond its core.
    for (solver::Growth& one : growth) {
      if (one.unknown == ratio && one.parameter < model.sections[0].zoned.regions.size() &&
          model.sections[0].zoned.regions[one.parameter].depth[0] < 3)
        one.power = 0.5;
    }
  }
  const solver::Setting setting = solver::setting_at({model.base[0], growth}, at);
  model.fields.push_back(std::make_unique<solver::ReducedField>(
      model.sections[0].parametrised, std::vector<solver::Setting>{setting}, model.watched[0],
      solver::LinearOptions{}));
  tools::FeltAirs felt;
  solver::ReadingModel readings = tools::reading_model(model, hypothesis, at, felt);
  readings.sections[0].growth = growth;
  tools::place_beside(model);
  write_readings(model, readings, at, recipe.wrong, random, made.survey);
  made.ratio = std::exp(at[ratio]);
  const auto brick = *model.find(UnknownKind::conductivity, "wall brick");
  made.conductivity = model.unknowns[brick].reference * std::exp(at[brick]);
  const tools::SurfaceField surface("", made.source.variants.front(), truth,
                                    solver::LinearOptions{});
  const tools::FabricState fabric = tools::fabric_of(model, surface, hypothesis, at);
  std::vector<double> air;
  for (const cases::SpaceId id : surface.section().airs)
    air.push_back(made.source.variants[0].spaces[id].is == cases::SpaceKind::inside ? 1.0 : 0.0);
  made.surface_factor = surface.coldest(surface.shares(fabric), 0, air);
  return made;
}

}  // namespace quoin::testing
