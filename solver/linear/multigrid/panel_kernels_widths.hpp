// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "solver/linear/multigrid/panel_kernels.hpp"

namespace quoin::solver {

/// The kernels compiled for registers of so many bytes, whether this machine has them or not.
[[nodiscard]] const PanelKernels& panel_kernels_16();
[[nodiscard]] const PanelKernels& panel_kernels_32();
[[nodiscard]] const PanelKernels& panel_kernels_64();

}  // namespace quoin::solver
