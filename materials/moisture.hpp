// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <variant>

#include "materials/material.hpp"

namespace quoin::materials {

/// The states the trade names, in the order of growing moisture.
enum class NamedState : std::uint8_t { dry, sheltered, exposed, damp, saturated };

inline constexpr std::array<std::pair<std::string_view, NamedState>, 5> named_states = {
    {{"dry", NamedState::dry},
     {"sheltered", NamedState::sheltered},
     {"exposed", NamedState::exposed},
     {"damp", NamedState::damp},
     {"saturated", NamedState::saturated}}};

/// Volume of water by volume of material, m3/m3.
struct VolumeFraction {
  double value = 0.0;
};

/// Mass of water by dry mass of material, kg/kg.
struct MassRatio {
  double value = 0.0;
};

/// Mass of water by volume of material, kg/m3.
struct Concentration {
  double value = 0.0;
};

/// In equilibrium with air of this relative humidity, 0 to 1.
struct AtHumidity {
  double humidity = 0.0;
};

/// The moisture of a material as people state it.
using MoistureState =
    std::variant<NamedState, VolumeFraction, MassRatio, Concentration, AtHumidity>;

/// Why a moisture cannot be known, in plain words.
struct UnknownMoisture {
  std::string reason;
};

/// The part of the saturation that a named state fills, so that it suits dense stone as well as
/// soft brick: 0, 0.08, 0.20, 0.40 and 1, in a brick that holds 25 % by volume 2, 5, 10 and 25 %.
/// Source: common practice, no source.
[[nodiscard]] double degree_of_saturation(NamedState state);

/// The moisture, m3/m3, of a material in a state. At a humidity of 80 % and below it lies on the
/// line from dry to the value tabulated for 80 %.
[[nodiscard]] std::variant<double, UnknownMoisture> moisture_of(const Material& material,
                                                                const MoistureState& state);

/// Whether a material at this moisture, m3/m3, is wetter than `damp`, so that nothing should be
/// laid on it before it has dried. Where no saturation is known the limit is 0.10 m3/m3.
[[nodiscard]] bool wetter_than_damp(const Material& material, double moisture);

}  // namespace quoin::materials
