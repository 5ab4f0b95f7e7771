// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/find/unheated.hpp"

#include <fmt/format.h>

#include "solver/findings/other_temperatures.hpp"
#include "tools/answer/ask/conditions.hpp"
#include "tools/answer/ask/physics.hpp"

namespace quoin::tools {

void balance_unheated(SolvedVariant& solved) {
  const std::vector<solver::OtherLoss> losses = losses_of(solved.variant);
  if (losses.empty()) return;
  const solver::SpaceTemperatures guessed = temperatures_of(solved.variant);
  const solver::SpaceTemperatures found =
      solver::balanced(guessed, solved.heat.physics.air, losses, solved.heat.couplings);
  solver::change_temperatures(solved.heat, guessed, found);
  for (const SpaceId id : geometry::ids(found)) {
    cases::Space& space = solved.variant.spaces[id];
    space.temperature = found[id] + space.cooling;
  }
}

std::string words_for_unheated(const SolvedVariant& solved) {
  std::string text;
  for (const cases::Space& space : solved.variant.spaces) {
    if (space.is != cases::SpaceKind::unheated) continue;
    if (space.b) {
      text += fmt::format(" {} is taken at {:.1f} °C, by b {:.2f}.", space.name, space.temperature,
                          *space.b);
    } else if (!space.losses.empty()) {
      text +=
          fmt::format(" {} is at {:.1f} °C, by its heat balance.", space.name, space.temperature);
    }
  }
  return text;
}

}  // namespace quoin::tools
