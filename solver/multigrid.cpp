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
Conductances<To> relaid(const Conductances<From>& network) {
  const PanelLayout layout = panel_layout(network.layout.columns, network.layout.rows);
  Conductances<To> result(layout, network.tied);
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
void Multigrid<T>::cycle(const Member& member, double* products) {
  const std::size_t last = grids_.size() - 1;
  for (std::size_t l = 0; l < grids_.size(); ++l) {
    Level<T>& level = *grids_[l].level;
    if (level.layout().columns == 1) {
      if (member.leads()) level.solve_single(l == 0 ? products : nullptr);
      member.meet();
      break;
    }
    Panels<T>* bridge = grids_[l].bridge.get();
    const PanelLayout below = halved(level.layout());
    level.descend(member, bridge != nullptr ? *bridge : grids_[l + 1].level->rhs);
    if (bridge == nullptr) continue;
    if (l < last) {
      Level<T>& next = *grids_[l + 1].level;
      copy_columns(below, *bridge, next.layout(), next.rhs, all_rows(level.rows()), member);
      member.meet();
    } else {
      const PanelLayout layout = tail_->layout();
      copy_columns(below, *bridge, layout, tail_->rhs(), all_rows(level.rows()), member);
      member.meet();
      tail_->cycle(member);
    }
  }
  for (std::size_t l = grids_.size(); l-- != 0;) {
    Level<T>& level = *grids_[l].level;
    if (level.layout().columns == 1) continue;
    double* wanted = l == 0 ? products : nullptr;
    Panels<T>* bridge = grids_[l].bridge.get();
    const PanelLayout below = halved(level.layout());
    if (bridge == nullptr) {
      level.ascend(member, grids_[l + 1].level->x, wanted);
      continue;
    }
    if (l < last) {
      const Level<T>& next = *grids_[l + 1].level;
      copy_columns(next.layout(), next.x, below, *bridge, all_rows(level.rows()), member);
    } else {
      copy_columns(tail_->layout(), tail_->x(), below, *bridge, all_rows(level.rows()), member);
    }
    member.meet();
    level.ascend(member, *bridge, wanted);
  }
}

template bool needs_double_precision(const Conductances<float>&);
template bool needs_double_precision(const Conductances<double>&);
template class Multigrid<float>;
template class Multigrid<double>;

}  // namespace quoin::solver
