// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "solver/scheme/field.hpp"

namespace quoin::solver {

/// A test that every solution must pass.
struct Check {
  std::string name;
  double value = 0.0;
  double limit = 0.0;
  bool holds = true;
};

/// The laws that every solution obeys whatever its grid: heat balance, no temperature beyond those
/// of the spaces, shares of the spaces that add to one, a small residual. Of several fields the
/// worst is kept.
void note_laws(const Field& field, std::size_t spaces, std::vector<Check>& checks);

/// Throws: SolveError where one does not hold.
void require(const std::vector<Check>& checks);

}  // namespace quoin::solver
