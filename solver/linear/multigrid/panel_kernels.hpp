// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <type_traits>

#include "solver/linear/multigrid/panels.hpp"

namespace quoin::solver {

/// Conductances around the nodes of a panel. Pointers lead to the first value of a panel, here and
/// below.
template <typename T>
struct Links {
  const T* east;
  const T* west;
  const T* north;
  const T* ground;
};

/// A factorised column: how a tridiagonal solve passes on what flows in, and the inverse pivots.
template <typename T>
struct Pivots {
  const T* carry;
  const T* inverse;
};

/// What flows into the columns of a panel from those beside them.
template <typename T>
struct Sides {
  const T* east;
  const T* west;
  const T* tie_east;  ///< both null where nothing is tied
  const T* tie_west;
  const T* x_east;
  const T* x_west;
};

/// What an odd column takes of its west neighbour, its east neighbour and the ground; and what it
/// hands on to the coarse network of its east neighbour.
template <typename T>
struct Parts {
  T* west;
  T* east;
  T* ground;
  T* north_on;
  T* ground_on;
};

/// An odd panel, the even one before it, and the coarse panel they become.
template <typename T>
struct Coarsening {
  Links<T> odd;
  const T* tie_east;  ///< both null where nothing is tied
  const T* tie_west;
  const T* carry;
  const T* even_north;
  const T* even_ground;
  T* coarse_east;
  T* coarse_tie;
  T* coarse_north;
  T* coarse_ground;
};

/// Conductances of a single panel, whose columns lie side by side; as in `Conductances`.
template <typename T>
struct PanelLinks {
  const T* east;
  const T* north;
  const T* tie;
  const T* ground;
};

/// A single panel factorised row by row. See `PanelSolver`.
template <typename T>
struct Elimination {
  const T* north;
  const T* tie;
  const T* inverses;  ///< lane_count * lane_count for each row
};

/// What is done to a panel of a grid of the hierarchy. See `Level` for what it means.
template <typename T>
struct LevelKernels {
  void (*factorise_even)(Rows rows, Links<T> links, T* carry, T* inverse);
  void (*factorise_odd)(Rows rows, Links<T> links, T* carry, T* inverse, Parts<T> parts);
  void (*coarsen)(Rows rows, Coarsening<T> panels, Parts<T> parts);
  /// x from rhs where the columns on both sides are at 0.
  void (*relax_alone)(Rows rows, Pivots<T> pivots, const T* rhs, T* x);
  void (*relax)(Rows rows, Pivots<T> pivots, Sides<T> sides, const T* rhs, T* x);
  void (*write_inflow)(Rows rows, Sides<T> sides, T* inflow);
  void (*add)(Rows rows, const T* correction, T* x);
  double (*product)(Rows rows, const T* a, const T* b);
  /// Writes what `Elimination` keeps of a panel of so many columns.
  void (*factorise_panel)(Rows rows, std::size_t columns, PanelLinks<T> links, T* inverses);
  /// x from rhs; returns their product.
  double (*solve_panel)(Rows rows, Elimination<T> panel, const T* rhs, T* x);
};

/// Temperatures of a panel and of those beside it.
struct Around {
  const double* here;
  const double* east;
  const double* west;
};

/// Squares summed over a panel: of the right-hand side, of the residual, and of what rounding the
/// temperatures to double may contribute to it, in units of epsilon.
struct MisfitSums {
  double given;
  double residual;
  double rounding;
};

/// What conjugate gradients do to a panel, with a preconditioner in T.
template <typename T>
struct GradientKernels {
  /// Sets inactive temperatures to 0.
  void (*clear_inactive)(Rows rows, Links<double> links, double* x);
  /// Turns the right-hand side into the residual; on inactive nodes it is 0.
  MisfitSums (*subtract_image)(Rows rows, Links<double> links, Around x, double* residual);
  /// residual -= step * image, and the same for the preconditioner; returns the sum of squares.
  double (*take_step)(Rows rows, double step, const double* image, double* residual, T* given);
  /// x += step * direction.
  void (*move)(Rows rows, double step, const double* direction, double* x);
  /// The same, then direction = downhill + share * direction.
  void (*turn)(Rows rows, double step, double share, const T* downhill, double* direction,
               double* x);
  /// image = A direction; returns their product.
  double (*write_image)(Rows rows, Links<double> links, Around direction, double* image);
};

/// All of them, for one width of registers. Results are the same to the last bit for each.
struct PanelKernels {
  std::size_t register_bytes;
  LevelKernels<float> level_float;
  LevelKernels<double> level_double;
  GradientKernels<float> gradient_float;
  GradientKernels<double> gradient_double;

  template <typename T>
  [[nodiscard]] const LevelKernels<T>& level() const {
    if constexpr (std::is_same_v<T, float>) {
      return level_float;
    } else {
      return level_double;
    }
  }
  template <typename T>
  [[nodiscard]] const GradientKernels<T>& gradient() const {
    if constexpr (std::is_same_v<T, float>) {
      return gradient_float;
    } else {
      return gradient_double;
    }
  }
};

inline constexpr std::size_t widest_registers = 64;  // bytes

/// The kernels for the widest registers of this machine that have at most so many bytes.
[[nodiscard]] const PanelKernels& panel_kernels(std::size_t register_bytes);

}  // namespace quoin::solver
