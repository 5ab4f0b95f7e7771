// SPDX-License-Identifier: Apache-2.0
#include "solver/linear/multigrid/panel_kernels_any.hpp"
#include "solver/linear/multigrid/panel_kernels_widths.hpp"

namespace quoin::solver {

const PanelKernels& panel_kernels_32() { return kernels_of_this_width; }

}  // namespace quoin::solver
