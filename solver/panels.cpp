// SPDX-License-Identifier: Apache-2.0
#include "solver/panels.hpp"

#include <cstdlib>
#include <new>

#ifdef __linux__
#include <sys/mman.h>
#endif

namespace quoin::solver {

namespace {

constexpr std::size_t row_alignment = 128;
constexpr std::size_t huge_page = std::size_t{1} << 21;

std::size_t ceiling(std::size_t value, std::size_t step) { return (value + step - 1) / step; }

}  // namespace

PanelLayout panel_layout(std::size_t columns, std::size_t rows) {
  const std::size_t fewest = ceiling(columns, lane_count);
  if (columns == 1) return {columns, rows, 1};
  std::size_t panels = 2 * ceiling(fewest, 2);
  for (std::size_t step = 4; step <= fewest; step *= 2) {
    const std::size_t rounded = step * ceiling(fewest, step);
    if (rounded > fewest + fewest / 16) break;
    panels = rounded;
  }
  return {columns, rows, panels};
}

PanelLayout halved(const PanelLayout& layout) {
  return {ceiling(layout.columns, 2), layout.rows, layout.panels / 2};
}

template <typename T>
Panels<T>::Panels(const PanelLayout& layout) : size_(layout.panel_size()), panels_(layout.panels) {
  const std::size_t bytes = (panels_ + 2) * size_ * sizeof(T);
  const std::size_t alignment = bytes < huge_page ? row_alignment : huge_page;
  std::size_t space = bytes + alignment;
  memory_.reset(std::calloc(space, 1));
  void* start = memory_.get();
  if (start == nullptr || std::align(alignment, bytes, start, space) == nullptr) {
    throw std::bad_alloc();
  }
#ifdef __linux__
  if (alignment == huge_page) madvise(start, bytes, MADV_HUGEPAGE);  // a wish that may be refused
#endif
  first_ = static_cast<T*>(start);
}

template <typename T>
void Panels<T>::Release::operator()(void* memory) const {
  std::free(memory);
}

template <typename T>
void Panels<T>::write_east_ghost() {
  const T* first = panel(0);
  T* ghost = panel(panels_);
  for (std::size_t j = 0; j < size_; j += lane_count) {
    for (std::size_t w = 0; w + 1 < lane_count; ++w) ghost[j + w] = first[j + w + 1];
  }
}

template <typename T>
void Panels<T>::write_west_ghost() {
  const T* last = panel(panels_ - 1);
  T* ghost = panel(before_first);
  for (std::size_t j = 0; j < size_; j += lane_count) {
    for (std::size_t w = 0; w + 1 < lane_count; ++w) ghost[j + w + 1] = last[j + w];
  }
}

template class Panels<float>;
template class Panels<double>;

}  // namespace quoin::solver
