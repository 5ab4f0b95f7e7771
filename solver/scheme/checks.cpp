// SPDX-License-Identifier: Apache-2.0
#include "solver/scheme/checks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "solver/linear/errors.hpp"

namespace quoin::solver {
namespace {

/// Flows below this are none, W/(m K): an air that exchanges nothing leaves rounding only.
constexpr double no_flow = 1e-6;

/// Keeps the worst of several values of one check.
void note(std::vector<Check>& checks, const std::string& name, double value, double limit) {
  const auto known = std::find_if(checks.begin(), checks.end(),
                                  [&](const Check& check) { return check.name == name; });
  Check& check =
      known != checks.end() ? *known : checks.emplace_back(Check{name, value, limit, true});
  check.value = std::max(check.value, value);
  check.holds = check.value <= check.limit;
}

}  // namespace

void note_laws(const Field& field, std::size_t spaces, std::vector<Check>& checks) {
  double imbalance = 0.0;
  for (std::size_t a = 0; a < field.airs.size(); ++a) {
    double sum = 0.0;
    for (std::size_t s = 0; s < spaces; ++s) sum += field.space_flow[a * spaces + s];
    const double through = field.coupling[a * field.airs.size() + a];
    imbalance = std::max(imbalance, std::abs(sum) / std::max(through, no_flow));
  }
  double beyond = 0.0;
  double not_one = 0.0;
  for (std::size_t n = 0; n < field.solid.size(); ++n) {
    if (field.solid[n] == 0) continue;
    double sum = 0.0;
    for (const auto& g : field.basis) {
      sum += g[n];
      beyond = std::max({beyond, -g[n], g[n] - 1.0});
    }
    not_one = std::max(not_one, std::abs(sum - 1.0));
  }
  note(checks, "heat balance", imbalance, 1e-4);  // limit of ISO 10211
  note(checks, "temperatures within the spaces'", beyond, 1e-6);
  note(checks, "shares of the spaces add to one", not_one, 1e-6);
  // The linear solver has judged it by what rounding allows; more than this is no rounding.
  note(checks, "residual of the linear solve", field.residual, 1e-4);
}

void require(const std::vector<Check>& checks) {
  for (const Check& check : checks) {
    if (!check.holds) {
      throw SolveError(fmt::format("a solution breaks a law it must obey: {}: {:.3g}, limit {:.3g}",
                                   check.name, check.value, check.limit));
    }
  }
}

}  // namespace quoin::solver
