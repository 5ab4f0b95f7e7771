// SPDX-License-Identifier: Apache-2.0
#include "tools/output/json/year.hpp"

#include <cmath>

#include "tools/answer/find/places.hpp"
#include "tools/answer/find/year.hpp"
#include "tools/answer/words/choices.hpp"
#include "tools/answer/words/year_words.hpp"

namespace quoin::tools {
namespace {

using Json = nlohmann::ordered_json;

Json month_json(const Year& year, std::size_t month) {
  const MonthAir& air = year.months[month];
  Json needs = Json::object();
  for (const YearOfCriterion& judged : year.criteria) {
    needs[judged.criterion] = {
        {"saturation_pressure_Pa", saturation_pressure_needed(judged, month)},
        {"lowest_surface_temperature_C", judged.lowest_temperature[month]},
        {"fRsi_needed", judged.monthly_factor_needed[month]}};
  }
  return {{"month", month_name(month)},
          {"outside_temperature_C", air.outside_temperature},
          {"outside_humidity_percent", 100 * air.outside_humidity},
          {"outside_vapour_pressure_Pa", air.outside_pressure},
          {"inside_temperature_C", air.inside_temperature},
          {"inside_humidity_percent", 100 * air.inside_humidity},
          {"inside_vapour_pressure_Pa", air.inside_pressure},
          {"needs", std::move(needs)}};
}

Json criterion_json(const SolvedVariant& solved, const Year& year, const YearOfCriterion& judged) {
  Json spots = Json::array();
  for (std::size_t s = 0; s < year.spots.size(); ++s) {
    Json months = Json::array();
    for (const std::size_t month : judged.months_at_risk[s]) months.push_back(month_name(month));
    spots.push_back(
        {{"where", words_for(solved, year.spots[s].spot)}, {"months", std::move(months)}});
  }
  Json json = {{"criterion", judged.criterion}, {"fRsi_needed", judged.factor_needed}};
  if (std::isfinite(judged.factor_needed))
    json["critical_month"] = month_name(judged.critical_month);
  json["at_risk"] = std::move(spots);
  return json;
}

Json year_json(const SolvedVariant& solved, const Year& year) {
  Json months = Json::array(), criteria = Json::array(), spots = Json::array();
  for (std::size_t month = 0; month < year.months.size(); ++month)
    months.push_back(month_json(year, month));
  for (const YearOfCriterion& judged : year.criteria)
    criteria.push_back(criterion_json(solved, year, judged));
  for (const SpotYear& spot : year.spots) {
    Json humidities = Json::array();
    for (const double humidity : spot.humidity) humidities.push_back(100 * humidity);
    spots.push_back({{"where", words_for(solved, spot.spot)},
                     {"fRsi", spot.spot.factor.value},
                     {"temperature_C", spot.temperature},
                     {"surface_humidity_percent", std::move(humidities)}});
  }
  Json json = {{"months", std::move(months)},
               {"criteria", std::move(criteria)},
               {"cold_spots", std::move(spots)}};
  if (!year.spots.empty()) json["words"] = words_for(solved, year);
  return json;
}

Json moisture_json(const Threshold& threshold) {
  Json json = {{"kind", words_for(threshold.kind)}};
  if (threshold.kind == Threshold::Kind::found || threshold.kind == Threshold::Kind::up_to_damp)
    json["m3_m3"] = threshold.value;
  return json;
}

Json thickness_json(const Threshold& threshold) {
  using Kind = Threshold::Kind;
  Json json = {{"kind", words_for(threshold.kind)}};
  if (threshold.kind == Kind::dry_first) return json;
  if (threshold.kind == Kind::holds_never) {
    json["best_m"] = threshold.value;
    json["more"] = words_for(threshold.more);
    return json;
  }
  json["m"] = threshold.value;
  json["until_m"] = threshold.until;
  return json;
}

}  // namespace

nlohmann::ordered_json years_json(const SolvedVariant& solved) {
  Json json = Json::object();
  for (const Year& year : solved.years)
    json[solved.variant.spaces[year.air].name] = year_json(solved, year);
  return json;
}

nlohmann::ordered_json enough_json(const SolvedVariant& solved) {
  Json all = Json::array();
  for (const EnoughFor& enough : solved.enough) {
    Json each = {{"criterion", enough.criterion},
                 {"space", solved.variant.spaces[enough.space].name}};
    if (enough.highest_humidity)
      each["highest_safe_humidity_percent"] = 100 * *enough.highest_humidity;
    if (enough.lowest_temperature) each["lowest_temperature_C"] = *enough.lowest_temperature;
    if (enough.thickness) {
      each["least_thickness"] = thickness_json(*enough.thickness);
      each["least_thickness"]["of"] = solved.variant.enough.thickness->of;
    }
    if (enough.moisture) {
      each["highest_moisture"] = moisture_json(*enough.moisture);
      each["highest_moisture"]["of"] = solved.variant.enough.moisture_of;
    }
    all.push_back(std::move(each));
  }
  return all;
}

}  // namespace quoin::tools
