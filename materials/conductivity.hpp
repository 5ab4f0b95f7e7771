// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "materials/material.hpp"

namespace quoin::materials {

/// The conductivity of a material in one state.
struct Conductivity {
  double value = 0.0;                  ///< W/(m K)
  std::string_view law;                ///< the law that gave it
  std::optional<std::string> warning;  ///< why to doubt it, in plain words
};

/// The conductivity of a material at a moisture, m3/m3. A moisture that cannot be (below 0, more
/// than the material holds) is taken as the nearest that can, with a warning; so are a moisture
/// outside the range the law is trusted in, and a value above what wet mineral material conducts.
[[nodiscard]] Conductivity conductivity_of(const Material& material, double moisture);

/// What contradicts itself in a material whatever its state, each in plain words.
[[nodiscard]] std::vector<std::string> flaws(const Material& material);

/// The most that stone, brick or concrete conducts with this volume fraction of water in it,
/// W/(m K): the geometric mean of its solids, 4.0, and water, 0.60. Only stone rich in quartz goes
/// beyond it.
/// Source: common practice, no source; solids a little above the dense rocks of ISO 10456 (3.5,
/// memory), so that measured wet concrete and brick lie below.
[[nodiscard]] double wet_mineral_bound(double water);

}  // namespace quoin::materials
