// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tools/answer/results/results.hpp"
#include "tools/disk/file.hpp"

namespace quoin::tools {

/// Whether pictures become PNG files too, for programs that do not show SVG.
enum class Png { no, too };

/// All files of all outputs. PDF and PNG are painted in a process of their own (see apart.hpp).
/// Throws: PartError, std::bad_alloc.
[[nodiscard]] std::vector<File> files_of(const Results& results, Png png = Png::no);

/// Names of all files that variants of these names may get, known before anything is solved.
[[nodiscard]] std::vector<std::string> possible_names(const std::vector<std::string>& variants,
                                                      Png png);

}  // namespace quoin::tools
