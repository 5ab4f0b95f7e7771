// SPDX-License-Identifier: Apache-2.0
#include "solver/solution.hpp"

#include <stdexcept>

#include "solver/findings/between_airs.hpp"
#include "solver/grids/solution_on_grids.hpp"
#include "solver/triangles/beside_grids.hpp"
#include "solver/triangles/solution_on_triangles.hpp"

namespace quoin::solver {

Solution solution_between(const Question& question, const Effort& effort) {
  const Question between = between_airs(question);
  if (question.section.deviation == 0.0) {
    Solution solution = solution_on_grids(between, effort);
    prove_couplings(between, effort, solution);
    return solution;
  }
  if (question.sheet.empty()) throw std::invalid_argument("slopes need the sheet that shows them");
  return solution_on_triangles(between, effort);
}

Solution solution_of(const Question& question, const Effort& effort) {
  return at_temperatures(solution_between(question, effort), question.temperatures);
}

}  // namespace quoin::solver
