// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/field/limits.hpp"

#include <fmt/format.h>

#include <cmath>

namespace quoin::tools {

std::vector<Limit> limits_of(const SolvedVariant& solved) {
  std::vector<Limit> limits;
  for (const AirHumidity& air : solved.humidity) {
    if (std::isfinite(air.dew_point)) {
      limits.push_back({air.air, air.dew_point, "dew point", "colder surfaces get wet", {0.01, 5}});
    }
    if (std::isfinite(air.mould_temperature)) {
      limits.push_back({air.air,
                        air.mould_temperature,
                        "mould",
                        "colder surfaces reach 80 % humidity",
                        {11, 4}});
    }
  }
  return limits;
}

std::string words_for(const Limit& limit) {
  return fmt::format("{} {:.1f} °C", limit.what, limit.temperature);
}

Stroke stroke_of(const Limit& limit) { return {limit_colour, 2.4, limit.dashes, Ends::round}; }

void draw_coldest_mark(Canvas& canvas, Point at) {
  canvas.circle(at, 5.0, {white, {{0x101010}, 1.8}});
  canvas.circle(at, 1.8, {Colour{0x101010}, {}});
}

}  // namespace quoin::tools
