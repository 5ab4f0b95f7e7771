// SPDX-License-Identifier: Apache-2.0
#include "tools/output/json/vapour.hpp"

#include <cmath>

#include "tools/answer/find/year.hpp"
#include "tools/answer/words/vapour_words.hpp"

namespace quoin::tools {
namespace {

using Json = nlohmann::ordered_json;

Json where(const SolvedVariant& solved, const solver::Meeting& meeting, std::size_t part,
           double length, geometry::Point most) {
  return {{"where", words_for(solved, meeting, part)},
          {"length_m", length},
          {"most_at_mm", {std::round(most.x * 1e5) / 100, std::round(most.y * 1e5) / 100}}};
}

Json stated_json(const SolvedVariant& solved) {
  const VapourCheck& check = *solved.vapour;
  Json places = Json::array();
  for (const solver::CondensingPlace& place : check.stated->places) {
    Json each = where(solved, place.meeting, place.part, place.length, place.most);
    const double rate = grams_a_day(place.rate.value), band = grams_a_day(place.rate.band);
    each["rate_g_m_day"] = rate;
    each["rate_band_g_m_day"] = band;
    if (place.length > 0.0) {
      each["rate_g_m2_day"] = rate / place.length;
      each["rate_band_g_m2_day"] = band / place.length;
      if (check.days) each["water_after_days_kg_m2"] = rate / place.length * *check.days / 1000;
    }
    if (check.days) each["water_after_days_kg_m"] = rate * *check.days / 1000;
    places.push_back(std::move(each));
  }
  Json flows = Json::object();
  for (const SpaceId id : geometry::ids(check.stated->field.flows))
    flows[solved.variant.spaces[id].name] = grams_a_day(check.stated->field.flows[id]);
  const geometry::Point dampest = check.stated->dampest;
  Json json = {{"conditions", "as stated"},
               {"places", std::move(places)},
               {"flows_g_m_day", std::move(flows)},
               {"dampest",
                {{"humidity_percent", 100 * check.stated->humidity},
                 {"x_mm", 1000 * dampest.x},
                 {"y_mm", 1000 * dampest.y}}},
               {"iterations", check.stated->field.iterations}};
  if (check.days) json["days"] = *check.days;
  return json;
}

Json year_json(const SolvedVariant& solved) {
  const VapourYear& year = *solved.vapour->year;
  Json places = Json::array(), months = Json::array();
  for (std::size_t k = 0; year.first && k < 12; ++k)
    months.push_back(month_name((*year.first + k) % 12));
  for (const WaterYear& place : year.places) {
    Json each = where(solved, place.meeting, place.part, place.length, place.place);
    each["water_kg_m"] = place.water;
    each["most_kg_m"] = place.water[place.most];
    each["most_band_kg_m"] = place.band;
    if (place.length > 0.0) each["most_kg_m2"] = place.water[place.most] / place.length;
    each["most_at_end_of"] = month_name((*year.first + place.most) % 12);
    each["left_after_a_year_kg_m"] = place.water.back();
    places.push_back(std::move(each));
  }
  return {{"conditions", "by month"}, {"months", std::move(months)}, {"places", std::move(places)}};
}

}  // namespace

nlohmann::ordered_json vapour_json(const SolvedVariant& solved) {
  Json json = solved.vapour->year ? year_json(solved) : stated_json(solved);
  json["words"] = vapour_words(solved);
  json["remarks"] = solved.vapour->remarks;
  json["verdict"] = "none";
  json["left_out"] = vapour_left_out;
  return json;
}

nlohmann::ordered_json drying_json(const SolvedVariant& solved) {
  const DryingLedger& ledger = *solved.drying;
  Json rows = Json::array();
  for (const DryingRow& row : ledger.rows) {
    Json out = Json::object();
    for (std::size_t a = 0; a < ledger.airs.size(); ++a)
      out[solved.variant.spaces[ledger.airs[a]].name] = grams_a_day(row.out[a]);
    Json each = {{"coat_outside", row.outside_coat}};
    if (!row.inside_coat.empty()) each["coat_inside"] = row.inside_coat;
    each["to_each_air_g_m2_day"] = std::move(out);
    each["net_g_m_day"] = grams_a_day(row.net);
    each["dries"] = std::isfinite(row.seconds);
    if (std::isfinite(row.seconds)) each["time_days"] = row.seconds / 86400;
    each["cooling_left_out_K"] = row.cooling;
    rows.push_back(std::move(each));
  }
  return {{"wet", ledger.wet},         {"excess_water_kg_m", ledger.excess},
          {"down_to", ledger.down_to}, {"conditions", ledger.by_month ? "by month" : "as stated"},
          {"coats", std::move(rows)},  {"left_out", drying_left_out}};
}

}  // namespace quoin::tools
