// SPDX-License-Identifier: Apache-2.0
#include "tools/command/verified.hpp"

#include <CLI/App.hpp>
#include <algorithm>
#include <ostream>

#include "tools/command/command.hpp"

namespace quoin::tools {
namespace {

Exit verification(const Terminal& terminal) {
  const std::vector<VerifyRow> rows = verify({});
  terminal.out << text_of(rows, terminal.style);
  const bool all_hold =
      std::all_of(rows.begin(), rows.end(), [](const VerifyRow& row) { return row.holds; });
  return all_hold ? Exit::done : Exit::does_not_hold;
}

}  // namespace

Command verify_command(CLI::App& program) {
  return {program.add_subcommand("verify", "run the published cases and compare"), verification};
}

}  // namespace quoin::tools
