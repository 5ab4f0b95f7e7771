// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/chart/shared_limits.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace quoin::tools {

std::vector<SharedLimit> shared_limits(const Results& results, const ComparedSurface& compared) {
  std::vector<SharedLimit> all;
  for (const ComparedSurface::Curve& curve : compared.curves) {
    for (const Limit& limit : limits_of(results.variants[curve.variant])) {
      if (limit.air != curve.surface.air) continue;
      const auto same = [&](const SharedLimit& shared) {
        return shared.limit.what == limit.what &&
               std::abs(shared.limit.temperature - limit.temperature) < 0.05;
      };
      auto found = std::find_if(all.begin(), all.end(), same);
      if (found == all.end()) found = all.insert(all.end(), {limit, {}});
      found->curves.push_back(curve.variant);
    }
  }
  return all;
}

std::string words_for_curves(const SharedLimit& shared, const ComparedSurface& compared) {
  if (shared.curves.size() == compared.curves.size()) return "";
  std::vector<std::size_t> others;
  for (const ComparedSurface::Curve& curve : compared.curves) {
    if (std::find(shared.curves.begin(), shared.curves.end(), curve.variant) ==
        shared.curves.end()) {
      others.push_back(curve.variant);
    }
  }
  const bool negate = others.size() < shared.curves.size();
  std::string words = negate ? " for all but" : " for";
  std::string_view joint = " ";
  for (const std::size_t curve : negate ? others : shared.curves) {
    words += fmt::format("{}{}", joint, curve + 1);
    joint = ", ";
  }
  return words;
}

}  // namespace quoin::tools
