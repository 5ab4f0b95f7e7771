// SPDX-License-Identifier: Apache-2.0
// The kernels, to be compiled once for each width of registers. Nothing here calls anything that is
// shared with other sources: a copy made for wide registers might be the one that is linked, and
// then run where there are none.
#pragma once

#include <cstddef>

#include "solver/linear/multigrid/lanes.hpp"
#include "solver/linear/multigrid/panel_elimination_any.hpp"
#include "solver/linear/multigrid/panel_kernels.hpp"

namespace quoin::solver {
inline namespace QUOIN_LANES {

/// Weights below this one are as good as none; kept, they would run into denormal numbers.
inline constexpr float least_weight = 1e-10F;

// carry[j] = north[j] * inverse[j]: both of what goes forward into row j + 1 and back from it.

template <typename T>
void factorise_even(Rows rows, Links<T> links, T* carry, T* inverse) {
  using L = Lanes<T>;
  for (std::size_t part = 0; part < lane_count; part += L::count) {
    L passed = L::all(0);
    for (std::size_t j = rows.begin + part; j < rows.end; j += lane_count) {
      const L aside =
          L::at(links.west + j) + L::at(links.east + j) + L::at(links.ground + j) + passed;
      const L above = L::at(links.north + j);
      const L inverse_here = (aside + above).inverse();
      const L carry_here = above * inverse_here;
      inverse_here.write_to(inverse + j);
      carry_here.write_to(carry + j);
      passed = carry_here * aside;
    }
  }
}

template <typename T>
void factorise_odd(Rows rows, Links<T> links, T* carry, T* inverse, Parts<T> parts) {
  using L = Lanes<T>;
  for (std::size_t part = 0; part < lane_count; part += L::count) {
    L passed_west = L::all(0);
    L passed_east = L::all(0);
    L passed_ground = L::all(0);
    for (std::size_t j = rows.begin + part; j < rows.end; j += lane_count) {
      const L from_west = L::at(links.west + j) + passed_west;
      const L from_east = L::at(links.east + j) + passed_east;
      const L from_ground = L::at(links.ground + j) + passed_ground;
      const L above = L::at(links.north + j);
      const L inverse_here = (from_west + from_east + from_ground + above).inverse();
      const L carry_here = above * inverse_here;
      inverse_here.write_to(inverse + j);
      carry_here.write_to(carry + j);
      (from_west * inverse_here).write_to(parts.west + j);
      (from_east * inverse_here).write_to(parts.east + j);
      (from_ground * inverse_here).write_to(parts.ground + j);
      passed_west = carry_here * from_west;
      passed_east = carry_here * from_east;
      passed_ground = carry_here * from_ground;
    }
  }
}

template <typename T, bool tied>
void coarsen_tied_or_not(Rows rows, Coarsening<T> panels, Parts<T> parts) {
  using L = Lanes<T>;
  const auto least = static_cast<T>(least_weight);
  const T half{0.5};
  const T two{2};
  for (std::size_t part = 0; part < lane_count; part += L::count) {
    L p_above = L::all(0);
    L r_above = L::all(0);
    L s_above = L::all(0);
    L east_above = L::all(0);  // above the last row: nothing is tied there
    for (std::size_t j = rows.end + part; j != rows.begin + part;) {
      j -= lane_count;
      const L on = L::at(panels.carry + j);
      const L west = L::at(panels.odd.west + j);
      const L east = L::at(panels.odd.east + j);
      L p = L::at(parts.west + j) + on * p_above;
      L r = L::at(parts.east + j) + on * r_above;
      L s = L::at(parts.ground + j) + on * s_above;
      p = p.where_above(least, p);
      r = r.where_above(least, r);
      s = s.where_above(least, s);
      const L east_here = half * (west * r + east * p);
      east_here.write_to(panels.coarse_east + j);
      (L::at(panels.even_ground + j) + west * s + L::at(parts.ground_on + j))
          .write_to(panels.coarse_ground + j);
      (east * s).write_to(parts.ground_on + j);

      const L p_mean = half * (p + p_above);
      const L r_mean = half * (r + r_above);
      const L n = L::at(panels.odd.north + j);
      L west_share = n * p_mean;
      L east_share = n * r_mean;
      L tie = west_share * r_mean;
      if constexpr (tied) {
        const L at_west = L::at(panels.tie_west + j);
        const L at_east = L::at(panels.tie_east + j);
        tie += at_west * r_mean + at_east * p_mean;
        west_share += two * at_west;
        east_share += two * at_east;
      }
      // Where columns do not touch, nothing but their own conductance may hold them together.
      const L held = tie.where_above(0, east_here).where_above(0, east_above);
      const L loose = tie - held;
      held.write_to(panels.coarse_tie + j);
      (L::at(panels.even_north + j) + (p_mean * west_share + loose) + L::at(parts.north_on + j))
          .write_to(panels.coarse_north + j);
      (r_mean * east_share + loose).write_to(parts.north_on + j);
      p_above = p;
      r_above = r;
      s_above = s;
      east_above = east_here;
    }
  }
}

template <typename T>
void coarsen(Rows rows, Coarsening<T> panels, Parts<T> parts) {
  if (panels.tie_east != nullptr) {
    coarsen_tied_or_not<T, true>(rows, panels, parts);
  } else {
    coarsen_tied_or_not<T, false>(rows, panels, parts);
  }
}

/// Finishes the tridiagonal solve of a column whose forward sweep is in x.
template <typename T>
[[gnu::always_inline]] inline void substitute_back(std::size_t part, Rows rows, Pivots<T> pivots,
                                                   T* x) {
  using L = Lanes<T>;
  L above = L::all(0);
  for (std::size_t j = rows.end + part; j != rows.begin + part;) {
    j -= lane_count;
    above = L::at(x + j) * L::at(pivots.inverse + j) + L::at(pivots.carry + j) * above;
    above.write_to(x + j);
  }
}

/// Walks up a column adding up what flows in from the columns on both sides.
template <typename T, bool tied>
struct Inflow {
  using L = Lanes<T>;

  [[gnu::always_inline]] explicit Inflow(const Sides<T>& beside) : sides(beside) {}

  [[gnu::always_inline]] void start(std::size_t first) {
    at_east = L::at(sides.x_east + first);
    at_west = L::at(sides.x_west + first);
    from_below = L::all(0);
  }
  [[gnu::always_inline]] L next(std::size_t j, bool last) {
    L sum = L::at(sides.east + j) * at_east + L::at(sides.west + j) * at_west;
    if constexpr (tied) {
      sum -= from_below;
      if (last) return sum;
      const L next_east = L::at(sides.x_east + j + lane_count);
      const L next_west = L::at(sides.x_west + j + lane_count);
      from_below = L::at(sides.tie_east + j) * (next_east - at_east) +
                   L::at(sides.tie_west + j) * (next_west - at_west);
      at_east = next_east;
      at_west = next_west;
      sum += from_below;
    } else if (!last) {
      at_east = L::at(sides.x_east + j + lane_count);
      at_west = L::at(sides.x_west + j + lane_count);
    }
    return sum;
  }

  const Sides<T> sides;
  L at_east;
  L at_west;
  L from_below;
};

template <typename T>
void relax_alone(Rows rows, Pivots<T> pivots, const T* rhs, T* x) {
  using L = Lanes<T>;
  for (std::size_t part = 0; part < lane_count; part += L::count) {
    L passed = L::all(0);
    for (std::size_t j = rows.begin + part; j < rows.end; j += lane_count) {
      const L here = L::at(rhs + j) + passed;
      here.write_to(x + j);
      passed = L::at(pivots.carry + j) * here;
    }
    substitute_back(part, rows, pivots, x);
  }
}

template <typename T, bool tied>
void relax_tied_or_not(Rows rows, Pivots<T> pivots, Sides<T> sides, const T* rhs, T* x) {
  using L = Lanes<T>;
  Inflow<T, tied> inflow(sides);
  for (std::size_t part = 0; part < lane_count; part += L::count) {
    inflow.start(rows.begin + part);
    L passed = L::all(0);
    const std::size_t last = rows.end - lane_count + part;
    for (std::size_t j = rows.begin + part; j < last; j += lane_count) {
      const L here = L::at(rhs + j) + inflow.next(j, false) + passed;
      here.write_to(x + j);
      passed = L::at(pivots.carry + j) * here;
    }
    (L::at(rhs + last) + inflow.next(last, true) + passed).write_to(x + last);
    substitute_back(part, rows, pivots, x);
  }
}

template <typename T>
void relax(Rows rows, Pivots<T> pivots, Sides<T> sides, const T* rhs, T* x) {
  if (sides.tie_east != nullptr) {
    relax_tied_or_not<T, true>(rows, pivots, sides, rhs, x);
  } else {
    relax_tied_or_not<T, false>(rows, pivots, sides, rhs, x);
  }
}

template <typename T, bool tied>
void write_inflow_tied_or_not(Rows rows, Sides<T> sides, T* sum) {
  using L = Lanes<T>;
  Inflow<T, tied> inflow(sides);
  for (std::size_t part = 0; part < lane_count; part += L::count) {
    inflow.start(rows.begin + part);
    const std::size_t last = rows.end - lane_count + part;
    for (std::size_t j = rows.begin + part; j < last; j += lane_count)
      inflow.next(j, false).write_to(sum + j);
    inflow.next(last, true).write_to(sum + last);
  }
}

template <typename T>
void write_inflow(Rows rows, Sides<T> sides, T* sum) {
  if (sides.tie_east != nullptr) {
    write_inflow_tied_or_not<T, true>(rows, sides, sum);
  } else {
    write_inflow_tied_or_not<T, false>(rows, sides, sum);
  }
}

template <typename T>
void add(Rows rows, const T* correction, T* x) {
  using L = Lanes<T>;
  for (std::size_t k = rows.begin; k < rows.end; k += L::count) {
    (L::at(x + k) + L::at(correction + k)).write_to(x + k);
  }
}

template <typename T>
double product(Rows rows, const T* a, const T* b) {
  using L = Lanes<double>;
  L products = L::all(0.0);
  for (std::size_t k = rows.begin; k < rows.end; k += L::count) {
    products += L::converted(a + k) * L::converted(b + k);
  }
  return products.sum();
}

/// Writes the conductances between a row and the next times values.
template <typename T>
[[gnu::always_inline]] inline void write_passed(const T* north, const T* tie, const T* values,
                                                T* passed) {
  constexpr std::size_t last = lane_count - 1;
  passed[0] = north[0] * values[0] + tie[0] * values[1];
  for (std::size_t k = 1; k < last; ++k) {
    passed[k] = north[k] * values[k] + tie[k] * values[k + 1] + tie[k - 1] * values[k - 1];
  }
  passed[last] = north[last] * values[last] + tie[last - 1] * values[last - 1];
}

/// Writes an inverse times values.
template <typename T>
[[gnu::always_inline]] inline void write_settled(const T* inverse, const T* values, T* settled) {
  using L = Lanes<T>;
  for (std::size_t part = 0; part < lane_count; part += L::count) {
    L even = L::all(0);
    L odd = L::all(0);
    for (std::size_t k = 0; k < lane_count; k += 2) {
      even += values[k] * L::at(inverse + k * lane_count + part);
      odd += values[k + 1] * L::at(inverse + (k + 1) * lane_count + part);
    }
    (even + odd).write_to(settled + part);
  }
}

template <typename T>
double solve_panel(Rows rows, Elimination<T> panel, const T* rhs, T* x) {
  alignas(64) T passed[lane_count] = {};
  alignas(64) T sum[lane_count];
  for (std::size_t j = rows.begin; j < rows.end; j += lane_count) {
    for (std::size_t k = 0; k < lane_count; ++k) sum[k] = rhs[j + k] + passed[k];
    write_settled(panel.inverses + j * lane_count, sum, x + j);
    write_passed(panel.north + j, panel.tie + j, x + j, passed);
  }
  for (std::size_t j = rows.end - lane_count; j != rows.begin;) {
    j -= lane_count;
    write_passed(panel.north + j, panel.tie + j, x + j + lane_count, passed);
    write_settled(panel.inverses + j * lane_count, passed, sum);
    for (std::size_t k = 0; k < lane_count; ++k) x[j + k] += sum[k];
  }
  double product = 0.0;
  for (std::size_t k = rows.begin; k < rows.end; ++k) {
    product += static_cast<double>(rhs[k]) * static_cast<double>(x[k]);
  }
  return product;
}

using Doubles = Lanes<double>;

/// Walks up half a panel: the flow out of each node at temperatures v.
struct Outflow {
  [[gnu::always_inline]] Outflow(const Links<double>& conductances, const Around& v, Rows rows)
      : links(conductances), around(v), last(rows.end - lane_count) {}

  [[gnu::always_inline]] void start(std::size_t first) {
    mine = Doubles::at(around.here + first);
    from_below = Doubles::all(0.0);
    north_below = Doubles::all(0.0);
  }
  /// Differences of neighbours come first: these are exact.
  [[gnu::always_inline]] Doubles next(std::size_t j) {
    Doubles flow = Doubles::at(links.ground + j) * mine +
                   Doubles::at(links.east + j) * (mine - Doubles::at(around.east + j)) +
                   Doubles::at(links.west + j) * (mine - Doubles::at(around.west + j)) + from_below;
    if (j >= last) return flow;
    const Doubles above = Doubles::at(around.here + j + lane_count);
    from_below = Doubles::at(links.north + j) * (above - mine);
    mine = above;
    return flow - from_below;
  }
  /// Sum of the conductances of a node. Rows come in order.
  [[gnu::always_inline]] Doubles diagonal(std::size_t j) {
    const Doubles north_here = Doubles::at(links.north + j);
    const Doubles sum = Doubles::at(links.ground + j) + Doubles::at(links.east + j) +
                        Doubles::at(links.west + j) + north_here + north_below;
    north_below = north_here;
    return sum;
  }

  const Links<double> links;
  const Around around;
  const std::size_t last;
  Doubles mine;
  Doubles from_below;
  Doubles north_below;
};

inline void clear_inactive(Rows rows, Links<double> links, double* x) {
  Outflow outflow(links, {x, x, x}, rows);
  for (std::size_t part = 0; part < lane_count; part += Doubles::count) {
    outflow.start(rows.begin + part);
    for (std::size_t j = rows.begin + part; j < rows.end; j += lane_count) {
      Doubles::at(x + j).where_above(0.0, outflow.diagonal(j)).write_to(x + j);
    }
  }
}

inline MisfitSums subtract_image(Rows rows, Links<double> links, Around x, double* residual) {
  Outflow outflow(links, x, rows);
  Doubles given = Doubles::all(0.0);
  Doubles left = Doubles::all(0.0);
  Doubles rounding = Doubles::all(0.0);
  for (std::size_t part = 0; part < lane_count; part += Doubles::count) {
    outflow.start(rows.begin + part);
    for (std::size_t j = rows.begin + part; j < rows.end; j += lane_count) {
      const Doubles diagonal = outflow.diagonal(j);
      const Doubles rhs = Doubles::at(residual + j).where_above(0.0, diagonal);
      const Doubles residual_here = rhs - outflow.next(j);
      residual_here.write_to(residual + j);
      const Doubles weight = diagonal * Doubles::at(x.here + j);
      given += rhs * rhs;
      left += residual_here * residual_here;
      rounding += weight * weight;
    }
  }
  return {given.sum(), left.sum(), rounding.sum()};
}

template <typename T>
double take_step(Rows rows, double step, const double* image, double* residual, T* given) {
  const Doubles factor = Doubles::all(step);
  Doubles squares = Doubles::all(0.0);
  for (std::size_t k = rows.begin; k < rows.end; k += Doubles::count) {
    const Doubles left = Doubles::at(residual + k) - factor * Doubles::at(image + k);
    left.write_to(residual + k);
    left.convert_to(given + k);
    squares += left * left;
  }
  return squares.sum();
}

inline void move(Rows rows, double step, const double* direction, double* x) {
  const Doubles factor = Doubles::all(step);
  for (std::size_t k = rows.begin; k < rows.end; k += Doubles::count) {
    (Doubles::at(x + k) + factor * Doubles::at(direction + k)).write_to(x + k);
  }
}

template <typename T>
void turn(Rows rows, double step, double share, const T* downhill, double* direction, double* x) {
  const Doubles factor = Doubles::all(step);
  const Doubles kept = Doubles::all(share);
  for (std::size_t k = rows.begin; k < rows.end; k += Doubles::count) {
    const Doubles old = Doubles::at(direction + k);
    (Doubles::at(x + k) + factor * old).write_to(x + k);
    (Doubles::converted(downhill + k) + kept * old).write_to(direction + k);
  }
}

inline double write_image(Rows rows, Links<double> links, Around direction, double* image) {
  Outflow outflow(links, direction, rows);
  Doubles products = Doubles::all(0.0);
  for (std::size_t part = 0; part < lane_count; part += Doubles::count) {
    outflow.start(rows.begin + part);
    for (std::size_t j = rows.begin + part; j < rows.end; j += lane_count) {
      const Doubles flow = outflow.next(j);
      flow.write_to(image + j);
      products += Doubles::at(direction.here + j) * flow;
    }
  }
  return products.sum();
}

template <typename T>
constexpr LevelKernels<T> level_kernels() {
  return {factorise_even<T>, factorise_odd<T>, coarsen<T>, relax_alone<T>,     relax<T>,
          write_inflow<T>,   add<T>,           product<T>, factorise_panel<T>, solve_panel<T>};
}

template <typename T>
constexpr GradientKernels<T> gradient_kernels() {
  return {clear_inactive, subtract_image, take_step<T>, move, turn<T>, write_image};
}

inline constexpr PanelKernels kernels_of_this_width = {
    register_bytes, level_kernels<float>(), level_kernels<double>(), gradient_kernels<float>(),
    gradient_kernels<double>()};

}  // namespace QUOIN_LANES
}  // namespace quoin::solver
