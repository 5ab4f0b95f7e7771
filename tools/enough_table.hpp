// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "tools/results.hpp"

namespace quoin::tools {

/// What the room from stands for.
inline constexpr std::string_view enough_note =
    "For each criterion to hold. The room from: with the vapour its air holds now.";

/// What would be enough for each criterion to hold, in words.
struct EnoughTable {
  /// A column: "wall brick" "up to".
  struct Column {
    std::string what;
    std::string_view way;
  };
  struct Cell {
    std::string words;  ///< empty: not known
    Threshold::Kind kind = Threshold::Kind::found;
  };
  /// Shape: cells as columns.
  struct Row {
    std::string variant, room, criterion;
    std::vector<Cell> cells;
  };
  std::vector<Column> columns;
  std::vector<Row> rows;  ///< empty: nothing asked depends on humidity, thickness or moisture
};

/// A column for every layer and material that any variant asks about, in the order of the variants.
[[nodiscard]] EnoughTable enough_table(const Results& results);

}  // namespace quoin::tools
