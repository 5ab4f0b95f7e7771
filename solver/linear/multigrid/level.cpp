// SPDX-License-Identifier: Apache-2.0
#include "solver/linear/multigrid/level.hpp"

#include <algorithm>
#include <utility>

namespace quoin::solver {

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

template <typename T>
PanelLayout Level<T>::work_layout(const PanelLayout& finest, int threads) {
  // Three panels for each member of the team, two for each segment. No layout has more groups than
  // pairs of panels, and members cut them further.
  const auto members = static_cast<std::size_t>(threads);
  return {0, finest.rows, 3 * members + 2 * (finest.panel_count() / 2 + 1 + members), 1};
}

template <typename T>
Level<T>::Level(const Conductances<T>& network, Conductances<T>& coarse, const Machine& machine,
                Arena& arena, Panels<T>& work)
    : rhs(network.layout, arena),
      x(network.layout, arena),
      kernels_(&machine.kernels->level<T>()),
      layout_(network.layout),
      rows_(network.rows),
      tied_(network.tied),
      east_(network.east),
      tie_(network.tie),
      carry_(network.layout, arena),
      inverse_pivot_(network.layout, arena) {
  const auto threads = static_cast<std::size_t>(machine.threads);
  deal_out(threads);
  coarse = Conductances<T>(halved(layout_), true, arena);
  const auto parts_of = [&](const Segment& segment) {
    const std::size_t w = 3 * segment.owner;
    const std::size_t h = 3 * threads + 2 * static_cast<std::size_t>(&segment - segments_.data());
    return Parts<T>{work[w], work[w + 1], work[w + 2], work[h], work[h + 1]};
  };
  run_team(machine.threads, [&](const Member& member) {
    for_own_segments(member, [&](const Segment& segment) {
      factorise(segment, network, parts_of(segment), coarse);
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
void Level<T>::hand_on(const Segment& segment, const Parts<T>& parts,
                       Conductances<T>& coarse) const {
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
void Level<T>::factorise(const Segment& segment, const Conductances<T>& network,
                         const Parts<T>& parts, Conductances<T>& coarse) {
  const Rows rows = rows_[segment.group];
  std::fill(parts.north_on + rows.begin, parts.north_on + rows.end, T{0});
  std::fill(parts.ground_on + rows.begin, parts.ground_on + rows.end, T{0});
  const auto links = [&](std::size_t slot) {
    return Links<T>{east_[slot], east_[slot - 1], network.north[slot], network.ground[slot]};
  };
  for (std::size_t h = segment.begin; h < segment.end; ++h) {
    const std::size_t even = layout_.slot(segment.group, 2 * h);
    const std::size_t odd = even + 1;
    const std::size_t into = coarse.layout.slot(segment.group, h);
    kernels_->factorise_even(rows, links(even), carry_[even], inverse_pivot_[even]);
    kernels_->factorise_odd(rows, links(odd), carry_[odd], inverse_pivot_[odd], parts);
    kernels_->coarsen(rows,
                      {.odd = links(odd),
                       .tie_east = tied_ ? tie_[odd] : nullptr,
                       .tie_west = tied_ ? tie_[odd - 1] : nullptr,
                       .carry = carry_[odd],
                       .even_north = network.north[even],
                       .even_ground = network.ground[even],
                       .coarse_east = coarse.east[into],
                       .coarse_tie = coarse.tie[into],
                       .coarse_north = coarse.north[into],
                       .coarse_ground = coarse.ground[into]},
                      parts);
  }
}

template <typename T>
Pivots<T> Level<T>::pivots(std::size_t slot) const {
  return {carry_[slot], inverse_pivot_[slot]};
}

template <typename T>
Sides<T> Level<T>::sides(std::size_t slot) const {
  return {.east = east_[slot],
          .west = east_[slot - 1],
          .tie_east = tied_ ? tie_[slot] : nullptr,
          .tie_west = tied_ ? tie_[slot - 1] : nullptr,
          .x_east = x[slot + 1],
          .x_west = x[slot - 1]};
}

template <typename T>
void Level<T>::relax_alone(std::size_t slot, Rows rows) {
  kernels_->relax_alone(rows, pivots(slot), rhs[slot], x[slot]);
}

template <typename T>
void Level<T>::relax(std::size_t slot, Rows rows) {
  kernels_->relax(rows, pivots(slot), sides(slot), rhs[slot], x[slot]);
}

// A segment is worked on in three steps, with a meeting of the team after each: what concerns
// panels inside it while they are in the cache, then its last panel, which needs the first one of
// the next segment, then its first panel, which needs the last one of the segment before.

template <typename T>
void Level<T>::descend(const Member& member, Panels<T>& coarse_rhs) {
  const PanelLayout coarse = halved(layout_);
  for_own_segments(member, [&](const Segment& segment) {
    const auto [group, begin, end, owner] = segment;
    const Rows& rows = rows_[group];
    relax_alone(layout_.slot(group, 2 * begin), rows);
    for (std::size_t h = begin; h + 1 < end; ++h) {
      const std::size_t even = layout_.slot(group, 2 * h);
      relax_alone(even + 2, rows);
      relax(even + 1, rows);
      if (h > begin) kernels_->write_inflow(rows, sides(even), coarse_rhs[coarse.slot(group, h)]);
    }
  });
  member.meet();
  for_own_segments(member, [&](const Segment& segment) {
    const auto [group, begin, end, owner] = segment;
    const Rows& rows = rows_[group];
    const std::size_t even = layout_.slot(group, 2 * (end - 1));
    if (2 * end == layout_.panels) x.write_east_ghost(group, rows);
    relax(even + 1, rows);
    if (end - 1 > begin)
      kernels_->write_inflow(rows, sides(even), coarse_rhs[coarse.slot(group, end - 1)]);
  });
  member.meet();
  for_own_segments(member, [&](const Segment& segment) {
    const auto [group, begin, end, owner] = segment;
    const Rows& rows = rows_[group];
    if (begin == 0) x.write_west_ghost(group, rows);
    kernels_->write_inflow(rows, sides(layout_.slot(group, 2 * begin)),
                           coarse_rhs[coarse.slot(group, begin)]);
  });
  member.meet();
}

template <typename T>
void Level<T>::ascend(const Member& member, const Panels<T>& coarse_x, double* products) {
  const PanelLayout coarse = halved(layout_);
  const auto finish = [&](std::size_t group, std::size_t q) {
    const std::size_t slot = layout_.slot(group, q);
    relax(slot, rows_[group]);
    if (products == nullptr) return;
    products[group * layout_.panels + q] = kernels_->product(rows_[group], rhs[slot], x[slot]);
  };
  for_own_segments(member, [&](const Segment& segment) {
    const auto [group, begin, end, owner] = segment;
    const Rows& rows = rows_[group];
    kernels_->add(rows, coarse_x[coarse.slot(group, begin)], x[layout_.slot(group, 2 * begin)]);
    for (std::size_t h = begin; h + 1 < end; ++h) {
      kernels_->add(rows, coarse_x[coarse.slot(group, h + 1)], x[layout_.slot(group, 2 * h + 2)]);
      finish(group, 2 * h + 1);
      if (h > begin) finish(group, 2 * h);
    }
  });
  member.meet();
  for_own_segments(member, [&](const Segment& segment) {
    const auto [group, begin, end, owner] = segment;
    if (2 * end == layout_.panels) x.write_east_ghost(group, rows_[group]);
    finish(group, 2 * end - 1);
    if (end - 1 > begin) finish(group, 2 * (end - 1));
  });
  member.meet();
  for_own_segments(member, [&](const Segment& segment) {
    if (segment.begin == 0) x.write_west_ghost(segment.group, rows_[segment.group]);
    finish(segment.group, 2 * segment.begin);
  });
  member.meet();
}

template struct Conductances<float>;
template struct Conductances<double>;
template class Level<float>;
template class Level<double>;

}  // namespace quoin::solver
