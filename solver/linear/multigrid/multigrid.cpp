// SPDX-License-Identifier: Apache-2.0
#include "solver/linear/multigrid/multigrid.hpp"

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

/// Copies what of the panels falls to a member of the team.
template <typename From, typename To>
void copy_columns(const PanelLayout& from_layout, const Panels<From>& from,
                  const PanelLayout& to_layout, Panels<To>& to, const Rows& rows,
                  const Member& member) {
  const From* source = from[0];
  const auto [begin, end] = member.share(to_layout.panel_count());
  for (std::size_t panel = begin; panel < end; ++panel) {
    const std::size_t group = panel / to_layout.panels;
    const std::size_t q = panel % to_layout.panels;
    std::size_t place[lane_count];  // of the lanes of this panel in the other layout
    std::size_t lanes = 0;
    for (; lanes < lane_count; ++lanes) {
      const std::size_t column = (group * lane_count + lanes) * to_layout.panels + q;
      if (column >= to_layout.columns) break;
      place[lanes] =
          from_layout.slot_of(column) * from_layout.panel_size() + from_layout.lane_of(column);
    }
    To* target = to[to_layout.slot(group, q)];
    for (std::size_t j = rows.begin; j < rows.end; j += lane_count) {
      if (lanes == lane_count) {
        for (std::size_t w = 0; w < lane_count; ++w) {
          target[j + w] = static_cast<To>(source[place[w] + j]);
        }
      } else {
        for (std::size_t w = 0; w < lanes; ++w) {
          target[j + w] = static_cast<To>(source[place[w] + j]);
        }
      }
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

bool is_single_panel(const PanelLayout& layout) { return layout.panel_count() == 1; }

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
Multigrid<T>::Multigrid(const Conductances<T>& network, const Machine& machine, Arena& arena)
    : layout_(network.layout) {
  Arena scratch(0);
  Panels<T> work(Level<T>::work_layout(layout_, machine.threads), scratch);
  Conductances<T> fine = network;
  while (!is_single_panel(fine.layout)) {
    Conductances<T> coarse;
    grids_.push_back({std::make_unique<Level<T>>(fine, coarse, machine, arena, work), std::nullopt,
                      std::nullopt});
    Grid& grid = grids_.back();
    const bool goes_double = std::is_same_v<T, float> && needs_double_precision(coarse);
    const bool fits = is_single_panel(coarse.layout) || coarse.layout.panels % 2 == 0;
    if (goes_double || !fits) {
      grid.down.emplace(coarse.layout, arena);
      grid.up.emplace(coarse.layout, arena);
    }
    if (goes_double) {
      const Conductances<double> wide = relaid<T, double>(coarse, arena);
      tail_ = std::make_unique<Multigrid<double>>(wide, machine, arena);
      return;
    }
    fine = fits ? coarse : relaid<T, T>(coarse, arena);
  }
  base_ = std::make_unique<PanelSolver<T>>(fine, machine, arena);
}

template <typename T>
void Multigrid<T>::cycle(const Member& member, double* products) {
  for (std::size_t l = 0; l < grids_.size(); ++l) descend(l, member);
  if (tail_) {
    tail_->cycle(member);
  } else {
    if (member.leads()) {
      const double product = base_->solve();
      if (grids_.empty() && products != nullptr) *products = product;
    }
    member.meet();
  }
  for (std::size_t l = grids_.size(); l-- != 0;) ascend(l, member, l == 0 ? products : nullptr);
}

template <typename T>
void Multigrid<T>::descend(std::size_t l, const Member& member) {
  Grid& grid = grids_[l];
  Panels<T>* next = nullptr;
  if (!tail_) next = l + 1 < grids_.size() ? &level(l + 1).rhs : &base_->rhs;
  if (tail_ && l + 1 < grids_.size()) next = &level(l + 1).rhs;
  level(l).descend(member, grid.down ? *grid.down : *next);
  if (!grid.down) return;
  const auto copy_to = [&](const PanelLayout& layout, auto& rhs) {
    copy_columns(halved(level(l).layout()), *grid.down, layout, rhs, all_rows(level(l).rows()),
                 member);
  };
  if (l + 1 < grids_.size()) {
    copy_to(level(l + 1).layout(), level(l + 1).rhs);
  } else if (tail_) {
    copy_to(tail_->layout(), tail_->rhs());
  } else {
    copy_to(panel_layout(halved(level(l).layout()).columns, layout_.rows), base_->rhs);
  }
  member.meet();
}

template <typename T>
void Multigrid<T>::ascend(std::size_t l, const Member& member, double* products) {
  Grid& grid = grids_[l];
  const bool is_last = l + 1 == grids_.size();
  if (!grid.up) {
    level(l).ascend(member, is_last ? base_->x : level(l + 1).x, products);
    return;
  }
  const auto copy_from = [&](const PanelLayout& layout, const auto& x) {
    copy_columns(layout, x, halved(level(l).layout()), *grid.up, all_rows(level(l).rows()), member);
  };
  if (!is_last) {
    copy_from(level(l + 1).layout(), level(l + 1).x);
  } else if (tail_) {
    copy_from(tail_->layout(), tail_->x());
  } else {
    copy_from(panel_layout(halved(level(l).layout()).columns, layout_.rows), base_->x);
  }
  member.meet();
  level(l).ascend(member, *grid.up, products);
}

template bool needs_double_precision(const Conductances<float>&);
template bool needs_double_precision(const Conductances<double>&);
template class Multigrid<float>;
template class Multigrid<double>;

}  // namespace quoin::solver
