// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>

#include "solver/linear/multigrid/panel_kernels.hpp"

namespace quoin::solver {

/// What of this machine a solver uses. None of it shows in an answer.
struct Machine {
  int threads = 1;
  const PanelKernels* kernels = &panel_kernels(widest_registers);
};

}  // namespace quoin::solver
