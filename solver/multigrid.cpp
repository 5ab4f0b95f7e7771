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

/// All rows that are active in some group.
Rows all_rows(const ActiveRows& rows) {
  Rows result;
  for (const Rows& own : rows) {
    if (own.empty()) continue;
    if (result.empty()) result = own;
    result.begin = std::min(result.begin, own.begin);
    result.end = std::max(result.end, own.end);
  }
  return result;
}

/// Copies what of the columns falls to a member of the team.
template <typename From, typename To>
void copy_columns(const PanelLayout& from_layout, const Panels<From>& from,
                  const PanelLayout& to_layout, Panels<To>& to, const Rows& rows,
                  const Member& member) {
  const auto [begin, end] = member.share(to_layout.columns);
  for (std::size_t column = begin; column < end; ++column) {
    const From* source = from[from_layout.slot_of(column)] + from_layout.lane_of(column);
    To* target = to[to_layout.slot_of(column)] + to_layout.lane_of(column);
    for (std::size_t j = rows.begin; j < rows.end; j += lane_count) {
      target[j] = static_cast<To>(source[j]);
    }
  }
}

/// The same network in the layout that suits its size best.
template <typename From, typename To>
Conductances<To> relaid(const Conductances<From>& network, Arena& arena) {
  const PanelLayout layout = panel_layout(network.layout.columns, network.layout.rows);
  Conductances<To> result(layout, network.tied, arena);
  const Rows rows = all_rows(network.rows);
  const auto copy = [&](const Panels<From>& from, Panels<To>& to) {
    copy_columns(network.layout, from, layout, to, rows, Member(0, 1, nullptr));
  };
  copy(network.east, result.east);
  copy(network.north, result.north);
  copy(network.ground, result.ground);
  if (network.tied) copy(network.tie, result.tie);
  result.write_ghosts();
  result.narrow_rows();
  return result;
}

/// Whether the grid below can use the same layout.
bool keeps_layout(const PanelLayout& layout) {
  return layout.columns == 1 ? layout.panels * layout.groups == 1 : layout.panels % 2 == 0;
}

}  // namespace

template <typename T>
bool needs_double_precision(const Conductances<T>& network) {
  const PanelLayout& layout = network.layout;
  for (std::size_t g = 0; g < layout.groups; ++g) {
    for (std::size_t q = 0; q < layout.panels; ++q) {
      const std::size_t slot = layout.slot(g, q);
      T along[lane_count] = {};
      T across[lane_count] = {};
      const T* north = network.north[slot];
      const T* ground = network.ground[slot];
      const T* east = network.east[slot];
      const T* west = network.east[slot - 1];
      for (std::size_t j = network.rows[g].begin; j < network.rows[g].end; j += lane_count) {
        for (std::size_t w = 0; w < lane_count; ++w) {
          along[w] += north[j + w];
          across[w] += ground[j + w] + east[j + w] + west[j + w];
        }
      }
      for (std::size_t w = 0; w < lane_count; ++w) {
        const double spoilt = std::numeric_limits<float>::epsilon() * static_cast<double>(along[w]);
        if (spoilt > rounding_limit * static_cast<double>(across[w])) return true;
      }
    }
  }
  return false;
}

template <typename T>
Multigrid<T>::Multigrid(const Conductances<T>& network, int threads, Arena& arena) {
  Conductances<T> fine = network;
  while (true) {
    Conductances<T> coarse;
    const bool last = fine.layout.columns == 1;
    grids_.push_back({std::make_unique<Level<T>>(fine, coarse, threads, arena), {}, {}});
    if (last) return;
    Grid& grid = grids_.back();
    if (std::is_same_v<T, float> && needs_double_precision(coarse)) {
      grid.down.emplace(coarse.layout, arena);
      grid.up.emplace(coarse.layout, arena);
      tail_ = std::make_unique<Multigrid<double>>(relaid<T, double>(coarse, arena), threads, arena);
      return;
    }
    if (!keeps_layout(coarse.layout)) {
      grid.down.emplace(coarse.layout, arena);
      grid.up.emplace(coarse.layout, arena);
      coarse = relaid<T, T>(coarse, arena);
    }
    fine = coarse;
  }
}

template <typename T>
void Multigrid<T>::cycle(const Member& member, double* products) {
  for (std::size_t l = 0; l < grids_.size(); ++l) descend(l, member, products);
  if (tail_) tail_->cycle(member);
  for (std::size_t l = grids_.size(); l-- != 0;) ascend(l, member, l == 0 ? products : nullptr);
}

template <typename T>
void Multigrid<T>::descend(std::size_t l, const Member& member, double* products) {
  Grid& grid = grids_[l];
  Level<T>& level = *grid.level;
  if (level.layout().columns == 1) {
    if (member.leads()) level.solve_single(l == 0 ? products : nullptr);
    member.meet();
    return;
  }
  level.descend(member, grid.down ? *grid.down : grids_[l + 1].level->rhs);
  if (!grid.down) return;
  const auto copy_to = [&](const PanelLayout& layout, auto& rhs) {
    copy_columns(halved(level.layout()), *grid.down, layout, rhs, all_rows(level.rows()), member);
  };
  if (l + 1 < grids_.size()) {
    copy_to(grids_[l + 1].level->layout(), grids_[l + 1].level->rhs);
  } else {
    copy_to(tail_->layout(), tail_->rhs());
  }
  member.meet();
}

template <typename T>
void Multigrid<T>::ascend(std::size_t l, const Member& member, double* products) {
  Grid& grid = grids_[l];
  Level<T>& level = *grid.level;
  if (level.layout().columns == 1) return;
  if (!grid.up) {
    level.ascend(member, grids_[l + 1].level->x, products);
    return;
  }
  const auto copy_from = [&](const PanelLayout& layout, const auto& x) {
    copy_columns(layout, x, halved(level.layout()), *grid.up, all_rows(level.rows()), member);
  };
  if (l + 1 < grids_.size()) {
    copy_from(grids_[l + 1].level->layout(), grids_[l + 1].level->x);
  } else {
    copy_from(tail_->layout(), tail_->x());
  }
  member.meet();
  level.ascend(member, *grid.up, products);
}

template bool needs_double_precision(const Conductances<float>&);
template bool needs_double_precision(const Conductances<double>&);
template class Multigrid<float>;
template class Multigrid<double>;

}  // namespace quoin::solver
