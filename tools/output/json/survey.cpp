// SPDX-License-Identifier: Apache-2.0
#include "tools/output/json/survey.hpp"

#include <cmath>
#include <numbers>

#include "tools/answer/survey/survey_words.hpp"

namespace quoin::tools {
namespace {

using Json = nlohmann::ordered_json;

Json or_null(const std::optional<double>& value) { return value ? Json(*value) : Json(); }

const char* words_of(Fit fit) {
  switch (fit) {
    case Fit::good:
      return "good";
    case Fit::weak:
      return "weak";
    case Fit::refused:
      return "refused";
  }
  return "";
}

Json gate_json(const Quality& quality) {
  Json rules = Json::array();
  for (const QualityRule& rule : quality.rules)
    rules.push_back({{"rule", rule.rule},
                     {"value", or_null(rule.value)},
                     {"unit", rule.unit},
                     {"good_from", or_null(rule.good_from)},
                     {"refused_from", or_null(rule.refused_from)},
                     {"fit", words_of(rule.fit)},
                     {"words", rule.words}});
  return {{"fit", words_of(quality.fit)}, {"rules", std::move(rules)}};
}

Json unknowns_json(const Explained& explained) {
  Json all = Json::array();
  for (const Learned& one : explained.unknowns)
    all.push_back({{"key", one.key},
                   {"of", one.of},
                   {"unit", one.unit},
                   {"prior_low", one.prior_low},
                   {"prior_median", one.prior_median},
                   {"prior_high", one.prior_high},
                   {"low", one.low},
                   {"median", one.median},
                   {"high", one.high},
                   {"learned_percent", 100 * one.learned}});
  return all;
}

Json readings_json(const Explained& explained) {
  Json all = Json::array();
  for (const ExpectedReading& one : explained.readings) {
    Json each = Json::object();
    if (!one.section.empty()) each["section"] = one.section;
    each["probe"] = one.probe;
    each["read_C"] = one.read;
    const bool counts = one.left_out.empty();
    each["expected_C"] = counts ? Json(one.expected) : Json();
    each["low_C"] = counts ? Json(one.low) : Json();
    each["high_C"] = counts ? Json(one.high) : Json();
    each["pull"] = counts ? Json(one.pull) : Json();
    each["left_out"] = !counts;
    if (!counts) each["left_out_because"] = one.left_out;
    all.push_back(std::move(each));
  }
  return all;
}

Json of_json(const cases::Explanation& what) {
  if (what.kind == cases::ExplanationKind::better_and_covered) return {what.of, what.also};
  return what.of.empty() ? Json() : Json(what.of);
}

}  // namespace

Json survey_json(const SurveyFindings& findings) {
  Json airs = Json::array(), explanations = Json::array(), next = Json::array();
  for (const FeltAir& air : findings.airs)
    airs.push_back({{"space", air.space},
                    {"said_C", air.said},
                    {"felt_C", air.felt},
                    {"standard_uncertainty_K", air.uncertainty},
                    {"from", air.from}});
  for (const Explained& one : findings.explanations)
    explanations.push_back({{"kind", kind_of(one.what.kind)},
                            {"of", of_json(one.what)},
                            {"log10_odds_to_best", one.log_odds / std::numbers::ln10},
                            {"odds_error", one.odds_error / std::numbers::ln10},
                            {"agreement", one.agreement},
                            {"effective_draws", one.effective},
                            {"unknowns", unknowns_json(one)},
                            {"readings", readings_json(one)}});
  for (const NextStep& step : findings.next)
    next.push_back({{"what", step.what},
                    {"target", step.target},
                    {"width_from", step.width_from},
                    {"width_to", step.width_to},
                    {"words", step.words}});
  return {{"gate", gate_json(findings.quality)},
          {"airs", std::move(airs)},
          {"explanations", std::move(explanations)},
          {"named", findings.named},
          {"lowest_odds", findings.lowest_odds},
          {"next", std::move(next)},
          {"words", findings.words},
          {"basis_error_K", findings.basis_error},
          {"solves", findings.solves}};
}

Json chance_json(const std::vector<Chance>& chances, const cases::Variant& variant) {
  Json all = Json::array();
  for (const Chance& chance : chances) {
    Json shares = Json::array(), tornado = Json::array();
    for (const ChanceShare& one : chance.shares)
      shares.push_back({{"input", one.input}, {"percent", 100 * one.share}});
    for (const TornadoBar& one : chance.tornado)
      tornado.push_back({{"input", one.input},
                         {"margin_low", one.low},
                         {"margin_high", one.high},
                         {"unit", chance.unit}});
    const auto safe = chance.highest_safe_humidity;
    all.push_back({{"criterion", chance.criterion},
                   {"space", variant.spaces[chance.space].name},
                   {"broken_percent", 100 * chance.broken},
                   {"sampling_error_percent", 100 * chance.sampling_error},
                   {"fabric_percent", 100 * chance.fabric},
                   {"household_percent", 100 * chance.household},
                   {"shares", std::move(shares)},
                   {"tornado", std::move(tornado)},
                   {"highest_safe_humidity_90_percent", safe ? Json(100 * *safe) : Json()},
                   {"enough_at_90_percent", chance.enough ? Json(1000 * *chance.enough) : Json()},
                   {"from_readings", chance.from_readings},
                   {"words", chance.words}});
  }
  return all;
}

}  // namespace quoin::tools
