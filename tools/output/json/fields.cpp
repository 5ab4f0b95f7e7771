// SPDX-License-Identifier: Apache-2.0
#include "tools/output/json/fields.hpp"

#include "tools/answer/find/places.hpp"
#include "tools/answer/judge/judge.hpp"
#include "tools/answer/words/choices.hpp"
#include "tools/output/json/units.hpp"

namespace quoin::tools {
namespace {

using Json = nlohmann::ordered_json;

class FieldFindings {
 public:
  explicit FieldFindings(const SolvedVariant& solved) : solved_(solved), variant_(solved.variant) {}

  [[nodiscard]] Json surface() const {
    Json spaces = Json::object();
    for (const solver::AirSurface& each : solved_.surface.airs) spaces[name(each.air)] = air(each);
    return {{"spaces", std::move(spaces)},
            {"probes", probes(solved_.surface)},
            {"flows_W_m", flows(solved_.surface)},
            {"accurate", solved_.surface.accurate}};
  }

  [[nodiscard]] Json heat() const {
    Json couplings = Json::array();
    for (const solver::Coupling& coupling : solved_.heat.couplings) {
      couplings.push_back({{"between", {name(coupling.a), name(coupling.b)}},
                           {"value", coupling.value},
                           {"low", coupling.low},
                           {"high", coupling.high}});
    }
    Json spaces = Json::object();
    for (const solver::AirSurface& each : solved_.heat.airs)
      spaces[name(each.air)] = {{"coldest", spot(each.coldest)}};
    return {{"spaces", std::move(spaces)},
            {"flows_W_m", flows(solved_.heat)},
            {"L2D_W_mK", std::move(couplings)},
            {"probes", probes(solved_.heat)},
            {"accurate", solved_.heat.accurate}};
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
    result["cold_spots"] = Json::array();
    for (const solver::Spot& each : surface.cold_spots) result["cold_spots"].push_back(spot(each));
    return result;
  }

  [[nodiscard]] Json probes(const solver::Solution& solution) const {
    Json all = Json::object();
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
    Json all = Json::object();
    for (const SpaceId space : geometry::ids(solution.flows)) {
      all[name(space)] = solution.flows[space];
    }
    return all;
  }

  const SolvedVariant& solved_;
  const cases::Variant& variant_;
};

}  // namespace

Json surface_json(const SolvedVariant& solved) { return FieldFindings(solved).surface(); }

Json heat_json(const SolvedVariant& solved) { return FieldFindings(solved).heat(); }

}  // namespace quoin::tools
