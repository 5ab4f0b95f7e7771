// SPDX-License-Identifier: Apache-2.0
#include "tools/output/json/timber_ends.hpp"

#include <cmath>
#include <utility>

namespace quoin::tools {
namespace {

double millimetres(double length) { return std::round(length * 1e5) / 100; }

}  // namespace

nlohmann::ordered_json timber_ends_json(const SolvedVariant& solved) {
  using Json = nlohmann::ordered_json;
  Json all = Json::array();
  for (const TimberEnd& end : solved.timber_ends) {
    Json one = {{"name", end.name},
                {"x_mm", millimetres(end.place.x)},
                {"y_mm", millimetres(end.place.y)},
                {"temperature_C", end.temperature.value},
                {"band_K", end.temperature.band}};
    if (end.humidity) {
      one["air_of"] = solved.variant.spaces[end.room].name;
      one["humidity_at_most_percent"] = 100 * *end.humidity;
    }
    all.push_back(std::move(one));
  }
  return all;
}

}  // namespace quoin::tools
