// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/linear/multigrid/machine.hpp"
#include "solver/linear/multigrid/panels.hpp"
#include "solver/linear/multigrid/team.hpp"

namespace quoin::solver {

/// A conductance network on a grid, stored panel by panel. Columns are what gets relaxed at once.
/// With d[k] the step of temperature from a row of column k to the next row, the heat that T
/// dissipates is
///   sum(ground T^2) + sum(east (T[k] - T[k + 1])^2) + sum(north d[k]^2) + sum(2 tie d[k] d[k +
///   1]).
/// Ties arise on coarse grids, where the conductance along a column left out acts on a weighted
/// mean of the steps of its neighbours. All values are positive or 0.
template <typename T>
struct Conductances {
  Conductances() = default;
  /// Without conductances yet.
  Conductances(const PanelLayout& shape, bool with_ties, Arena& arena);

  /// Fills the ghosts of what leads to the next column.
  void write_ghosts();
  /// Narrows the rows to those that are active.
  void narrow_rows();

  PanelLayout layout;
  bool tied = false;
  ActiveRows rows;   ///< all to begin with
  Panels<T> east;    ///< to the next column
  Panels<T> north;   ///< to the next row; 0 in the last one
  Panels<T> ground;  ///< to fixed temperatures
  Panels<T> tie;     ///< as east; empty unless tied
};

/// One grid of the hierarchy: relaxes whole columns by tridiagonal solves, even columns and odd
/// ones in turn. After the odd columns are relaxed the residual lives on the even ones alone, and
/// correcting the even columns determines the odd ones; so neither restriction nor interpolation is
/// ever applied. They serve only to find the coarse network.
template <typename T>
class Level {
 public:
  /// Factorises the columns of the network. Writes the network of every second column (halved
  /// layout).
  ///
  /// An odd column with unit temperature on its west (east) neighbour alone takes the temperatures
  /// p (r), with unit temperature of the ground alone s; p + r + s = 1. The coarse network is the
  /// one that dissipates the same heat when odd columns are interpolated by p and r,
  ///   east = (west coupling * r + east coupling * p) / 2,  ground += coupling * s,
  /// and d = p d[west] + r d[east] in what the odd column dissipates along its rows. No difference
  /// of like numbers is ever taken: contrasts cannot spoil a coarse network.
  Level(const Conductances<T>& network, Conductances<T>& coarse, const Machine& machine,
        Arena& arena, Panels<T>& work);

  /// Layout of the room to work in that serves all levels of a hierarchy in turn.
  [[nodiscard]] static PanelLayout work_layout(const PanelLayout& finest, int threads);

  [[nodiscard]] const PanelLayout& layout() const { return layout_; }

  Panels<T> rhs;
  Panels<T> x;

  /// From x = 0: relaxes even, then odd columns. Writes what is left on the even columns into
  /// coarse_rhs (halved layout).
  void descend(const Member& member, Panels<T>& coarse_rhs);
  /// Adds the coarse correction to the even columns, relaxes odd, then even columns. Writes
  /// rhs . x of each panel with active rows into products unless that is null.
  void ascend(const Member& member, const Panels<T>& coarse_x, double* products);

  [[nodiscard]] const ActiveRows& rows() const { return rows_; }

 private:
  /// Panels 2 begin to 2 end - 1 of a group, for one member of the team.
  struct Segment {
    std::size_t group;
    std::size_t begin;
    std::size_t end;
    std::size_t owner;
  };
  void deal_out(std::size_t threads);
  template <typename Act>
  void for_own_segments(const Member& member, const Act& act) {
    for (const Segment& segment : segments_) {
      if (segment.owner == member.index()) act(segment);
    }
  }

  void factorise(const Segment& segment, const Conductances<T>& network, const Parts<T>& parts,
                 Conductances<T>& coarse);
  void hand_on(const Segment& segment, const Parts<T>& parts, Conductances<T>& coarse) const;

  [[nodiscard]] Pivots<T> pivots(std::size_t slot) const;
  [[nodiscard]] Sides<T> sides(std::size_t slot) const;
  void relax_alone(std::size_t slot, Rows rows);
  void relax(std::size_t slot, Rows rows);

  const LevelKernels<T>* kernels_;
  PanelLayout layout_;
  ActiveRows rows_;
  std::vector<Segment> segments_;
  bool tied_;
  Panels<T> east_;
  Panels<T> tie_;
  Panels<T> carry_;          // share of the flow into a node that it passes on to the next row
  Panels<T> inverse_pivot_;  // 0 on inactive nodes
};

}  // namespace quoin::solver
