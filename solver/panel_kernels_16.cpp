// SPDX-License-Identifier: Apache-2.0
#include "solver/panel_kernels_any.hpp"
#include "solver/panel_kernels_widths.hpp"

namespace quoin::solver {

const PanelKernels& panel_kernels_16() { return kernels_of_this_width; }

}  // namespace quoin::solver
