// SPDX-License-Identifier: Apache-2.0
#include "tools/door/told.hpp"

#include <cmath>
#include <string>
#include <utility>

#include "tools/door/handles.hpp"

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

nlohmann::ordered_json handles_json(const Written& written, const cases::Variant& variant,
                                    const tools::View& view) {
  nlohmann::ordered_json all = nlohmann::ordered_json::array();
  for (const Handle& handle : handles_of(written, variant)) {
    const geometry::Point from = view(handle.from), to = view(handle.to);
    all.push_back({{"path", handle.path},
                   {"text", handle.text},
                   {"unit", "mm"},
                   {"value", in_mm(handle.value)},
                   {"low", in_mm(handle.low)},
                   {"high", in_mm(handle.high)},
                   {"axis", std::string(1, handle.axis)},
                   {"grows", handle.grows},
                   {"from", {from.x, from.y}},
                   {"to", {to.x, to.y}},
                   {"list", handle.list},
                   {"layer", handle.layer},
                   {"material", handle.material}});
  }
  return all;
}

}  // namespace quoin::door
