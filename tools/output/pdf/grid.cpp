// SPDX-License-Identifier: Apache-2.0
#include "tools/output/pdf/grid.hpp"

#include <algorithm>
#include <numeric>

#include "tools/draw/canvas/lettering.hpp"

namespace quoin::tools {
namespace {

/// The longest piece of a text that is never broken: all of a number, else a word.
double unbroken_width(const std::string& text, double size, bool is_number) {
  if (is_number) return text_width(text, size);
  double widest = 0.0;
  for (std::size_t from = 0; from < text.size();) {
    const std::size_t to = std::min(text.find(' ', from), text.size());
    widest = std::max(widest, text_width(text.substr(from, to - from), size));
    from = to + 1;
  }
  return widest;
}

/// How wide each column of a table of some width is: as wide as its longest cell where all fit,
/// else what is left beyond the longest words is shared out by what columns ask for.
std::vector<double> widths_of(const std::vector<std::string>& names,
                              const std::vector<std::vector<std::string>>& rows,
                              const std::vector<char>& is_number, double width) {
  std::vector<double> least, most;
  for (std::size_t c = 0; c < names.size(); ++c) {
    const bool number = is_number[c] != 0;
    least.push_back(unbroken_width(names[c], bold_width * table_size, false));
    most.push_back(text_width(names[c], bold_width * table_size));
    for (const auto& row : rows) {
      least[c] = std::max(least[c], unbroken_width(row[c], table_size, number));
      most[c] = std::max(most[c], text_width(row[c], table_size));
    }
    least[c] += cell_gap + 1.0;
    most[c] += cell_gap + 1.0;
  }
  const double asked = std::accumulate(most.begin(), most.end(), 0.0);
  const double needed = std::accumulate(least.begin(), least.end(), 0.0);
  std::vector<double> widths = least;
  for (std::size_t c = 0; c < names.size(); ++c) {
    if (needed >= width) {
      widths[c] = least[c] * width / needed;
    } else if (asked <= width) {
      widths[c] = most[c] * width / asked;
    } else {
      widths[c] += (most[c] - least[c]) * (width - needed) / (asked - needed);
    }
  }
  return widths;
}

}  // namespace

Grid grid_of(const std::vector<std::string>& names, const std::vector<char>& is_number,
             const std::vector<std::vector<std::string>>& rows, double width) {
  Grid grid;
  grid.widths = widths_of(names, rows, is_number, width);
  const auto broken = [&](const std::vector<std::string>& cells, double size) {
    GridRow row{{}, is_number, 0.0};
    std::size_t most = 1;
    for (std::size_t c = 0; c < cells.size(); ++c) {
      row.cells.push_back(wrapped(cells[c], size, grid.widths[c] - cell_gap, most_lines));
      most = std::max(most, row.cells.back().size());
    }
    row.height = pitch * table_size * static_cast<double>(most) + row_gap;
    return row;
  };
  grid.head = broken(names, bold_width * table_size);
  for (const auto& cells : rows) grid.rows.push_back(broken(cells, table_size));
  return grid;
}

bool is_narrow(const std::vector<std::string>& names,
               const std::vector<std::vector<std::string>>& rows,
               const std::vector<char>& is_number, double width) {
  double needed = 0.0;
  for (std::size_t c = 0; c < names.size(); ++c) {
    double widest = unbroken_width(names[c], bold_width * table_size, false);
    for (const auto& row : rows)
      widest = std::max(widest, unbroken_width(row[c], table_size, is_number[c] != 0));
    needed += widest + cell_gap + 1.0;
  }
  return needed <= width;
}

}  // namespace quoin::tools
