// SPDX-License-Identifier: Apache-2.0
#include "solver/multigrid_level.hpp"

#include <algorithm>
#include <cstdlib>
#include <vector>

namespace quoin::solver {

namespace {

constexpr std::size_t W = lane_count;

/// Weights below this one are as good as none; kept, they would run into denormal numbers.
constexpr float least_weight = 1e-10F;

template <typename T>
void drop_tiny(Lanes<T>& weights) {
  weights = weights < static_cast<T>(least_weight) ? Lanes<T>{} : weights;
}

/// Finishes the tridiagonal solve of a column whose forward sweep is in x.
template <typename T>
void substitute_back(std::size_t size, const T* carry, const T* inverse_pivot, T* x) {
  Lanes<T> above{};
  for (std::size_t j = size; j != 0;) {
    j -= W;
    above = lanes(x + j) * lanes(inverse_pivot + j) + lanes(carry + j) * above;
    lanes(x + j) = above;
  }
}

}  // namespace

template <typename T>
Conductances<T>::Conductances(const PanelLayout& shape, bool with_ties)
    : layout(shape),
      tied(with_ties),
      east(shape),
      north(shape),
      ground(shape),
      tie(with_ties ? Panels<T>(shape) : Panels<T>()) {}

/// What an odd column takes of its west neighbour, its east neighbour and the ground.
template <typename T>
struct Level<T>::Parts {
  explicit Parts(std::size_t rows) : values({0, rows, 3}) {}
  Panels<T> values;
  T* west() { return values.panel(0); }
  T* east() { return values.panel(1); }
  T* ground() { return values.panel(2); }
};

// carry[j] = north[j] * inverse_pivot[j]: both of what goes forward into row j + 1 and back from
// it.

template <typename T>
Level<T>::Level(Conductances<T>&& network, Conductances<T>& coarse, int threads)
    : rhs(network.layout),
      x(network.layout),
      layout_(network.layout),
      tied_(network.tied),
      east_(std::move(network.east)),
      tie_(std::move(network.tie)),
      carry_(network.layout),
      inverse_pivot_(network.layout) {
  if (layout_.columns == 1) {
    factorise_even(network, 0);
    return;
  }
  coarse = Conductances<T>(halved(layout_), true);
  const std::size_t size = layout_.panel_size();
  // What odd panels hand on to the coarse panel to their east, kept for the last one of a share.
  Panels<T> handed_north({0, layout_.rows, static_cast<std::size_t>(std::max(threads, 1))});
  Panels<T> handed_ground({0, layout_.rows, static_cast<std::size_t>(std::max(threads, 1))});
  run_team(threads, [&](const Member& member) {
    const auto [begin, end] = member.share(layout_.panels / 2);
    Parts parts(layout_.rows);
    T* north_on = handed_north.panel(member.index());
    T* ground_on = handed_ground.panel(member.index());
    for (std::size_t h = begin; h < end; ++h) {
      factorise_even(network, 2 * h);
      factorise_odd(network, 2 * h + 1, parts);
      if (tied_) {
        coarsen<true>(network, 2 * h + 1, parts, coarse, north_on, ground_on);
      } else {
        coarsen<false>(network, 2 * h + 1, parts, coarse, north_on, ground_on);
      }
    }
    member.meet();
    if (begin == end) return;
    // The first coarse panel of the next share misses what the last odd one here hands on; behind
    // the last panel comes the first, one lane up.
    T* north = coarse.north.panel(end % coarse.layout.panels);
    T* ground = coarse.ground.panel(end % coarse.layout.panels);
    const std::size_t lane_up = end == coarse.layout.panels ? 1 : 0;
    for (std::size_t j = 0; j < size; j += W) {
      for (std::size_t w = lane_up; w < W; ++w) {
        north[j + w] += north_on[j + w - lane_up];
        ground[j + w] += ground_on[j + w - lane_up];
      }
    }
  });
  coarse.east.write_west_ghost();
  coarse.tie.write_west_ghost();
}

template <typename T>
void Level<T>::factorise_even(const Conductances<T>& network, std::size_t q) {
  const T* east = east_.panel(q);
  const T* west = east_.panel(q - 1);
  const T* north = network.north.panel(q);
  const T* ground = network.ground.panel(q);
  T* carry = carry_.panel(q);
  T* inverse = inverse_pivot_.panel(q);
  Lanes<T> passed{};
  for (std::size_t j = 0; j < layout_.panel_size(); j += W) {
    const Lanes<T> aside = lanes(west + j) + lanes(east + j) + lanes(ground + j) + passed;
    const Lanes<T> pivot = aside + lanes(north + j);
    lanes(inverse + j) = pivot > T{0} ? T{1} / pivot : Lanes<T>{};
    lanes(carry + j) = lanes(north + j) * lanes(inverse + j);
    passed = lanes(carry + j) * aside;
  }
}

template <typename T>
void Level<T>::factorise_odd(const Conductances<T>& network, std::size_t q, Parts& parts) {
  const T* east = east_.panel(q);
  const T* west = east_.panel(q - 1);
  const T* north = network.north.panel(q);
  const T* ground = network.ground.panel(q);
  T* carry = carry_.panel(q);
  T* inverse = inverse_pivot_.panel(q);
  T* from_west = parts.west();
  T* from_east = parts.east();
  T* from_ground = parts.ground();
  Lanes<T> west_passed{};
  Lanes<T> east_passed{};
  Lanes<T> ground_passed{};
  for (std::size_t j = 0; j < layout_.panel_size(); j += W) {
    const Lanes<T> at_west = lanes(west + j) + west_passed;
    const Lanes<T> at_east = lanes(east + j) + east_passed;
    const Lanes<T> at_ground = lanes(ground + j) + ground_passed;
    const Lanes<T> pivot = at_west + at_east + at_ground + lanes(north + j);
    const Lanes<T> inverse_here = pivot > T{0} ? T{1} / pivot : Lanes<T>{};
    const Lanes<T> carry_here = lanes(north + j) * inverse_here;
    lanes(inverse + j) = inverse_here;
    lanes(carry + j) = carry_here;
    lanes(from_west + j) = at_west * inverse_here;
    lanes(from_east + j) = at_east * inverse_here;
    lanes(from_ground + j) = at_ground * inverse_here;
    west_passed = carry_here * at_west;
    east_passed = carry_here * at_east;
    ground_passed = carry_here * at_ground;
  }
}

template <typename T>
template <bool tied>
void Level<T>::coarsen(const Conductances<T>& network, std::size_t q, Parts& parts,
                       Conductances<T>& coarse, T* north_on, T* ground_on) const {
  const T* from_west = parts.west();
  const T* from_east = parts.east();
  const T* from_ground = parts.ground();
  const T* carry = carry_.panel(q);
  const T* east = east_.panel(q);
  const T* west = east_.panel(q - 1);
  const T* tie_east = tied ? tie_.panel(q) : nullptr;
  const T* tie_west = tied ? tie_.panel(q - 1) : nullptr;
  const T* north = network.north.panel(q);
  const T* even_north = network.north.panel(q - 1);
  const T* even_ground = network.ground.panel(q - 1);
  T* coarse_east = coarse.east.panel(q / 2);
  T* coarse_tie = coarse.tie.panel(q / 2);
  T* coarse_north = coarse.north.panel(q / 2);
  T* coarse_ground = coarse.ground.panel(q / 2);
  Lanes<T> p_above{};
  Lanes<T> r_above{};
  Lanes<T> s_above{};
  Lanes<T> east_above{};  // 0 above the last row, so nothing is tied there
  for (std::size_t j = layout_.panel_size(); j != 0;) {
    j -= W;
    Lanes<T> p = lanes(from_west + j) + lanes(carry + j) * p_above;
    Lanes<T> r = lanes(from_east + j) + lanes(carry + j) * r_above;
    Lanes<T> s = lanes(from_ground + j) + lanes(carry + j) * s_above;
    drop_tiny<T>(p);
    drop_tiny<T>(r);
    drop_tiny<T>(s);
    const Lanes<T> east_here = T{0.5} * (lanes(west + j) * r + lanes(east + j) * p);
    lanes(coarse_east + j) = east_here;
    lanes(coarse_ground + j) = lanes(even_ground + j) + lanes(west + j) * s + lanes(ground_on + j);
    lanes(ground_on + j) = lanes(east + j) * s;

    const Lanes<T> p_mean = T{0.5} * (p + p_above);
    const Lanes<T> r_mean = T{0.5} * (r + r_above);
    const Lanes<T> n = lanes(north + j);
    Lanes<T> tie = n * p_mean * r_mean;
    Lanes<T> west_share = n * p_mean;
    Lanes<T> east_share = n * r_mean;
    if constexpr (tied) {
      tie += lanes(tie_west + j) * r_mean + lanes(tie_east + j) * p_mean;
      west_share += T{2} * lanes(tie_west + j);
      east_share += T{2} * lanes(tie_east + j);
    }
    const Lanes<T> held = east_here > T{0} ? (east_above > T{0} ? tie : Lanes<T>{}) : Lanes<T>{};
    const Lanes<T> loose = tie - held;
    lanes(coarse_tie + j) = held;
    lanes(coarse_north + j) =
        lanes(even_north + j) + (p_mean * west_share + loose) + lanes(north_on + j);
    lanes(north_on + j) = r_mean * east_share + loose;
    p_above = p;
    r_above = r;
    s_above = s;
    east_above = east_here;
  }
}

template <typename T>
void Level<T>::relax_alone(std::size_t q) {
  const T* b = rhs.panel(q);
  const T* carry = carry_.panel(q);
  T* y = x.panel(q);
  const std::size_t size = layout_.panel_size();
  Lanes<T> passed{};
  for (std::size_t j = 0; j < size; j += W) {
    const Lanes<T> here = lanes(b + j) + passed;
    lanes(y + j) = here;
    passed = lanes(carry + j) * here;
  }
  substitute_back(size, carry, inverse_pivot_.panel(q), y);
}

/// Walks up a column adding up what flows in from the columns on both sides.
template <typename T, bool tied>
struct Inflow {
  Inflow(const Panels<T>& easts, const Panels<T>& ties, const Panels<T>& x, std::size_t q)
      : east(easts.panel(q)),
        west(easts.panel(q - 1)),
        tie_east(tied ? ties.panel(q) : nullptr),
        tie_west(tied ? ties.panel(q - 1) : nullptr),
        x_east(x.panel(q + 1)),
        x_west(x.panel(q - 1)) {}

  const T* east;
  const T* west;
  const T* tie_east;
  const T* tie_west;
  const T* x_east;
  const T* x_west;
  Lanes<T> from_below{};

  /// Next row; `last` is the last one.
  [[gnu::always_inline]] void add(std::size_t j, bool last, Lanes<T>& sum) {
    const Lanes<T> at_east = lanes(x_east + j);
    const Lanes<T> at_west = lanes(x_west + j);
    sum += lanes(east + j) * at_east + lanes(west + j) * at_west;
    if constexpr (tied) {
      sum -= from_below;
      if (!last) {
        from_below = lanes(tie_east + j) * (lanes(x_east + j + W) - at_east) +
                     lanes(tie_west + j) * (lanes(x_west + j + W) - at_west);
        sum += from_below;
      }
    }
  }
};

template <typename T>
template <bool tied>
void Level<T>::sweep(std::size_t q) {
  Inflow<T, tied> inflow(east_, tie_, x, q);
  const T* b = rhs.panel(q);
  const T* carry = carry_.panel(q);
  T* y = x.panel(q);
  const std::size_t size = layout_.panel_size();
  Lanes<T> passed{};
  const auto step = [&](std::size_t j, bool last) __attribute__((always_inline)) {
    Lanes<T> here = lanes(b + j) + passed;
    inflow.add(j, last, here);
    lanes(y + j) = here;
    passed = lanes(carry + j) * here;
  };
  for (std::size_t j = 0; j < size - W; j += W) step(j, false);
  step(size - W, true);
  substitute_back(size, carry, inverse_pivot_.panel(q), y);
}

template <typename T>
void Level<T>::relax(std::size_t q) {
  if (tied_) {
    sweep<true>(q);
  } else {
    sweep<false>(q);
  }
}

template <typename T>
void Level<T>::correct(std::size_t q, const T* coarse_x) {
  T* even = x.panel(q);
  const std::size_t size = layout_.panel_size();
  for (std::size_t j = 0; j < size; j += W) lanes(even + j) += lanes(coarse_x + j);
}

template <typename T>
template <bool tied>
void Level<T>::sum_inflow(std::size_t q, T* inflow) const {
  Inflow<T, tied> walk(east_, tie_, x, q);
  const std::size_t size = layout_.panel_size();
  const auto step = [&](std::size_t j, bool last) __attribute__((always_inline)) {
    Lanes<T> sum{};
    walk.add(j, last, sum);
    lanes(inflow + j) = sum;
  };
  for (std::size_t j = 0; j < size - W; j += W) step(j, false);
  step(size - W, true);
}

template <typename T>
void Level<T>::write_inflow(std::size_t q, T* inflow) const {
  if (tied_) {
    sum_inflow<true>(q, inflow);
  } else {
    sum_inflow<false>(q, inflow);
  }
}

template <typename T>
void Level<T>::descend(const Member& member, Panels<T>& coarse_rhs) {
  const auto [begin, end] = member.share(layout_.panels / 2);
  const bool works = begin != end;
  if (works) relax_alone(2 * begin);
  for (std::size_t h = begin; h + 1 < end; ++h) {
    relax_alone(2 * h + 2);
    relax(2 * h + 1);
    if (h > begin) write_inflow(2 * h, coarse_rhs.panel(h));
  }
  member.meet();
  if (works) {
    if (2 * end == layout_.panels) x.write_east_ghost();
    relax(2 * end - 1);
    if (end - 1 > begin) write_inflow(2 * (end - 1), coarse_rhs.panel(end - 1));
  }
  member.meet();
  if (works) {
    if (begin == 0) x.write_west_ghost();
    write_inflow(2 * begin, coarse_rhs.panel(begin));
  }
  member.meet();
}

template <typename T>
void Level<T>::ascend(const Member& member, const Panels<T>& coarse_x) {
  const auto [begin, end] = member.share(layout_.panels / 2);
  const bool works = begin != end;
  if (works) correct(2 * begin, coarse_x.panel(begin));
  for (std::size_t h = begin; h + 1 < end; ++h) {
    correct(2 * h + 2, coarse_x.panel(h + 1));
    relax(2 * h + 1);
    if (h > begin) relax(2 * h);
  }
  member.meet();
  if (works) {
    if (2 * end == layout_.panels) x.write_east_ghost();
    relax(2 * end - 1);
    if (end - 1 > begin) relax(2 * (end - 1));
  }
  member.meet();
  if (works) {
    if (begin == 0) x.write_west_ghost();
    relax(2 * begin);
  }
  member.meet();
}

template <typename T>
void Level<T>::solve_single() {
  relax_alone(0);
}

template struct Conductances<float>;
template struct Conductances<double>;
template class Level<float>;
template class Level<double>;

}  // namespace quoin::solver
