// SPDX-License-Identifier: Apache-2.0
#include "tools/disk/memory.hpp"

#include <unistd.h>

#include <limits>

#include "solver/solution.hpp"

namespace quoin::tools {

std::size_t nodes_that_fit() {
  const long pages = sysconf(_SC_PHYS_PAGES), page = sysconf(_SC_PAGESIZE);
  if (pages <= 0 || page <= 0) return std::numeric_limits<std::size_t>::max();
  const double memory = static_cast<double>(pages) * static_cast<double>(page);
  return static_cast<std::size_t>(0.75 * memory / solver::bytes_per_node);
}

}  // namespace quoin::tools
