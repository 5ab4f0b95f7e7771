// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>

namespace quoin::tools {

/// The largest grid that the memory of this machine holds, nodes: three quarters of the memory by
/// `solver::bytes_per_node`. Without a limit where the machine does not tell its memory.
[[nodiscard]] std::size_t nodes_that_fit();

}  // namespace quoin::tools
