// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "cases/text/files.hpp"
#include "cases/text/yaml_tree.hpp"

namespace quoin::cases {

/// One thing of a case that takes one value after another.
struct Axis {
  std::string path;
  std::vector<std::string> steps;
  std::vector<Node> values;        ///< at least one, all different
  std::vector<std::string> texts;  ///< of the values, as people read them
};

/// A case with some of its values replaced by every combination of others.
struct Vary {
  std::string file;                  ///< of the case, beside the vary file
  std::string case_text;             ///< as read
  std::string sha256;                ///< of the vary file
  Node tree;                         ///< of the case
  std::vector<Axis> axes;            ///< in the order of the file
  std::vector<std::size_t> order;    ///< of the axes, the outermost first: those of the air last
  std::vector<std::string> columns;  ///< what the table holds of each row

  /// How many combinations there are.
  [[nodiscard]] std::uint64_t rows() const;
  /// Which value each axis has in a row. Shape: as the axes.
  [[nodiscard]] std::vector<std::size_t> choice(std::uint64_t row) const;
  /// The case of a row.
  [[nodiscard]] Node merged(const std::vector<std::size_t>& choice) const;
};

/// The sweep that a text describes; the case is read through `files`. `known`: the words for
/// columns. The case itself is only seen to be a tree of values: what each row makes of it shows
/// when the row is read. Throws: InputError with all faults of the text, and those of the case's
/// text.
[[nodiscard]] Vary vary_of(std::string_view text, const std::string& file, const Files& files,
                           const std::vector<std::string>& known);

}  // namespace quoin::cases
