// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/find/thermometers.hpp"

#include "solver/triangles/beside_grids.hpp"
#include "tools/answer/ask/question.hpp"

namespace quoin::tools {
namespace {

/// The surface temperatures that the criteria of humidity and of fRsi ask of each room.
std::vector<solver::RoomLimit> limits_of(const SolvedVariant& solved,
                                         const solver::Question& question) {
  std::vector<solver::RoomLimit> limits;
  for (const AirHumidity& air : solved.humidity)
    limits.push_back({air.air, air.lowest_temperature});
  const double outside = question.temperatures[question.outside];
  for (const Verdict& verdict : solved.verdicts) {
    const double inside = question.temperatures[verdict.space];
    if (verdict.unit == "1")
      limits.push_back({verdict.space, outside + verdict.limit * (inside - outside)});
  }
  return limits;
}

}  // namespace

void prove_thermometers(SolvedVariant& solved, const solver::Effort& effort) {
  const solver::Question question =
      question_of(solved.variant, materials::Purpose::surface_temperature);
  solver::prove_thermometers(question, effort, limits_of(solved, question), solved.surface);
}

}  // namespace quoin::tools
