// SPDX-License-Identifier: Apache-2.0
#include <cstddef>

#include "solver/lanes.hpp"
#include "solver/multigrid_level.hpp"

namespace quoin::solver {

namespace {

/// Finishes the tridiagonal solve of a column whose forward sweep is in x.
template <typename T>
[[gnu::always_inline]] inline void substitute_back(std::size_t part, const Rows& rows,
                                                   const T* carry, const T* inverse_pivot, T* x) {
  using L = Lanes<T>;
  L above = L::all(0);
  for (std::size_t j = rows.end + part; j != rows.begin + part;) {
    j -= lane_count;
    above = L::at(x + j) * L::at(inverse_pivot + j) + L::at(carry + j) * above;
    above.write_to(x + j);
  }
}

/// Walks up a column adding up what flows in from the columns on both sides.
template <typename T, bool tied>
struct Inflow {
  using L = Lanes<T>;

  Inflow(const Panels<T>& easts, const Panels<T>& ties, const Panels<T>& x, std::size_t slot)
      : east(easts[slot]),
        west(easts[slot - 1]),
        tie_east(tied ? ties[slot] : nullptr),
        tie_west(tied ? ties[slot - 1] : nullptr),
        x_east(x[slot + 1]),
        x_west(x[slot - 1]) {}

  [[gnu::always_inline]] void start(std::size_t first) {
    at_east = L::at(x_east + first);
    at_west = L::at(x_west + first);
    from_below = L::all(0);
  }
  [[gnu::always_inline]] L next(std::size_t j, bool last) {
    L sum = L::at(east + j) * at_east + L::at(west + j) * at_west;
    if constexpr (tied) {
      sum -= from_below;
      if (last) return sum;
      const L next_east = L::at(x_east + j + lane_count);
      const L next_west = L::at(x_west + j + lane_count);
      from_below =
          L::at(tie_east + j) * (next_east - at_east) + L::at(tie_west + j) * (next_west - at_west);
      at_east = next_east;
      at_west = next_west;
      sum += from_below;
    } else if (!last) {
      at_east = L::at(x_east + j + lane_count);
      at_west = L::at(x_west + j + lane_count);
    }
    return sum;
  }

  const T* east;
  const T* west;
  const T* tie_east;
  const T* tie_west;
  const T* x_east;
  const T* x_west;
  L at_east;
  L at_west;
  L from_below;
};

}  // namespace

template <typename T>
void Level<T>::relax_alone(std::size_t slot, const Rows& rows) {
  using L = Lanes<T>;
  const T* b = rhs[slot];
  const T* carry = carry_[slot];
  T* y = x[slot];
  for (std::size_t part = 0; part < lane_count; part += L::count) {
    L passed = L::all(0);
    for (std::size_t j = rows.begin + part; j < rows.end; j += lane_count) {
      const L here = L::at(b + j) + passed;
      here.write_to(y + j);
      passed = L::at(carry + j) * here;
    }
    substitute_back(part, rows, carry, inverse_pivot_[slot], y);
  }
}

template <typename T>
template <bool tied>
void Level<T>::sweep(std::size_t slot, const Rows& rows) {
  using L = Lanes<T>;
  Inflow<T, tied> inflow(east_, tie_, x, slot);
  const T* b = rhs[slot];
  const T* carry = carry_[slot];
  T* y = x[slot];
  for (std::size_t part = 0; part < lane_count; part += L::count) {
    inflow.start(rows.begin + part);
    L passed = L::all(0);
    const std::size_t last = rows.end - lane_count + part;
    for (std::size_t j = rows.begin + part; j < last; j += lane_count) {
      const L here = L::at(b + j) + inflow.next(j, false) + passed;
      here.write_to(y + j);
      passed = L::at(carry + j) * here;
    }
    (L::at(b + last) + inflow.next(last, true) + passed).write_to(y + last);
    substitute_back(part, rows, carry, inverse_pivot_[slot], y);
  }
}

template <typename T>
void Level<T>::relax(std::size_t slot, const Rows& rows) {
  if (tied_) {
    sweep<true>(slot, rows);
  } else {
    sweep<false>(slot, rows);
  }
}

template <typename T>
template <bool tied>
void Level<T>::sum_inflow(std::size_t slot, const Rows& rows, T* sum) const {
  using L = Lanes<T>;
  Inflow<T, tied> inflow(east_, tie_, x, slot);
  for (std::size_t part = 0; part < lane_count; part += L::count) {
    inflow.start(rows.begin + part);
    const std::size_t last = rows.end - lane_count + part;
    for (std::size_t j = rows.begin + part; j < last; j += lane_count)
      inflow.next(j, false).write_to(sum + j);
    inflow.next(last, true).write_to(sum + last);
  }
}

template <typename T>
void Level<T>::write_inflow(std::size_t slot, const Rows& rows, T* inflow) const {
  if (tied_) {
    sum_inflow<true>(slot, rows, inflow);
  } else {
    sum_inflow<false>(slot, rows, inflow);
  }
}

template <typename T>
double Level<T>::product(std::size_t slot, const Rows& rows) const {
  using L = Lanes<double>;
  const T* b = rhs[slot];
  const T* here = x[slot];
  L products = L::all(0.0);
  for (std::size_t k = rows.begin; k < rows.end; k += L::count) {
    products += L::converted(b + k) * L::converted(here + k);
  }
  return products.sum();
}

template <typename T>
void Level<T>::correct(std::size_t slot, const Rows& rows, const T* coarse_x) {
  using L = Lanes<T>;
  T* even = x[slot];
  for (std::size_t k = rows.begin; k < rows.end; k += L::count) {
    (L::at(even + k) + L::at(coarse_x + k)).write_to(even + k);
  }
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
      if (h > begin) write_inflow(even, rows, coarse_rhs[coarse.slot(group, h)]);
    }
  });
  member.meet();
  for_own_segments(member, [&](const Segment& segment) {
    const auto [group, begin, end, owner] = segment;
    const Rows& rows = rows_[group];
    const std::size_t even = layout_.slot(group, 2 * (end - 1));
    if (2 * end == layout_.panels) x.write_east_ghost(group, rows);
    relax(even + 1, rows);
    if (end - 1 > begin) write_inflow(even, rows, coarse_rhs[coarse.slot(group, end - 1)]);
  });
  member.meet();
  for_own_segments(member, [&](const Segment& segment) {
    const auto [group, begin, end, owner] = segment;
    const Rows& rows = rows_[group];
    if (begin == 0) x.write_west_ghost(group, rows);
    write_inflow(layout_.slot(group, 2 * begin), rows, coarse_rhs[coarse.slot(group, begin)]);
  });
  member.meet();
}

template <typename T>
void Level<T>::ascend(const Member& member, const Panels<T>& coarse_x, double* products) {
  const PanelLayout coarse = halved(layout_);
  const auto finish = [&](std::size_t group, std::size_t q) {
    const std::size_t slot = layout_.slot(group, q);
    relax(slot, rows_[group]);
    if (products != nullptr) products[group * layout_.panels + q] = product(slot, rows_[group]);
  };
  for_own_segments(member, [&](const Segment& segment) {
    const auto [group, begin, end, owner] = segment;
    const Rows& rows = rows_[group];
    correct(layout_.slot(group, 2 * begin), rows, coarse_x[coarse.slot(group, begin)]);
    for (std::size_t h = begin; h + 1 < end; ++h) {
      correct(layout_.slot(group, 2 * h + 2), rows, coarse_x[coarse.slot(group, h + 1)]);
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

template class Level<float>;
template class Level<double>;

}  // namespace quoin::solver
