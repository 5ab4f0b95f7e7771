// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

#include "solver/accuracy/bracket.hpp"
#include "solver/solution.hpp"

namespace quoin::testing {

using geometry::RegionId;
using geometry::SpaceId;

/// A strip cut into cells of equal width.
inline geometry::Strip even_strip(std::size_t cells) {
  geometry::Strip strip;
  for (std::size_t k = 1; k < cells; ++k) {
    strip.cuts.push_back(static_cast<double>(k) / static_cast<double>(cells));
  }
  return strip;
}

/// A mesh of cells of a given width, or as near to it as the section's lines allow.
inline geometry::Mesh even_mesh(const geometry::Section& section, double spacing) {
  const auto strips = [spacing](const std::vector<double>& lines) {
    std::vector<geometry::Strip> all;
    for (std::size_t k = 0; k + 1 < lines.size(); ++k) {
      const double cells = std::round((lines[k + 1] - lines[k]) / spacing);
      all.push_back(even_strip(static_cast<std::size_t>(std::max(1.0, cells))));
    }
    return all;
  };
  return geometry::mesh_of(section, {strips(section.x), strips(section.y)});
}

/// A section put together by hand: conductivities, airs and painted rectangles, with nothing
/// between it and the solver.
class Problem {
 public:
  /// A material of a conductivity, W/(m K).
  RegionId material(double conductivity, bool is_fabric = true) {
    fabric_.push_back(is_fabric);
    return conductivity_.add(conductivity);
  }

  /// An air of a temperature, degC, behind a surface resistance, m2K/W. Of the same air as another
  /// space where that is given.
  SpaceId space(double temperature, double resistance, std::optional<SpaceId> like = {}) {
    resistance_.add(resistance);
    const SpaceId id = temperatures_.add(temperature);
    air_.add(like.value_or(id));
    return id;
  }

  void paint(geometry::Fill fill, double x0, double x1, double y0, double y1) {
    sheet_.push_back({fill, geometry::rectangle(x0, x1, y0, y1), {}});
  }

  void paint(geometry::Fill fill, geometry::Outline outline) {
    sheet_.push_back({fill, std::move(outline), {}});
  }

  void draw(geometry::MembraneId membrane, geometry::Outline line) {
    sheet_.push_back({membrane, std::move(line), {}});
  }

  void change_conductivity(RegionId region, double conductivity) {
    conductivity_[region] = conductivity;
  }
  void change_resistance(SpaceId space, double resistance) { resistance_[space] = resistance; }

  [[nodiscard]] const solver::SpaceTemperatures& temperatures() const { return temperatures_; }
  [[nodiscard]] solver::SpaceTemperatures& temperatures() { return temperatures_; }
  [[nodiscard]] const geometry::Sheet& sheet() const { return sheet_; }
  [[nodiscard]] geometry::Section section() const { return geometry::section_of(sheet_); }

  [[nodiscard]] solver::Physics physics() const {
    solver::Physics physics;
    physics.conductivity = conductivity_;
    physics.air = air_;
    for (const bool fabric : fabric_) physics.is_fabric.add(fabric ? 1 : 0);
    for (const double resistance : resistance_) {
      physics.resistance.add(geometry::Per<RegionId, std::array<double, 3>>(
          conductivity_.size(), {resistance, resistance, resistance}));
    }
    return physics;
  }

  /// A graded mesh, each cell cut in four as often as `doublings` says.
  [[nodiscard]] geometry::Mesh mesh(double cells_per_metre, int doublings = 0) const {
    const geometry::Section shown = section();
    geometry::Subdivision subdivision = geometry::subdivision_of(shown, cells_per_metre);
    for (int k = 0; k < doublings; ++k) subdivision = geometry::doubled(std::move(subdivision));
    return geometry::mesh_of(shown, subdivision);
  }

  [[nodiscard]] solver::Field field(double cells_per_metre, int doublings = 0) const {
    return solver::field_of(mesh(cells_per_metre, doublings), physics(), solver::LinearOptions{});
  }

  /// The couplings of all pairs of airs on one grid, each between its bounds.
  [[nodiscard]] std::vector<solver::Coupling> couplings(double cells_per_metre,
                                                        int doublings = 0) const {
    return solver::brackets_of(
               solver::both_schemes(mesh(cells_per_metre, doublings), physics(), {}), physics())
        .couplings;
  }

  /// Solved until fRsi of the rooms and all couplings are as sure as wanted.
  [[nodiscard]] solver::Solution solution(std::vector<SpaceId> rooms, SpaceId outside,
                                          std::optional<double> factor_band,
                                          std::optional<double> coupling_band,
                                          std::vector<geometry::Point> probes = {},
                                          std::size_t node_limit = 400'000) const {
    solver::Effort effort;
    effort.node_limit = effort.patience = node_limit;
    return solver::solution_of({section(), physics(), temperatures_, std::move(rooms), outside,
                                std::move(probes), factor_band, coupling_band, sheet_},
                               effort);
  }

 private:
  geometry::Per<RegionId, double> conductivity_;
  std::vector<bool> fabric_;
  geometry::Per<SpaceId, double> resistance_;
  geometry::Per<SpaceId, SpaceId> air_;
  solver::SpaceTemperatures temperatures_;
  geometry::Sheet sheet_;
};

/// A wall of layers {thickness, conductivity} from x = 0 on, inside 20 degC on its left, outside
/// 0 degC on its right, 1 m high.
inline Problem layered_wall(const std::vector<std::pair<double, double>>& layers,
                            double inside_resistance = 0.13, double outside_resistance = 0.04) {
  Problem problem;
  const SpaceId inside = problem.space(20, inside_resistance);
  const SpaceId outside = problem.space(0, outside_resistance);
  double x = 0.0;
  for (const auto& [thickness, conductivity] : layers) {
    problem.paint(problem.material(conductivity), x, x + thickness, 0, 1);
    x += thickness;
  }
  problem.paint(inside, -0.1, 0, 0, 1);
  problem.paint(outside, x, x + 0.1, 0, 1);
  return problem;
}

/// The external corner of a homogeneous wall with legs of 1 m: room (space 0, at 1) within, air
/// outside (space 1, at 0) around x = 0 and y = 0.
inline Problem external_corner(double thickness, double conductivity, double inside_resistance,
                               double outside_resistance = 0.04, double leg = 1.0) {
  Problem problem;
  const SpaceId room = problem.space(1, inside_resistance);
  const SpaceId outside = problem.space(0, outside_resistance);
  const RegionId wall = problem.material(conductivity);
  const double end = thickness + leg;
  problem.paint(outside, -0.1, end, -0.1, end);
  problem.paint(wall, 0, end, 0, end);
  problem.paint(room, thickness, end, thickness, end);
  return problem;
}

}  // namespace quoin::testing
