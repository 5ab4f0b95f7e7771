// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <ostream>

#include "tools/commands.hpp"
#include "tools/verify.hpp"

namespace quoin::tools {

Exit verification(const Terminal& terminal) {
  const std::vector<VerifyRow> rows = verify({});
  terminal.out << text_of(rows, terminal.style);
  const bool all_hold =
      std::all_of(rows.begin(), rows.end(), [](const VerifyRow& row) { return row.holds; });
  return all_hold ? Exit::done : Exit::does_not_hold;
}

}  // namespace quoin::tools
