// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <functional>
#include <iosfwd>

#include "tools/terminal/text_table.hpp"

namespace CLI {
class App;
}

namespace quoin::tools {

/// What the program returns to the shell. Of several the highest stands for all.
enum class Exit : int {
  done = 0,
  does_not_hold = 1,  ///< a verification, or with --fail-on-risk a criterion
  wrong_input = 2,
  numerics_failed = 3,  ///< no answer, no memory for one, or none to paint it
  disk_failed = 4,
};

/// Where commands write to and how.
struct Terminal {
  std::ostream& out;    ///< results
  std::ostream& notes;  ///< warnings, progress, errors
  TextStyle style;
  bool progress = false;  ///< notes go to a person who can wait
  bool quiet = false;     ///< neither notes nor the text report
};

/// A command: its words on the command line, and what it does once they are read. It may throw
/// whatever `told` knows (see errors.hpp).
struct Command {
  CLI::App* words;
  std::function<Exit(const Terminal&)> run;
};

/// Each adds its name and options to the program. A new command is one such function.
[[nodiscard]] Command solve_command(CLI::App& program);
[[nodiscard]] Command check_command(CLI::App& program);
[[nodiscard]] Command new_command(CLI::App& program);
[[nodiscard]] Command materials_command(CLI::App& program);
[[nodiscard]] Command vary_command(CLI::App& program);
[[nodiscard]] Command gather_command(CLI::App& program);
[[nodiscard]] Command verify_command(CLI::App& program);
[[nodiscard]] Command schema_command(CLI::App& program);
[[nodiscard]] Command trace_command(CLI::App& program);
[[nodiscard]] Command pages_command(CLI::App& program);

}  // namespace quoin::tools
