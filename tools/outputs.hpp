// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "tools/pictures.hpp"
#include "tools/results.hpp"

namespace quoin::tools {

/// A file to be written.
struct File {
  std::string name;  ///< within the output folder
  std::string content;
};

/// One kind of file that a run writes.
struct Output {
  std::string_view name;  ///< as the manual calls it
  std::vector<File> (*files)(const Results&, const Pictures&);
};

/// Every output. A new one is one file pair and one line in outputs.cpp.
[[nodiscard]] std::span<const Output> outputs();

/// All files of all outputs, in the order of the list.
[[nodiscard]] std::vector<File> files_of(const Results& results);

/// Each picture among some files as a PNG file too, for programs that do not show SVG.
[[nodiscard]] std::vector<File> pngs_of(const std::vector<File>& files);

/// Names for the files of each variant, without folder or ending: lower-case ASCII letters, digits
/// and hyphens, each different.
[[nodiscard]] std::vector<std::string> file_stems(const std::vector<SolvedVariant>& variants);

}  // namespace quoin::tools
