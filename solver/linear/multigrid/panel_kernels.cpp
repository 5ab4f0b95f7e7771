// SPDX-License-Identifier: Apache-2.0
#include "solver/linear/multigrid/panel_kernels.hpp"

#include "solver/linear/multigrid/panel_kernels_widths.hpp"

namespace quoin::solver {

const PanelKernels& panel_kernels(std::size_t register_bytes) {
#ifdef __x86_64__
  if (register_bytes >= 64 && __builtin_cpu_supports("avx512f")) return panel_kernels_64();
  if (register_bytes >= 32 && __builtin_cpu_supports("avx")) return panel_kernels_32();
#else
  static_cast<void>(register_bytes);
#endif
  return panel_kernels_16();
}

}  // namespace quoin::solver
