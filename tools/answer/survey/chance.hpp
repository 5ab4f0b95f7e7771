// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "cases/model/case.hpp"
#include "cases/model/survey.hpp"
#include "materials/criterion.hpp"
#include "tools/answer/results/chance_findings.hpp"
#include "tools/answer/results/year_findings.hpp"
#include "tools/answer/survey/surface_field.hpp"

namespace quoin::tools {

/// What may be the fabric: draws that all count the same, with what each is worth.
struct FabricDraws {
  std::vector<FabricState> states;
  std::vector<std::vector<double>> shares;  ///< of each state: what airs count for in the field
  double effective = 0.0;                   ///< independent draws they are worth
  bool from_readings = false;
  std::vector<std::string> assumed_dry;  ///< zones that are taken to have dried
};

/// From what is known where nothing was read.
[[nodiscard]] FabricDraws fabric_beforehand(const SurfaceField& field, std::size_t draws);

/// Solves the field for every state. Call it once the states are complete.
void solve_states(const SurfaceField& field, FabricDraws& fabric);

/// What is asked of one room.
struct ChanceQuestion {
  const cases::Criterion* criterion = nullptr;
  std::size_t room = 0;              ///< of the field
  double surface_temperature = 0.0;  ///< as solved with the accuracy wanted, degC
  double outside = 0.0;              ///< temperature that fRsi is measured against, degC
  const std::array<MonthAir, 12>* months = nullptr;  ///< of a climate; null: none is stated
};

/// The chance that a criterion is broken in a room of a variant, over all that is not known of the
/// fabric and of the household.
[[nodiscard]] Chance chance_of(const SurfaceField& field, const FabricDraws& fabric,
                               const cases::Household& household, const ChanceQuestion& question);

}  // namespace quoin::tools
