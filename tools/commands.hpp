// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

#include "solver/solution.hpp"
#include "tools/text_table.hpp"

namespace quoin::tools {

/// What the program returns to the shell.
enum class Exit : int {
  done = 0,
  does_not_hold = 1,  ///< a verification, or with --fail-on-risk a criterion
  wrong_input = 2,
  numerics_failed = 3,
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

struct SolveOptions {
  std::vector<std::string> cases;     ///< files; "-" is standard input
  std::optional<std::string> folder;  ///< where files go; absent: none are written
  bool all = false;                   ///< the whole report rather than its first page
  bool json = false;                  ///< findings to the output instead of the text report
  bool png = false;                   ///< pictures as PNG files too
  bool fail_on_risk = false;
  solver::Effort effort;
};

/// `quoin solve`. Throws: InputError, SolveError, DiskError.
[[nodiscard]] Exit solve(const SolveOptions& options, const Terminal& terminal);

struct CheckOptions {
  std::vector<std::string> cases;
  bool sheet = false;  ///< print each variant as a case file in sheet form instead
};

/// `quoin check`: reads, checks and draws without solving. Throws: InputError.
[[nodiscard]] Exit check(const CheckOptions& options, const Terminal& terminal);

/// `quoin new`: a case file to start from. Throws: InputError for an unknown recipe.
[[nodiscard]] Exit start(const std::string& recipe, const Terminal& terminal);

/// `quoin materials`: the whole catalogue, or one entry with all it is known by.
/// Throws: InputError for an unknown name.
[[nodiscard]] Exit materials(const std::optional<std::string>& name, const Terminal& terminal);

/// `quoin verify`: the published cases, each value beside its reference. Throws: SolveError.
[[nodiscard]] Exit verification(const Terminal& terminal);

}  // namespace quoin::tools
