// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace quoin::tools {

// Of words on paper, in units of pictures.
inline constexpr double table_size = 8.5;        ///< of letters in tables: 6.6 points
inline constexpr double pitch = 1.25;            ///< of lines, in sizes
inline constexpr double row_gap = 1.8;           ///< between the lines of two rows
inline constexpr double cell_gap = 10.0;         ///< between two columns
inline constexpr std::size_t most_lines = 4000;  ///< that one text is broken into

/// A row of a table, its cells broken into lines.
struct GridRow {
  std::vector<std::vector<std::string>> cells;
  std::vector<char> is_number;  ///< 1 for each cell set from the right
  double height = 0.0;
};

/// A table laid out in so much width: no word is broken while that is enough, and no number ever.
struct Grid {
  std::vector<double> widths;
  GridRow head;
  std::vector<GridRow> rows;
};
[[nodiscard]] Grid grid_of(const std::vector<std::string>& names,
                           const std::vector<char>& is_number,
                           const std::vector<std::vector<std::string>>& rows, double width);

/// Whether the longest words of every column of a table fit into a width.
[[nodiscard]] bool is_narrow(const std::vector<std::string>& names,
                             const std::vector<std::vector<std::string>>& rows,
                             const std::vector<char>& is_number, double width);

}  // namespace quoin::tools
