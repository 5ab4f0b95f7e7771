// SPDX-License-Identifier: Apache-2.0
#include "tools/door/told.hpp"

#include <cmath>

namespace quoin::door {

std::string told(const nlohmann::ordered_json& json) {
  return json.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n";
}

double in_mm(double metres) { return std::round(metres * 1e9) / 1e6; }

nlohmann::ordered_json view_json(const tools::View& view) {
  const geometry::Point origin = view({0.0, 0.0});
  return {{"width", tools::page_width},
          {"height", view.height()},
          {"units_per_mm", view.scale() / 1000.0},
          {"left", origin.x},
          {"top", origin.y}};
}

}  // namespace quoin::door
