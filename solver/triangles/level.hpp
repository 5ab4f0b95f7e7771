// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "geometry/triangles/nodes.hpp"
#include "solver/scheme/physics.hpp"
#include "solver/triangles/conduction.hpp"

namespace quoin::solver {

/// A section solved on one mesh of triangles: for each air the state with that air at 1 and all
/// others at 0.
class TriangleLevel {
 public:
  /// Throws: SolveError where the identity of the gap does not hold, or a factorisation fails.
  TriangleLevel(const Physics& physics, const geometry::Triangles& triangles);

  [[nodiscard]] const geometry::NodedTriangles& nodes() const { return nodes_; }
  [[nodiscard]] const Conduction& conduction() const { return conduction_; }
  [[nodiscard]] const std::vector<SpaceId>& airs() const { return airs_; }        ///< in order
  [[nodiscard]] const std::vector<TwoFields>& fields() const { return fields_; }  ///< of each air
  /// Flux above less flux below, of each air.
  [[nodiscard]] const std::vector<Flux>& gaps() const { return gaps_; }
  /// Worst of |gap - (upper - lower)| / upper: rounding, or a fault of the program.
  [[nodiscard]] double identity() const { return identity_; }
  /// Whether an air meets another in a node without resistance.
  [[nodiscard]] bool touches_another(SpaceId air) const;

  /// Temperature at the nodes, degC.
  [[nodiscard]] std::vector<double> warmth(const SpaceTemperatures& temperatures) const;
  /// The gap of the temperatures.
  [[nodiscard]] Flux gap(const SpaceTemperatures& temperatures) const;
  /// The gap of the influence of a source of 1 W/m spread evenly over some borders.
  [[nodiscard]] Flux influence_gap(const std::vector<std::uint32_t>& borders) const;

 private:
  void find_airs(const Physics& physics);
  void check_identity();

  geometry::NodedTriangles nodes_;
  Conduction conduction_;
  std::vector<SpaceId> airs_;
  std::vector<TwoFields> fields_;
  std::vector<Flux> gaps_;
  double identity_ = 0.0;
};

/// What is still to be done, gathered while numbers are read off a level.
struct Lack {
  /// Error of each element in units of the half widths wanted; their sum is no less than the worst
  /// half width.
  std::vector<double> blame;
  bool reached = true;  ///< all half widths
  bool moved = false;   ///< a window has no proof yet, so another level is needed

  /// Adds a share to each element.
  void add(const std::vector<double>& parts, double factor);
};

}  // namespace quoin::solver
