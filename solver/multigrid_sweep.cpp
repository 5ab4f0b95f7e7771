// SPDX-License-Identifier: Apache-2.0
#include <cstddef>

#include "solver/lanes.hpp"
#include "solver/multigrid_level.hpp"

namespace quoin::solver {

namespace {

/// Finishes the tridiagonal solve of a column whose forward sweep is in x.
template <typename T>
[[gnu::always_inline]] inline void substitute_back(std::size_t part, std::size_t size,
                                                   const T* carry, const T* inverse_pivot, T* x) {
  using L = Lanes<T>;
  L above = L::all(0);
  for (std::size_t j = size + part; j != part;) {
    j -= lane_count;
    above = L::at(x + j) * L::at(inverse_pivot + j) + L::at(carry + j) * above;
    above.write_to(x + j);
  }
}

/// Walks up a column adding up what flows in from the columns on both sides.
template <typename T, bool tied>
struct Inflow {
  using L = Lanes<T>;

  Inflow(const Panels<T>& easts, const Panels<T>& ties, const Panels<T>& x, std::size_t q)
      : east(easts.panel(q)),
        west(easts.panel(q - 1)),
        tie_east(tied ? ties.panel(q) : nullptr),
        tie_west(tied ? ties.panel(q - 1) : nullptr),
        x_east(x.panel(q + 1)),
        x_west(x.panel(q - 1)) {}

  [[gnu::always_inline]] void start(std::size_t part) {
    at_east = L::at(x_east + part);
    at_west = L::at(x_west + part);
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
void Level<T>::relax_alone(std::size_t q) {
  using L = Lanes<T>;
  const T* b = rhs.panel(q);
  const T* carry = carry_.panel(q);
  T* y = x.panel(q);
  const std::size_t size = layout_.panel_size();
  for (std::size_t part = 0; part < lane_count; part += L::count) {
    L passed = L::all(0);
    for (std::size_t j = part; j < size; j += lane_count) {
      const L here = L::at(b + j) + passed;
      here.write_to(y + j);
      passed = L::at(carry + j) * here;
    }
    substitute_back(part, size, carry, inverse_pivot_.panel(q), y);
  }
}

template <typename T>
template <bool tied>
void Level<T>::sweep(std::size_t q) {
  using L = Lanes<T>;
  Inflow<T, tied> inflow(east_, tie_, x, q);
  const T* b = rhs.panel(q);
  const T* carry = carry_.panel(q);
  T* y = x.panel(q);
  const std::size_t size = layout_.panel_size();
  for (std::size_t part = 0; part < lane_count; part += L::count) {
    inflow.start(part);
    L passed = L::all(0);
    const std::size_t last = size - lane_count + part;
    for (std::size_t j = part; j < last; j += lane_count) {
      const L here = L::at(b + j) + inflow.next(j, false) + passed;
      here.write_to(y + j);
      passed = L::at(carry + j) * here;
    }
    (L::at(b + last) + inflow.next(last, true) + passed).write_to(y + last);
    substitute_back(part, size, carry, inverse_pivot_.panel(q), y);
  }
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
template <bool tied>
void Level<T>::sum_inflow(std::size_t q, T* sum) const {
  using L = Lanes<T>;
  Inflow<T, tied> inflow(east_, tie_, x, q);
  const std::size_t size = layout_.panel_size();
  for (std::size_t part = 0; part < lane_count; part += L::count) {
    inflow.start(part);
    const std::size_t last = size - lane_count + part;
    for (std::size_t j = part; j < last; j += lane_count) inflow.next(j, false).write_to(sum + j);
    inflow.next(last, true).write_to(sum + last);
  }
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
void Level<T>::correct(std::size_t q, const T* coarse_x) {
  using L = Lanes<T>;
  T* even = x.panel(q);
  for (std::size_t k = 0; k < layout_.panel_size(); k += L::count) {
    (L::at(even + k) + L::at(coarse_x + k)).write_to(even + k);
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

template class Level<float>;
template class Level<double>;

}  // namespace quoin::solver
