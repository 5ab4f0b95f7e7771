// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/numbers.hpp"

#include <optional>

#include "solver/findings/plain.hpp"
#include "tools/answer/ask/conditions.hpp"
#include "tools/answer/ask/physics.hpp"
#include "tools/answer/ask/question.hpp"
#include "tools/answer/find/unheated.hpp"
#include "tools/answer/find/wet_surfaces.hpp"
#include "tools/answer/judge/judge.hpp"

namespace quoin::tools {
namespace {

/// The floor of a variant on the ground without its wall, solved for heat flow.
std::optional<solver::Solution> floor_alone(const cases::Variant& variant,
                                            const solver::Effort& effort, const Solve& solve) {
  if (variant.floor_alone.empty()) return std::nullopt;
  cases::Variant alone = variant;
  alone.sheet = variant.floor_alone;
  alone.probes.clear();
  return solve(question_of(alone, materials::Purpose::heat_flow), effort);
}

}  // namespace

std::vector<std::string> solve_numbers(SolvedVariant& result, const solver::Effort& effort,
                                       const Solve& solve) {
  using materials::Purpose;
  result.conductivity = conductivities(result.variant);
  result.heat = solve(question_of(result.variant, Purpose::heat_flow), effort);
  balance_unheated(result);
  result.surface = solve(question_of(result.variant, Purpose::surface_temperature), effort);
  std::vector<std::string> evaporation = evaporate(result);
  const std::optional<solver::Solution> floor = floor_alone(result.variant, effort, solve);
  result.psi = solver::linear_transmittances(result.variant.flanks, result.heat,
                                             floor ? &*floor : nullptr, losses_of(result.variant));
  for (solver::LinearTransmittance& psi : result.psi) {
    psi.value.value *= result.variant.halves;
    psi.value.band *= result.variant.halves;
  }
  result.humidity = humidities(result);
  result.verdicts = verdicts(result);
  return evaporation;
}

}  // namespace quoin::tools
