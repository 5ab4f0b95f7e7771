// SPDX-License-Identifier: Apache-2.0
#include "solver/multigrid_level.hpp"

#include <algorithm>
#include <utility>

#include "solver/lanes.hpp"

namespace quoin::solver {

namespace {

/// Weights below this one are as good as none; kept, they would run into denormal numbers.
constexpr float least_weight = 1e-10F;

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
    for (std::size_t j = 0; j < size; j += lane_count) {
      for (std::size_t w = lane_up; w < lane_count; ++w) {
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
  using L = Lanes<T>;
  const T* east = east_.panel(q);
  const T* west = east_.panel(q - 1);
  const T* north = network.north.panel(q);
  const T* ground = network.ground.panel(q);
  T* carry = carry_.panel(q);
  T* inverse = inverse_pivot_.panel(q);
  for (std::size_t part = 0; part < lane_count; part += L::count) {
    L passed = L::all(0);
    for (std::size_t j = part; j < layout_.panel_size(); j += lane_count) {
      const L aside = L::at(west + j) + L::at(east + j) + L::at(ground + j) + passed;
      const L above = L::at(north + j);
      const L inverse_here = (aside + above).inverse();
      const L carry_here = above * inverse_here;
      inverse_here.write_to(inverse + j);
      carry_here.write_to(carry + j);
      passed = carry_here * aside;
    }
  }
}

template <typename T>
void Level<T>::factorise_odd(const Conductances<T>& network, std::size_t q, Parts& parts) {
  using L = Lanes<T>;
  const T* east = east_.panel(q);
  const T* west = east_.panel(q - 1);
  const T* north = network.north.panel(q);
  const T* ground = network.ground.panel(q);
  T* carry = carry_.panel(q);
  T* inverse = inverse_pivot_.panel(q);
  for (std::size_t part = 0; part < lane_count; part += L::count) {
    L passed_west = L::all(0);
    L passed_east = L::all(0);
    L passed_ground = L::all(0);
    for (std::size_t j = part; j < layout_.panel_size(); j += lane_count) {
      const L from_west = L::at(west + j) + passed_west;
      const L from_east = L::at(east + j) + passed_east;
      const L from_ground = L::at(ground + j) + passed_ground;
      const L above = L::at(north + j);
      const L inverse_here = (from_west + from_east + from_ground + above).inverse();
      const L carry_here = above * inverse_here;
      inverse_here.write_to(inverse + j);
      carry_here.write_to(carry + j);
      (from_west * inverse_here).write_to(parts.west() + j);
      (from_east * inverse_here).write_to(parts.east() + j);
      (from_ground * inverse_here).write_to(parts.ground() + j);
      passed_west = carry_here * from_west;
      passed_east = carry_here * from_east;
      passed_ground = carry_here * from_ground;
    }
  }
}

template <typename T>
template <bool tied>
void Level<T>::coarsen(const Conductances<T>& network, std::size_t q, Parts& parts,
                       Conductances<T>& coarse, T* north_on, T* ground_on) const {
  using L = Lanes<T>;
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
  const auto least = static_cast<T>(least_weight);
  const T half{0.5};
  const T two{2};
  for (std::size_t part = 0; part < lane_count; part += L::count) {
    L p_above = L::all(0);
    L r_above = L::all(0);
    L s_above = L::all(0);
    L east_above = L::all(0);  // above the last row: nothing is tied there
    for (std::size_t j = layout_.panel_size() + part; j != part;) {
      j -= lane_count;
      const L on = L::at(carry + j);
      L p = L::at(parts.west() + j) + on * p_above;
      L r = L::at(parts.east() + j) + on * r_above;
      L s = L::at(parts.ground() + j) + on * s_above;
      p = p.where_above(least, p);
      r = r.where_above(least, r);
      s = s.where_above(least, s);
      const L east_here = half * (L::at(west + j) * r + L::at(east + j) * p);
      east_here.write_to(coarse_east + j);
      (L::at(even_ground + j) + L::at(west + j) * s + L::at(ground_on + j))
          .write_to(coarse_ground + j);
      (L::at(east + j) * s).write_to(ground_on + j);

      const L p_mean = half * (p + p_above);
      const L r_mean = half * (r + r_above);
      const L n = L::at(north + j);
      L west_share = n * p_mean;
      L east_share = n * r_mean;
      L tie = west_share * r_mean;
      if constexpr (tied) {
        const L at_west = L::at(tie_west + j);
        const L at_east = L::at(tie_east + j);
        tie += at_west * r_mean + at_east * p_mean;
        west_share += two * at_west;
        east_share += two * at_east;
      }
      // Where columns do not touch, nothing but their own conductance may hold them together.
      const L held = tie.where_above(0, east_here).where_above(0, east_above);
      const L loose = tie - held;
      held.write_to(coarse_tie + j);
      (L::at(even_north + j) + (p_mean * west_share + loose) + L::at(north_on + j))
          .write_to(coarse_north + j);
      (r_mean * east_share + loose).write_to(north_on + j);
      p_above = p;
      r_above = r;
      s_above = s;
      east_above = east_here;
    }
  }
}

template struct Conductances<float>;
template struct Conductances<double>;
template class Level<float>;
template class Level<double>;

}  // namespace quoin::solver
