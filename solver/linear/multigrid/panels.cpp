// SPDX-License-Identifier: Apache-2.0
#include "solver/linear/multigrid/panels.hpp"

#include <cstring>
#include <limits>

namespace quoin::solver {

namespace {

std::size_t ceiling(std::size_t value, std::size_t step) { return (value + step - 1) / step; }

/// What working with so many panels in a group costs for each column, relative to the ideal.
double cost(std::size_t columns, std::size_t panels) {
  const std::size_t groups = ceiling(columns, panels * lane_count);
  const double waste =
      static_cast<double>(groups * panels * lane_count) / static_cast<double>(columns);
  // The panels at the ends of a group are worked on apart from the others.
  const double ends = 0.5 / static_cast<double>(panels);
  // Few groups cannot bound voids well.
  const double voids = 0.2 / static_cast<double>(groups);
  // A grid with an odd number of panels is dealt out anew.
  double anew = 0.2;
  for (std::size_t left = panels; left % 2 == 0; left /= 2) anew *= 0.5;
  return waste * (1.0 + ends + voids + anew);
}

}  // namespace

PanelLayout panel_layout(std::size_t columns, std::size_t rows) {
  if (columns <= lane_count) return {columns, rows, 1, 1};
  std::size_t best = 2;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t panels = 2; panels <= 64; panels += 2) {
    const double here = cost(columns, panels);
    if (here < least) {
      least = here;
      best = panels;
    }
  }
  return {columns, rows, best, ceiling(columns, best * lane_count)};
}

PanelLayout halved(const PanelLayout& layout) {
  return {ceiling(layout.columns, 2), layout.rows, layout.panels / 2, layout.groups};
}

template <typename T>
Panels<T>::Panels(const PanelLayout& layout, Arena& arena)
    : layout_(layout),
      first_(static_cast<T*>(arena.take(layout.slot_count() * layout.panel_size() * sizeof(T)))) {}

template <typename T>
void Panels<T>::write_east_ghost(std::size_t group, const Rows& rows) {
  constexpr std::size_t last = lane_count - 1;
  const T* first = (*this)[layout_.slot(group, 0)];
  const bool ends = group + 1 == layout_.groups;
  const T* beyond = (*this)[layout_.slot(ends ? group : group + 1, 0)];
  T* ghost = (*this)[layout_.slot(group, layout_.panels)];
  // Right behind a panel of one row lies its ghost: the row read then reaches into that written.
  const bool apart = layout_.panel_size() > lane_count;
  for (std::size_t j = rows.begin; j < rows.end; j += lane_count) {
    // A whole row at once is quicker than all but one of it; what is too much is written over.
    if (apart) {
      std::memcpy(ghost + j, first + j + 1, lane_count * sizeof(T));
    } else {
      std::memmove(ghost + j, first + j + 1, lane_count * sizeof(T));
    }
    ghost[j + last] = ends ? T{0} : beyond[j];
  }
}

template <typename T>
void Panels<T>::write_west_ghost(std::size_t group, const Rows& rows) {
  const std::size_t panel = layout_.panels - 1;
  const T* last = (*this)[layout_.slot(group, panel)];
  const bool ends = group == 0;
  const T* beyond = (*this)[layout_.slot(ends ? group : group - 1, panel)];
  T* ghost = (*this)[layout_.slot(group, 0) - 1];
  for (std::size_t j = rows.begin; j < rows.end; j += lane_count) {
    // One lane on; a panel of one row lies right behind its ghost, so no lane more is touched.
    ghost[j] = ends ? T{0} : beyond[j + lane_count - 1];
    std::memcpy(ghost + j + 1, last + j, (lane_count - 1) * sizeof(T));
  }
}

template class Panels<float>;
template class Panels<double>;

}  // namespace quoin::solver
