// SPDX-License-Identifier: Apache-2.0
// Elimination of a single panel, row by row; a kernel like those in panel_kernels_any.hpp, and for
// the same reason calls nothing that is shared with other sources.
#pragma once

#include <cstddef>

#include "solver/linear/multigrid/lanes.hpp"
#include "solver/linear/multigrid/panel_kernels.hpp"

namespace quoin::solver {
inline namespace QUOIN_LANES {

/// A pivot that elimination has shrunk this much is rounding: its node is left alone.
inline constexpr double least_pivot = 1e-15;

/// A symmetric block of a row of the panel.
struct Block {
  alignas(64) double row[lane_count][lane_count];

  [[gnu::always_inline]] void clear() {
    for (auto& values : row) {
      for (double& value : values) value = 0.0;
    }
  }
};

/// Inverts a positive semidefinite block by sweeping one pivot after the other; rows without a
/// pivot become 0. Rows from `used` on are 0.
[[gnu::always_inline]] inline void invert(Block& block, std::size_t used) {
  using L = Lanes<double>;
  double diagonal[lane_count];
  for (std::size_t k = 0; k < used; ++k) diagonal[k] = block.row[k][k];
  for (std::size_t k = 0; k < used; ++k) {
    double* pivot = block.row[k];
    const bool sound = pivot[k] > least_pivot * diagonal[k];
    const double inverse = sound ? 1.0 / pivot[k] : 0.0;
    alignas(64) double factors[lane_count];
    for (std::size_t part = 0; part < lane_count; part += L::count) {
      (inverse * L::at(pivot + part)).write_to(factors + part);
    }
    for (std::size_t part = 0; part < lane_count; part += L::count) {
      const L swept = L::at(pivot + part);
      for (std::size_t i = 0; i < used; ++i) {
        (L::at(block.row[i] + part) - factors[i] * swept).write_to(block.row[i] + part);
      }
      L::at(factors + part).write_to(pivot + part);
    }
    for (std::size_t i = 0; i < used; ++i) block.row[i][k] = factors[i];
    pivot[k] = -inverse;
  }
  for (std::size_t i = 0; i < used; ++i) {
    for (double& value : block.row[i]) value = -value;
  }
}

/// The conductances between a row and the next, V, as a tridiagonal matrix.
struct Crossing {
  double diagonal[lane_count];
  double beside[lane_count + 1];  // between lane k - 1 and k

  template <typename T>
  [[gnu::always_inline]] Crossing(const T* north, const T* tie) {
    beside[0] = beside[lane_count] = 0.0;
    for (std::size_t k = 0; k < lane_count; ++k) diagonal[k] = static_cast<double>(north[k]);
    for (std::size_t k = 1; k < lane_count; ++k) beside[k] = static_cast<double>(tie[k - 1]);
  }
  /// Adds V.
  [[gnu::always_inline]] void add_to(Block& block) const {
    for (std::size_t k = 0; k < lane_count; ++k) block.row[k][k] += diagonal[k];
    for (std::size_t k = 1; k < lane_count; ++k) {
      block.row[k][k - 1] += beside[k];
      block.row[k - 1][k] += beside[k];
    }
  }
  /// Subtracts V other V for a symmetric other.
  [[gnu::always_inline]] void subtract_both_sides(const Block& other, Block& block) const {
    for (std::size_t k = 0; k < lane_count; ++k) {
      const double* before = other.row[k == 0 ? 0 : k - 1];
      const double* after = other.row[k + 1 == lane_count ? k : k + 1];
      double image[lane_count + 2];  // a row of V other, between zeros
      image[0] = image[lane_count + 1] = 0.0;
      for (std::size_t c = 0; c < lane_count; ++c) {
        image[c + 1] =
            diagonal[k] * other.row[k][c] + beside[k] * before[c] + beside[k + 1] * after[c];
      }
      for (std::size_t c = 0; c < lane_count; ++c) {
        block.row[k][c] -=
            diagonal[c] * image[c + 1] + beside[c] * image[c] + beside[c + 1] * image[c + 2];
      }
    }
  }
};

template <typename T>
void factorise_panel(Rows rows, std::size_t columns, PanelLinks<T> links, T* inverses) {
  Block left;  // what the rows below add to the block of a row
  left.clear();
  for (std::size_t j = rows.begin; j < rows.end; j += lane_count) {
    Block block = left;
    for (std::size_t k = 0; k < lane_count; ++k) {
      block.row[k][k] += static_cast<double>(links.ground[j + k]);
      if (k + 1 == lane_count) break;
      const auto east = static_cast<double>(links.east[j + k]);
      block.row[k][k] += east;
      block.row[k + 1][k + 1] += east;
      block.row[k + 1][k] -= east;
      block.row[k][k + 1] -= east;
    }
    const Crossing above(links.north + j, links.tie + j);
    above.add_to(block);
    invert(block, columns);
    T* inverse = inverses + j * lane_count;
    for (const auto& row : block.row) {
      for (const double value : row) *inverse++ = static_cast<T>(value);
    }
    left.clear();
    above.add_to(left);
    above.subtract_both_sides(block, left);
  }
}

}  // namespace QUOIN_LANES
}  // namespace quoin::solver
