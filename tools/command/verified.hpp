// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "solver/solution.hpp"
#include "tools/disk/embedded_file.hpp"
#include "tools/terminal/text_table.hpp"

namespace quoin::tools {

/// The case files of cases/verification.
[[nodiscard]] std::span<const EmbeddedFile> verification_files();

/// One computed value beside what is known of it from outside.
struct VerifyRow {
  std::string title;     ///< of the case
  std::string quantity;  ///< "heat flow", "at A" for the temperature of a probe
  std::string unit;
  double computed = 0.0;
  double band = 0.0;       ///< half width of the computed value's own band
  double reference = 0.0;  ///< exact or published
  double limit = 0.0;      ///< of |computed - reference|
  bool holds = false;
  std::string source;  ///< of the reference
};

/// A case as a text beside everything known of the file of that name, one row a value.
/// Throws: InputError, SolveError; invalid_argument where nothing is known of the file.
[[nodiscard]] std::vector<VerifyRow> verified(const EmbeddedFile& file,
                                              const solver::Effort& effort);

/// All validation cases, solved and compared. Throws: SolveError.
[[nodiscard]] std::vector<VerifyRow> verify(const solver::Effort& effort);

/// The rows as a table for each case, with its source, and a last line that counts what holds.
[[nodiscard]] std::string text_of(const std::vector<VerifyRow>& rows, const TextStyle& style);

}  // namespace quoin::tools
