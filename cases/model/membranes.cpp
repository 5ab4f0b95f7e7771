// SPDX-License-Identifier: Apache-2.0
#include "cases/model/membranes.hpp"

#include <algorithm>
#include <cmath>

namespace quoin::cases {

std::string display_name(const Membrane& membrane) {
  if (!membrane.name.empty()) return membrane.name;
  if (std::isinf(membrane.coat.sd)) return "tight membrane";
  const auto known = materials::known_coats();
  const bool has_name = std::any_of(known.begin(), known.end(), [&](const auto& coat) {
    return coat.name == membrane.coat.name;
  });
  return has_name ? membrane.coat.name : "membrane of sd " + membrane.coat.name;
}

}  // namespace quoin::cases
