// SPDX-License-Identifier: Apache-2.0
#include "tools/output/json/units.hpp"

#include <fmt/format.h>

#include <cmath>

#include "cases/text/decimal.hpp"

namespace quoin::tools {
namespace {

double in_units(double value, double factor) {
  if (!std::isfinite(value)) return value;
  const std::string digits = fmt::format("{:.12g}", value * factor);
  double rounded = 0.0;
  cases::from_decimal(digits.data(), digits.data() + digits.size(), rounded);
  return rounded;
}

}  // namespace

double mm(double metres) { return in_units(metres, 1000.0); }

double percent(double fraction) { return in_units(fraction, 100.0); }

nlohmann::ordered_json place_json(geometry::Point place) {
  return nlohmann::ordered_json::array({mm(place.x), mm(place.y)});
}

}  // namespace quoin::tools
