// SPDX-License-Identifier: Apache-2.0
#include "tools/commands.hpp"

namespace quoin::tools {
Exit verification(const Terminal&) { return Exit::done; }
}  // namespace quoin::tools
