// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>
#include <variant>

#include "materials/laws/between_dry_and_saturated.hpp"
#include "materials/laws/constant.hpp"
#include "materials/laws/exponential.hpp"
#include "materials/laws/per_mass_percent.hpp"
#include "materials/laws/per_volume_table.hpp"

namespace quoin::materials {

/// Every moisture law the case file and the catalogue know. A new one is one file in laws/ and one
/// line here.
using Law =
    std::variant<Constant, BetweenDryAndSaturated, Exponential, PerMassPercent, PerVolumeTable>;

/// As case files and the catalogue write it.
[[nodiscard]] inline std::string_view name_of(const Law& law) {
  return std::visit([](const auto& one) { return one.name; }, law);
}

}  // namespace quoin::materials
