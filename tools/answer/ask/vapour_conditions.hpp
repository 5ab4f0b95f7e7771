// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <vector>

#include "solver/vapour/vapour.hpp"
#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// The air on all sides and how long it lasts.
struct VapourConditions {
  double seconds = 0.0;  ///< 0: not said
  solver::SpaceTemperatures temperatures;
  solver::SpacePressures pressures;
};

/// As stated one, by month twelve, January to December.
[[nodiscard]] std::vector<VapourConditions> conditions_of(const SolvedVariant& solved,
                                                          cases::Conditions conditions);

/// What lies on surfaces in place of what the case says.
struct OtherCoats {
  std::optional<double> inside;   ///< sd, m
  std::optional<double> outside;  ///< sd, m
  bool air_film = false;          ///< the air before the surfaces resists, too
};

/// A variant as numbers for diffusion: the vapour resistance of each material, that measured moist
/// where it is wetter than damp. Coats lie on fabric only, not on
/// the ground. Air in the hollows of frames has the
/// resistance of still air.
[[nodiscard]] solver::VapourPhysics vapour_physics_of(const cases::Variant& variant,
                                                      const OtherCoats& coats = {});

}  // namespace quoin::tools
