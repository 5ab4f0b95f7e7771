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

/// Lengths that the author states are of one kind, and one way of measuring may be asked for.
void keep_psi_asked_for(SolvedVariant& solved) {
  const std::optional<geometry::Dimensions> by = solved.variant.psi.by;
  if (!solved.variant.recipe && !solved.psi.empty())
    solved.psi.erase(solved.psi.begin() + 1, solved.psi.end());
  if (solved.variant.recipe && by)
    std::erase_if(solved.psi, [&](const auto& psi) { return psi.dimensions != *by; });
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
  keep_psi_asked_for(result);
  for (solver::LinearTransmittance& psi : result.psi) {
    psi.value.value *= result.variant.halves;
    psi.value.band *= result.variant.halves;
  }
  result.humidity = humidities(result);
  result.verdicts = verdicts(result);
  return evaporation;
}

}  // namespace quoin::tools
