// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "tools/disk/file.hpp"
#include "tools/pictures.hpp"
#include "tools/results.hpp"

namespace quoin::tools {

/// One kind of file that a run writes.
struct Output {
  std::string_view name;  ///< as the manual calls it; <variant> stands for the stem of each
  std::vector<File> (*files)(const Results&, const Pictures&);
};

/// Every output. A new one is one file pair and one line in outputs.cpp.
[[nodiscard]] std::span<const Output> outputs();

/// Whether pictures become PNG files too, for programs that do not show SVG.
enum class Png { no, too };

/// All files of all outputs, in the order of the list; then PNG files of its pictures. PDF and PNG
/// are painted in a process of their own (see apart.hpp). Throws: PaintError, std::bad_alloc.
[[nodiscard]] std::vector<File> files_of(const Results& results, Png png = Png::no);

/// Names of all files that variants of these names may get, known before anything is solved.
[[nodiscard]] std::vector<std::string> possible_names(const std::vector<std::string>& variants,
                                                      Png png);

/// Each picture among some files as a PNG file too. Throws: PaintError.
[[nodiscard]] std::vector<File> pngs_of(const std::vector<File>& files);

/// Names for the files of each variant, without folder or ending: lower-case ASCII letters, digits
/// and hyphens, each different.
[[nodiscard]] std::vector<std::string> file_stems(const std::vector<SolvedVariant>& variants);
[[nodiscard]] std::vector<std::string> file_stems(const std::vector<std::string>& variants);

}  // namespace quoin::tools
