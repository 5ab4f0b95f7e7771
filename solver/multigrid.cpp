// SPDX-License-Identifier: Apache-2.0
#include "solver/multigrid.hpp"

#include <algorithm>
#include <limits>
#include <type_traits>
#include <utility>

namespace quoin::solver {

namespace {

/// How much of the ground of a column rounding of its pivots may make up or lose.
constexpr double rounding_limit = 0.02;

/// Copies the columns of some panels between layouts.
template <typename From, typename To>
void copy_columns(const PanelLayout& from_layout, const Panels<From>& from,
                  const PanelLayout& to_layout, Panels<To>& to, Member::Range to_panels) {
  for (std::size_t q = to_panels.begin; q < to_panels.end; ++q) {
    for (std::size_t w = 0; w < lane_count; ++w) {
      const std::size_t column = w * to_layout.panels + q;
      if (column >= to_layout.columns) break;
      const From* source = from.panel(from_layout.panel_of(column)) + from_layout.lane_of(column);
      To* target = to.panel(q) + w;
      for (std::size_t j = 0; j < to_layout.panel_size(); j += lane_count) {
        target[j] = static_cast<To>(source[j]);
      }
    }
  }
}

/// The same network in the layout that suits its size best.
template <typename From, typename To>
Conductances<To> relaid(const Conductances<From>& network) {
  const PanelLayout layout = panel_layout(network.layout.columns, network.layout.rows);
  Conductances<To> result(layout, network.tied);
  const Member::Range all{0, layout.panels};
  copy_columns(network.layout, network.east, layout, result.east, all);
  copy_columns(network.layout, network.north, layout, result.north, all);
  copy_columns(network.layout, network.ground, layout, result.ground, all);
  result.east.write_west_ghost();
  if (network.tied) {
    copy_columns(network.layout, network.tie, layout, result.tie, all);
    result.tie.write_west_ghost();
  }
  return result;
}

/// Whether the grid below can use the same layout.
bool keeps_layout(const PanelLayout& layout) {
  return layout.columns == 1 ? layout.panels == 1 : layout.panels % 2 == 0;
}

}  // namespace

template <typename T>
bool needs_double_precision(const Conductances<T>& network) {
  const std::size_t size = network.layout.panel_size();
  for (std::size_t q = 0; q < network.layout.panels; ++q) {
    double along[lane_count] = {};
    double across[lane_count] = {};
    const T* north = network.north.panel(q);
    const T* ground = network.ground.panel(q);
    const T* east = network.east.panel(q);
    const T* west = network.east.panel(q - 1);
    for (std::size_t j = 0; j < size; ++j) {
      along[j % lane_count] += static_cast<double>(north[j]);
      across[j % lane_count] += static_cast<double>(ground[j] + east[j] + west[j]);
    }
    for (std::size_t w = 0; w < lane_count; ++w) {
      if (std::numeric_limits<float>::epsilon() * along[w] > rounding_limit * across[w]) {
        return true;
      }
    }
  }
  return false;
}

template <typename T>
Multigrid<T>::Multigrid(Conductances<T>&& network, int threads) {
  Conductances<T> fine = std::move(network);
  while (true) {
    Conductances<T> coarse;
    const bool last = fine.layout.columns == 1;
    grids_.push_back({std::make_unique<Level<T>>(std::move(fine), coarse, threads), nullptr});
    if (last) return;
    Grid& grid = grids_.back();
    if (std::is_same_v<T, float> && needs_double_precision(coarse)) {
      grid.bridge = std::make_unique<Panels<T>>(coarse.layout);
      tail_ = std::make_unique<Multigrid<double>>(relaid<T, double>(coarse), threads);
      return;
    }
    if (!keeps_layout(coarse.layout)) {
      grid.bridge = std::make_unique<Panels<T>>(coarse.layout);
      coarse = relaid<T, T>(coarse);
    }
    fine = std::move(coarse);
  }
}

template <typename T>
void Multigrid<T>::cycle(const Member& member) {
  const std::size_t last = grids_.size() - 1;
  for (std::size_t l = 0; l < grids_.size(); ++l) {
    Level<T>& level = *grids_[l].level;
    if (level.layout().columns == 1) {
      if (member.leads()) level.solve_single();
      member.meet();
      break;
    }
    Panels<T>* bridge = grids_[l].bridge.get();
    const PanelLayout below = halved(level.layout());
    level.descend(member, bridge != nullptr ? *bridge : grids_[l + 1].level->rhs);
    if (bridge == nullptr) continue;
    if (l < last) {
      Level<T>& next = *grids_[l + 1].level;
      copy_columns(below, *bridge, next.layout(), next.rhs, member.share(next.layout().panels));
      member.meet();
    } else {
      const PanelLayout layout = tail_->layout();
      copy_columns(below, *bridge, layout, tail_->rhs(), member.share(layout.panels));
      member.meet();
      tail_->cycle(member);
    }
  }
  for (std::size_t l = grids_.size(); l-- != 0;) {
    Level<T>& level = *grids_[l].level;
    if (level.layout().columns == 1) continue;
    Panels<T>* bridge = grids_[l].bridge.get();
    const PanelLayout below = halved(level.layout());
    if (bridge == nullptr) {
      level.ascend(member, grids_[l + 1].level->x);
      continue;
    }
    if (l < last) {
      const Level<T>& next = *grids_[l + 1].level;
      copy_columns(next.layout(), next.x, below, *bridge, member.share(below.panels));
    } else {
      copy_columns(tail_->layout(), tail_->x(), below, *bridge, member.share(below.panels));
    }
    member.meet();
    level.ascend(member, *bridge);
  }
}

template bool needs_double_precision(const Conductances<float>&);
template bool needs_double_precision(const Conductances<double>&);
template class Multigrid<float>;
template class Multigrid<double>;

}  // namespace quoin::solver
