// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace quoin::solver {

/// Numbers in rows and columns, row after row.
struct Table {
  std::size_t rows = 0;
  std::size_t columns = 0;
  std::vector<double> values;

  Table() = default;
  Table(std::size_t rows_, std::size_t columns_)
      : rows(rows_), columns(columns_), values(rows_ * columns_, 0.0) {}

  [[nodiscard]] double& operator()(std::size_t i, std::size_t j) { return values[i * columns + j]; }
  [[nodiscard]] double operator()(std::size_t i, std::size_t j) const {
    return values[i * columns + j];
  }
  [[nodiscard]] std::span<const double> row(std::size_t i) const {
    return std::span(values).subspan(i * columns, columns);
  }
  [[nodiscard]] std::span<double> row(std::size_t i) {
    return std::span(values).subspan(i * columns, columns);
  }
};

}  // namespace quoin::solver
