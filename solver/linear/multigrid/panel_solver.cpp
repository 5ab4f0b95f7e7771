// SPDX-License-Identifier: Apache-2.0
#include "solver/linear/multigrid/panel_solver.hpp"

#include <array>

namespace quoin::solver {

namespace {

constexpr std::size_t W = lane_count;
/// A pivot that elimination has shrunk this much is rounding: its node is left alone.
constexpr double least_pivot = 1e-15;

using Block = std::array<std::array<double, W>, W>;

/// Inverts a symmetric positive semidefinite block, of which the lower triangle is given, by
/// sweeping one pivot after the other; rows without a pivot become 0. Writes both triangles.
void invert(Block& block, std::size_t used) {
  std::array<double, W> diagonal{};
  for (std::size_t k = 0; k < used; ++k) diagonal[k] = block[k][k];
  for (std::size_t k = 0; k < used; ++k) {
    const bool sound = block[k][k] > least_pivot * diagonal[k];
    const double inverse = sound ? 1.0 / block[k][k] : 0.0;
    std::array<double, W> column{};
    for (std::size_t i = 0; i < k; ++i) column[i] = block[k][i];
    for (std::size_t i = k + 1; i < used; ++i) column[i] = block[i][k];
    for (std::size_t i = 0; i < used; ++i) {
      const double factor = column[i] * inverse;
      for (std::size_t c = 0; c <= (i | 3U); ++c) block[i][c] -= factor * column[c];
    }
    for (std::size_t i = 0; i < k; ++i) block[k][i] = column[i] * inverse;
    for (std::size_t i = k + 1; i < used; ++i) block[i][k] = column[i] * inverse;
    block[k][k] = -inverse;
  }
  for (std::size_t i = 0; i < W; ++i) {
    for (std::size_t c = 0; c <= i; ++c) block[c][i] = block[i][c] = -block[i][c];
  }
}

/// The coupling of a row to the next, V, as a tridiagonal matrix.
struct Coupling {
  std::array<double, W> diagonal{};
  std::array<double, W + 1> beside{};  // between lane k - 1 and k

  /// Adds V to the lower triangle.
  void add_to(Block& block) const {
    for (std::size_t k = 0; k < W; ++k) block[k][k] += diagonal[k];
    for (std::size_t k = 1; k < W; ++k) block[k][k - 1] += beside[k];
  }
  /// Subtracts V other V for a symmetric other.
  void subtract_both_sides(const Block& other, Block& block) const {
    for (std::size_t k = 0; k < W; ++k) {
      const Block::value_type& before = other[k == 0 ? 0 : k - 1];
      const Block::value_type& after = other[k + 1 == W ? k : k + 1];
      std::array<double, W + 2> row{};  // of V other, between zeros
      for (std::size_t c = 0; c < W; ++c) {
        row[c + 1] = diagonal[k] * other[k][c] + beside[k] * before[c] + beside[k + 1] * after[c];
      }
      for (std::size_t c = 0; c < W; ++c) {
        block[k][c] -= diagonal[c] * row[c + 1] + beside[c] * row[c] + beside[c + 1] * row[c + 2];
      }
    }
  }
};

}  // namespace

template <typename T>
PanelSolver<T>::PanelSolver(const Conductances<T>& network, const Machine& machine, Arena& arena)
    : rhs(network.layout, arena),
      x(network.layout, arena),
      kernels_(&machine.kernels->level<T>()),
      layout_(network.layout),
      rows_(network.rows[0]),
      north_(network.north),
      tie_(network.tied ? network.tie : Panels<T>(network.layout, arena)),
      inverses_(static_cast<T*>(arena.take(layout_.rows * W * W * sizeof(T)))) {
  const std::size_t slot = layout_.slot(0, 0);
  Block left{};  // what the rows below add to the block of a row; its lower triangle counts
  for (std::size_t j = rows_.begin; j < rows_.end; j += W) {
    Block block = left;
    Coupling above;
    for (std::size_t k = 0; k < W; ++k) {
      above.diagonal[k] = static_cast<double>(north_[slot][j + k]);
      block[k][k] += static_cast<double>(network.ground[slot][j + k]);
      if (k + 1 == W) break;
      above.beside[k + 1] = static_cast<double>(tie_[slot][j + k]);
      const auto east = static_cast<double>(network.east[slot][j + k]);
      block[k][k] += east;
      block[k + 1][k + 1] += east;
      block[k + 1][k] -= east;
    }
    above.add_to(block);
    invert(block, layout_.columns);
    T* inverse = inverses_ + j * W;
    for (std::size_t k = 0; k < W; ++k) {
      for (std::size_t c = 0; c < W; ++c) inverse[k * W + c] = static_cast<T>(block[k][c]);
    }
    left = Block{};
    above.add_to(left);
    above.subtract_both_sides(block, left);
  }
}

template <typename T>
double PanelSolver<T>::solve() {
  if (rows_.empty()) return 0.0;
  const std::size_t slot = layout_.slot(0, 0);
  return kernels_->solve_panel(rows_, {north_[slot], tie_[slot], inverses_}, rhs[slot], x[slot]);
}

template class PanelSolver<float>;
template class PanelSolver<double>;

}  // namespace quoin::solver
