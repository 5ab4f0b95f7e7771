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
Conductances<T>::Conductances(const PanelLayout& shape, bool with_ties, Arena& arena)
    : layout(shape),
      tied(with_ties),
      rows(shape.groups, Rows{0, shape.panel_size()}),
      east(shape, arena),
      north(shape, arena),
      ground(shape, arena),
      tie(with_ties ? Panels<T>(shape, arena) : Panels<T>()) {}

template <typename T>
void Conductances<T>::write_ghosts() {
  for (std::size_t g = 0; g < layout.groups; ++g) {
    east.write_west_ghost(g, rows[g]);
    if (tied) tie.write_west_ghost(g, rows[g]);
  }
}

template <typename T>
void Conductances<T>::narrow_rows() {
  for (std::size_t g = 0; g < layout.groups; ++g) {
    const auto leads_nowhere = [&](const Panels<T>& values, std::size_t slot, std::size_t j) {
      const T* row = values[slot] + j;
      return std::all_of(row, row + lane_count, [](T value) { return value == T{0}; });
    };
    const auto is_void = [&](std::size_t j) {
      bool result = leads_nowhere(east, layout.slot(g, 0) - 1, j);
      for (std::size_t q = 0; q < layout.panels && result; ++q) {
        const std::size_t slot = layout.slot(g, q);
        result = leads_nowhere(east, slot, j) && leads_nowhere(north, slot, j) &&
                 leads_nowhere(ground, slot, j) &&
                 (j == 0 || leads_nowhere(north, slot, j - lane_count));
      }
      return result;
    };
    Rows& own = rows[g];
    while (!own.empty() && is_void(own.begin)) own.begin += lane_count;
    while (!own.empty() && is_void(own.end - lane_count)) own.end -= lane_count;
  }
}

/// What an odd column takes of its west neighbour, its east neighbour and the ground; and what it
/// hands on to the coarse network of its east neighbour.
template <typename T>
struct Level<T>::Parts {
  T* west;
  T* east;
  T* ground;
  T* north_on;
  T* ground_on;
};

// carry[j] = north[j] * inverse_pivot[j]: both of what goes forward into row j + 1 and back from
// it.

template <typename T>
PanelLayout Level<T>::work_layout(const PanelLayout& finest, int threads) {
  // Three panels for each member of the team, two for each segment. No layout has more groups than
  // pairs of panels, and members cut them further.
  const auto members = static_cast<std::size_t>(threads);
  return {0, finest.rows, 3 * members + 2 * (finest.panel_count() / 2 + 1 + members), 1};
}

template <typename T>
Level<T>::Level(const Conductances<T>& network, Conductances<T>& coarse, int threads, Arena& arena,
                Panels<T>& work)
    : rhs(network.layout, arena),
      x(network.layout, arena),
      layout_(network.layout),
      rows_(network.rows),
      tied_(network.tied),
      east_(network.east),
      tie_(network.tie),
      carry_(network.layout, arena),
      inverse_pivot_(network.layout, arena) {
  deal_out(static_cast<std::size_t>(threads));
  coarse = Conductances<T>(halved(layout_), true, arena);
  const auto parts_of = [&](const Segment& segment) {
    const std::size_t w = 3 * segment.owner;
    const std::size_t h = 3 * static_cast<std::size_t>(threads) +
                          2 * static_cast<std::size_t>(&segment - segments_.data());
    return Parts{work[w], work[w + 1], work[w + 2], work[h], work[h + 1]};
  };
  run_team(threads, [&](const Member& member) {
    for_own_segments(member, [&](const Segment& segment) {
      const Parts parts = parts_of(segment);
      const Rows& rows = rows_[segment.group];
      std::fill(parts.north_on + rows.begin, parts.north_on + rows.end, T{0});
      std::fill(parts.ground_on + rows.begin, parts.ground_on + rows.end, T{0});
      for (std::size_t h = segment.begin; h < segment.end; ++h) {
        const std::size_t even = layout_.slot(segment.group, 2 * h);
        const std::size_t coarse_slot = coarse.layout.slot(segment.group, h);
        factorise_even(network, even, rows);
        factorise_odd(network, even + 1, rows, parts);
        if (tied_) {
          coarsen<true>(network, even + 1, rows, parts, coarse, coarse_slot);
        } else {
          coarsen<false>(network, even + 1, rows, parts, coarse, coarse_slot);
        }
      }
    });
    member.meet();
    for_own_segments(member,
                     [&](const Segment& segment) { hand_on(segment, parts_of(segment), coarse); });
  });
  for (std::size_t g = 0; g < layout_.groups; ++g) {
    const Rows& before = rows_[g == 0 ? 0 : g - 1];
    coarse.rows[g] = rows_[g].empty() ? before : rows_[g];
    if (before.empty()) continue;
    coarse.rows[g].begin = std::min(coarse.rows[g].begin, before.begin);
    coarse.rows[g].end = std::max(coarse.rows[g].end, before.end);
  }
  coarse.write_ghosts();
  coarse.narrow_rows();
}

/// Cuts the groups where one member's share ends.
template <typename T>
void Level<T>::deal_out(std::size_t threads) {
  const std::size_t pairs = layout_.panels / 2;
  for (std::size_t owner = 0; owner < threads; ++owner) {
    const Member::Range share = Member(owner, threads, nullptr).share(pairs * layout_.groups);
    for (std::size_t at = share.begin; at < share.end;) {
      const std::size_t group = at / pairs;
      const std::size_t end = std::min(share.end, (group + 1) * pairs);
      if (!rows_[group].empty()) {
        segments_.push_back({group, at - group * pairs, end - group * pairs, owner});
      }
      at = end;
    }
  }
}

/// The coarse panel to the east of a segment takes what the last odd panel handed on; behind the
/// last panel of a group that is the first one, one lane up.
template <typename T>
void Level<T>::hand_on(const Segment& segment, const Parts& parts, Conductances<T>& coarse) const {
  const auto [group, begin, end, owner] = segment;
  const bool wraps = end == coarse.layout.panels;
  const std::size_t slot = coarse.layout.slot(group, wraps ? 0 : end);
  const std::size_t up = wraps ? 1 : 0;
  T* north = coarse.north[slot];
  T* ground = coarse.ground[slot];
  const Rows& rows = rows_[group];
  for (std::size_t j = rows.begin; j < rows.end; j += lane_count) {
    for (std::size_t w = up; w < lane_count; ++w) {
      north[j + w] += parts.north_on[j + w - up];
      ground[j + w] += parts.ground_on[j + w - up];
    }
  }
  if (!wraps || group + 1 == layout_.groups) return;
  north = coarse.north[coarse.layout.slot(group + 1, 0)];
  ground = coarse.ground[coarse.layout.slot(group + 1, 0)];
  for (std::size_t j = rows.begin; j < rows.end; j += lane_count) {
    north[j] += parts.north_on[j + lane_count - 1];
    ground[j] += parts.ground_on[j + lane_count - 1];
  }
}

template <typename T>
void Level<T>::factorise_even(const Conductances<T>& network, std::size_t slot, const Rows& rows) {
  using L = Lanes<T>;
  const T* east = east_[slot];
  const T* west = east_[slot - 1];
  const T* north = network.north[slot];
  const T* ground = network.ground[slot];
  T* carry = carry_[slot];
  T* inverse = inverse_pivot_[slot];
  for (std::size_t part = 0; part < lane_count; part += L::count) {
    L passed = L::all(0);
    for (std::size_t j = rows.begin + part; j < rows.end; j += lane_count) {
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
void Level<T>::factorise_odd(const Conductances<T>& network, std::size_t slot, const Rows& rows,
                             const Parts& parts) {
  using L = Lanes<T>;
  const T* east = east_[slot];
  const T* west = east_[slot - 1];
  const T* north = network.north[slot];
  const T* ground = network.ground[slot];
  T* carry = carry_[slot];
  T* inverse = inverse_pivot_[slot];
  for (std::size_t part = 0; part < lane_count; part += L::count) {
    L passed_west = L::all(0);
    L passed_east = L::all(0);
    L passed_ground = L::all(0);
    for (std::size_t j = rows.begin + part; j < rows.end; j += lane_count) {
      const L from_west = L::at(west + j) + passed_west;
      const L from_east = L::at(east + j) + passed_east;
      const L from_ground = L::at(ground + j) + passed_ground;
      const L above = L::at(north + j);
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

template <typename T>
template <bool tied>
void Level<T>::coarsen(const Conductances<T>& network, std::size_t slot, const Rows& rows,
                       const Parts& parts, Conductances<T>& coarse, std::size_t coarse_slot) const {
  using L = Lanes<T>;
  const T* carry = carry_[slot];
  const T* east = east_[slot];
  const T* west = east_[slot - 1];
  const T* tie_east = tied ? tie_[slot] : nullptr;
  const T* tie_west = tied ? tie_[slot - 1] : nullptr;
  const T* north = network.north[slot];
  const T* even_north = network.north[slot - 1];
  const T* even_ground = network.ground[slot - 1];
  T* coarse_east = coarse.east[coarse_slot];
  T* coarse_tie = coarse.tie[coarse_slot];
  T* coarse_north = coarse.north[coarse_slot];
  T* coarse_ground = coarse.ground[coarse_slot];
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
      const L on = L::at(carry + j);
      L p = L::at(parts.west + j) + on * p_above;
      L r = L::at(parts.east + j) + on * r_above;
      L s = L::at(parts.ground + j) + on * s_above;
      p = p.where_above(least, p);
      r = r.where_above(least, r);
      s = s.where_above(least, s);
      const L east_here = half * (L::at(west + j) * r + L::at(east + j) * p);
      east_here.write_to(coarse_east + j);
      (L::at(even_ground + j) + L::at(west + j) * s + L::at(parts.ground_on + j))
          .write_to(coarse_ground + j);
      (L::at(east + j) * s).write_to(parts.ground_on + j);

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
      (L::at(even_north + j) + (p_mean * west_share + loose) + L::at(parts.north_on + j))
          .write_to(coarse_north + j);
      (r_mean * east_share + loose).write_to(parts.north_on + j);
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
