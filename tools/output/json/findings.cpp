// SPDX-License-Identifier: Apache-2.0
#include "tools/output/json/findings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "cases/text/decimal.hpp"
#include "cases/text/harmless.hpp"
#include "cases/text/utf8.hpp"
#include "tools/answer/find/places.hpp"
#include "tools/answer/find/readings.hpp"
#include "tools/answer/judge/judge.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/results/version.hpp"
#include "tools/answer/words/choices.hpp"
#include "tools/answer/words/outcome_words.hpp"
#include "tools/output/json/survey.hpp"
#include "tools/output/json/timber_ends.hpp"
#include "tools/output/json/vapour.hpp"
#include "tools/output/json/year.hpp"

namespace quoin::tools {
namespace {

using Json = nlohmann::ordered_json;

constexpr int format_version = 1;

/// A value in a unit `factor` times smaller, without the last digits that multiplying brings in:
/// 345 mm, not 345.00000000000006.
double in_units(double value, double factor) {
  if (!std::isfinite(value)) return value;
  const std::string digits = fmt::format("{:.12g}", value * factor);
  double rounded = 0.0;
  cases::from_decimal(digits.data(), digits.data() + digits.size(), rounded);
  return rounded;
}
double mm(double metres) { return in_units(metres, 1000.0); }
double percent(double fraction) { return in_units(fraction, 100.0); }

Json list() { return Json::array(); }
Json object() { return Json::object(); }

Json place_of(geometry::Point place) { return Json::array({mm(place.x), mm(place.y)}); }

/// Writes one variant.
class VariantFindings {
 public:
  explicit VariantFindings(const SolvedVariant& solved)
      : solved_(solved), variant_(solved.variant) {}

  [[nodiscard]] Json json() const {
    Json all = {{"name", variant_.name},
                {"summary", solved_.summary},
                {"surface", surface()},
                {"heat", heat()},
                {"outcomes", outcomes()},
                {"verdicts", verdicts()},
                {"enough", enough_json(solved_)},
                {"year", years_json(solved_)},
                {"plain", plain()},
                {"psi_W_mK", psi()},
                {"materials", materials()},
                {"cut_planes", cut_planes()},
                {"warnings", solved_.warnings},
                {"checks", checks()},
                {"mesh", mesh()}};
    if (!variant_.readings.empty()) all["readings"] = readings();
    if (!solved_.chances.empty()) all["chance"] = chance_json(solved_.chances, variant_);
    if (solved_.vapour) all["vapour"] = vapour_json(solved_);
    if (solved_.drying) all["drying"] = drying_json(solved_);
    if (!solved_.timber_ends.empty()) all["timber_ends"] = timber_ends_json(solved_);
    return all;
  }

 private:
  [[nodiscard]] const std::string& name(SpaceId space) const { return variant_.spaces[space].name; }

  [[nodiscard]] Json spot(const solver::Spot& spot) const {
    return {{"temperature_C", spot.temperature.value},
            {"temperature_band_K", spot.temperature.band},
            {"x_mm", mm(spot.place.x)},
            {"y_mm", mm(spot.place.y)},
            {"along_mm", mm(spot.along)},
            {"where", words_for(solved_, spot)},
            {"material", variant_.regions[spot.region].name},
            {"fRsi", spot.factor.value},
            {"fRsi_band", spot.factor.band},
            {"band_is_converged", spot.factor.asymptotic && spot.temperature.asymptotic},
            {"thermometer_10mm_C", spot.thermometer}};
  }

  [[nodiscard]] const cases::Criterion& criterion_of(const std::string& name) const {
    return *std::find_if(variant_.criteria.begin(), variant_.criteria.end(),
                         [&](const cases::Criterion& known) { return known.name == name; });
  }

  [[nodiscard]] Json air(const solver::AirSurface& surface) const {
    Json coldest = spot(surface.coldest);
    Json result = {{"temperature_C", variant_.spaces[surface.air].temperature}};
    if (const AirHumidity* humidity = humidity_of(solved_, surface.air)) {
      coldest["surface_humidity_percent"] = percent(humidity->surface_humidity);
      coldest["margin_to_mould_K"] = humidity->margin_to_mould;
      coldest["margin_to_condensation_K"] = humidity->margin_to_condensation;
      result["humidity_percent"] = percent(humidity->humidity);
      result["dew_point_C"] = humidity->dew_point;
      result["mould_temperature_C"] = humidity->mould_temperature;
      result["limit_by"] = humidity->limit_by;
      result["limit_percent"] = percent(humidity->limit);
      result["lowest_temperature_C"] = humidity->lowest_temperature;
      result["fRsi_needed"] = humidity->factor_needed;
      result["highest_safe_humidity_percent"] = percent(humidity->highest_safe_humidity);
    }
    result["coldest"] = std::move(coldest);
    if (const auto& proved = surface.thermometer) {
      result["thermometer"] = {{"temperature_C", proved->temperature},
                               {"low", proved->low},
                               {"high", proved->high},
                               {"x_mm", mm(proved->place.x)},
                               {"y_mm", mm(proved->place.y)}};
    }
    result["cold_spots"] = list();
    for (const solver::Spot& each : surface.cold_spots) result["cold_spots"].push_back(spot(each));
    return result;
  }

  [[nodiscard]] Json probes(const solver::Solution& solution) const {
    Json all = object();
    for (std::size_t p = 0; p < solution.probes.size(); ++p) {
      const solver::ProbeValue& probe = solution.probes[p];
      all[variant_.probes[p].name] = {{"temperature_C", probe.temperature.value},
                                      {"band_K", probe.temperature.band},
                                      {"x_mm", mm(probe.place.x)},
                                      {"y_mm", mm(probe.place.y)}};
    }
    return all;
  }

  [[nodiscard]] Json flows(const solver::Solution& solution) const {
    Json all = object();
    for (const SpaceId space : geometry::ids(solution.flows)) {
      all[name(space)] = solution.flows[space];
    }
    return all;
  }

  [[nodiscard]] Json surface() const {
    Json spaces = object();
    for (const solver::AirSurface& each : solved_.surface.airs) spaces[name(each.air)] = air(each);
    return {{"spaces", std::move(spaces)},
            {"probes", probes(solved_.surface)},
            {"flows_W_m", flows(solved_.surface)},
            {"accurate", solved_.surface.accurate}};
  }

  [[nodiscard]] Json heat() const {
    Json couplings = list();
    for (const solver::Coupling& coupling : solved_.heat.couplings) {
      couplings.push_back({{"between", {name(coupling.a), name(coupling.b)}},
                           {"value", coupling.value},
                           {"low", coupling.low},
                           {"high", coupling.high}});
    }
    Json spaces = object();
    for (const solver::AirSurface& each : solved_.heat.airs)
      spaces[name(each.air)] = {{"coldest", spot(each.coldest)}};
    return {{"spaces", std::move(spaces)},
            {"flows_W_m", flows(solved_.heat)},
            {"L2D_W_mK", std::move(couplings)},
            {"probes", probes(solved_.heat)},
            {"accurate", solved_.heat.accurate}};
  }

  [[nodiscard]] Json outcomes() const {
    Json all = list();
    for (const Outcome& outcome : solved_.outcomes) {
      Json each = {{"space", name(outcome.space)},
                   {"outcome", words_for(outcome.kind)},
                   {"tone", word_for(tone_of(outcome.kind))}};
      if (outcome.limit) {
        each["decided_by"] = deciders(outcome);
        if (outcome.unit == "1") {
          each["limit_fRsi"] = *outcome.limit;
        } else {
          each["limit_percent"] = percent(*outcome.limit);
        }
        each["margin"] = outcome.margin;
        each["band"] = outcome.band;
        each["unit"] = outcome.unit;
      }
      each["broken"] = list();
      for (const BrokenLimit& limit : outcome.broken) each["broken"].push_back(limit.criterion);
      if (outcome.chance) each["chance"] = *outcome.chance;
      each["words"] = outcome.words;
      all.push_back(std::move(each));
    }
    return all;
  }

  [[nodiscard]] Json verdicts() const {
    Json all = list();
    for (const Verdict& verdict : solved_.verdicts) {
      Json each = {{"criterion", verdict.criterion},
                   {"space", name(verdict.space)},
                   {"holds", verdict.holds},
                   {"has", verdict.unit == "1" ? verdict.has : percent(verdict.has)},
                   {"margin", verdict.margin},
                   {"band", verdict.band},
                   {"unit", verdict.unit},
                   {"limit_within_band", std::abs(verdict.margin) <= verdict.band}};
      const cases::Criterion& criterion = criterion_of(verdict.criterion);
      if (!criterion.guide.empty()) {
        each["guide"] = criterion.guide;
        each["source"] = criterion.source;
        each["confidence"] = words_for(criterion.confidence);
      }
      if (const auto* threshold = std::get_if<cases::FactorThreshold>(&criterion.test)) {
        each["threshold"] = threshold->threshold;
        if (threshold->resistance) each["threshold_for_Rsi_m2K_W"] = *threshold->resistance;
      }
      if (verdict.grade) {
        each["grade"] = words_for(verdict.grade->degree);
        each["chance"] = verdict.grade->chance;
        each["assumed_humidity_percent"] = percent(verdict.grade->humidity);
      }
      if (!verdict.gate.empty()) each["withheld_because"] = verdict.gate;
      all.push_back(std::move(each));
    }
    return all;
  }

  [[nodiscard]] Json plain() const {
    Json all = list();
    for (const solver::PlainPart& part : solved_.plain) {
      all.push_back({{"name", part.name},
                     {"U_W_m2K", part.transmittance},
                     {"fRsi", part.surface_factor},
                     {"surface_temperature_C", part.surface_temperature}});
    }
    return all;
  }

  [[nodiscard]] Json psi() const {
    Json all = list();
    for (const solver::LinearTransmittance& psi : solved_.psi) {
      const bool stated = !variant_.recipe;
      all.push_back({{"dimensions", stated ? "as stated" : words_for(psi.dimensions)},
                     {"value", psi.value.value},
                     {"band", psi.value.band}});
      if (variant_.psi.catalogue) all.back()["catalogue"] = *variant_.psi.catalogue;
      if (psi.floor != solver::FloorLoss::none)
        all.back()["floor"] = psi.floor == solver::FloorLoss::solved ? "solved" : "ISO 13370";
    }
    return all;
  }

  [[nodiscard]] Json materials() const {
    Json all = list();
    for (const RegionId id : geometry::ids(variant_.regions)) {
      const cases::Region& region = variant_.regions[id];
      const quoin::materials::Material& material = region.material;
      all.push_back({{"name", region.name},
                     {"material", material.name},
                     {"state", region.state.empty() ? "dry" : region.state},
                     {"moisture_m3_m3", region.moisture},
                     {"conductivity_dry_W_mK", material.conductivity.value},
                     {"conductivity_W_mK", solved_.conductivity[id].value},
                     {"law", std::string(solved_.conductivity[id].law)},
                     {"source", material.conductivity.source},
                     {"confidence", words_for(material.conductivity.confidence)},
                     {"law_source", material.law_source},
                     {"law_confidence", words_for(material.law_confidence)}});
    }
    return all;
  }

  [[nodiscard]] Json readings() const {
    Json all = list();
    for (const ComparedReading& reading : compared_readings(solved_)) {
      all.push_back({{"probe", reading.probe},
                     {"read_C", reading.read},
                     {"plus_or_minus_K", reading.plus_minus},
                     {"computed_with_surface_resistances_C", reading.with_surface},
                     {"computed_with_heat_resistances_C", reading.with_heat},
                     {"computed_C", reading.computed},
                     {"explained", reading.explained}});
    }
    return all;
  }

  [[nodiscard]] Json cut_planes() const {
    Json all = list();
    for (const solver::CutPlane& plane : solved_.cut_planes) {
      all.push_back({{"from_mm", place_of(plane.from)},
                     {"to_mm", place_of(plane.to)},
                     {"departure", plane.departure},
                     {"distance_mm", mm(plane.distance)}});
    }
    return all;
  }

  [[nodiscard]] Json checks() const {
    Json all = list();
    const auto add = [&](const solver::Solution& solution, std::string_view purpose) {
      for (const solver::Check& check : solution.checks) {
        all.push_back({{"name", check.name},
                       {"purpose", purpose},
                       {"value", check.value},
                       {"limit", check.limit},
                       {"holds", check.holds}});
      }
    };
    add(solved_.surface, "surface");
    add(solved_.heat, "heat");
    return all;
  }

  [[nodiscard]] Json mesh() const {
    const geometry::Mesh& mesh = solved_.surface.field.mesh;
    return {{"nodes", mesh.nx() * mesh.ny()}, {"columns", mesh.nx()}, {"rows", mesh.ny()}};
  }

  const SolvedVariant& solved_;
  const cases::Variant& variant_;
};

Json change_json(const Change& change, const SolvedVariant& first) {
  Json colder = list();
  for (const Colder& each : change.colder) {
    colder.push_back({{"name", each.name},
                      {"x_mm", mm(each.place.x)},
                      {"y_mm", mm(each.place.y)},
                      {"before_C", each.before},
                      {"after_C", each.after}});
  }
  return {{"variant", change.variant},
          {"space", first.variant.spaces[change.space].name},
          {"coldest_before_C", change.before},
          {"coldest_after_C", change.after},
          {"moved_mm", mm(change.moved)},
          {"colder", std::move(colder)},
          {"words", change.words}};
}

/// A JSON text in which the signs that steer a terminal or turn the writing are spelt out.
std::string safe_text(const Json& findings, int indent) {
  const std::string text = findings.dump(indent, ' ', false, Json::error_handler_t::replace);
  std::string_view json = text;
  std::string safe;
  safe.reserve(json.size());
  while (!json.empty()) {
    const cases::Character next = cases::first_character(json);
    const std::size_t bytes = std::max<std::size_t>(next.bytes, 1);
    if (cases::is_harmful(next.code)) {
      safe += fmt::format("\\u{:04x}", static_cast<unsigned>(next.code));
    } else {
      safe += json.substr(0, bytes);
    }
    json.remove_prefix(bytes);
  }
  return safe;
}

Json findings_of(const Results& results) {
  Json json = {{"quoin", QUOIN_VERSION}, {"format", format_version},       {"title", results.title},
               {"note", results.note},   {"input_sha256", results.sha256}, {"variants", list()},
               {"changes", list()}};
  for (const SolvedVariant& solved : results.variants) {
    json["variants"].push_back(VariantFindings(solved).json());
  }
  for (const Change& change : results.changes) {
    json["changes"].push_back(change_json(change, results.variants.front()));
  }
  if (results.survey) {
    json["survey"] = survey_json(*results.survey);
  }
  return json;
}

}  // namespace

std::string findings_json(const Results& results) {
  return safe_text(findings_of(results), 1) + "\n";
}

std::string findings_line(const Results& results) {
  return safe_text(findings_of(results), -1) + "\n";
}

}  // namespace quoin::tools
