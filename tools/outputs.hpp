// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tools/results.hpp"

namespace quoin::tools {

/// A file to be written.
struct File {
  std::string name;  ///< within the output folder
  std::string content;
};

/// All files of all outputs, in the order of the list; with `png` each picture as a PNG file too,
/// for programs that do not show SVG. Throws: PartError.
[[nodiscard]] std::vector<File> files_of(const Results& results, bool png = false);

/// Names for the files of each variant, without folder or ending: lower-case ASCII letters, digits
/// and hyphens, each different.
[[nodiscard]] std::vector<std::string> file_stems(const std::vector<SolvedVariant>& variants);

}  // namespace quoin::tools
