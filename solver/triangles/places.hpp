// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <vector>

#include "geometry/triangles/nodes.hpp"
#include "solver/accuracy/estimate.hpp"
#include "solver/findings/findings.hpp"
#include "solver/triangles/level.hpp"

namespace quoin::solver {

/// Finds the element that holds a place, and reads quadratic fields there.
class PlaceFinder {
 public:
  PlaceFinder(const geometry::Triangles& triangles, const geometry::NodedTriangles& nodes);

  /// A place within an element by the shares of its corners.
  struct Place {
    std::uint32_t element = 0;
    std::array<double, 3> share{};
  };
  /// The element that holds a place; of a place outside of the material the nearest on its borders.
  [[nodiscard]] Place find(geometry::Point place) const;
  /// The nearest place on the borders.
  [[nodiscard]] Place on_border(geometry::Point place) const;

  /// The weights of the six nodes at a place.
  [[nodiscard]] static std::array<double, 6> weights(const Place& place);
  [[nodiscard]] double value(const std::vector<double>& field, const Place& place) const;

 private:
  const geometry::Triangles& triangles_;
  const geometry::NodedTriangles& nodes_;
  std::vector<std::uint32_t> element_;  ///< of each triangle
  mutable std::uint32_t last_ = 0;      ///< where the last place was: the next is near it
};

/// A temperature read at one place of one level, kept to be compared with the next level.
struct Reading {
  geometry::Point place;
  TwoSided value;
};

/// The cold spots along an air, coldest first, with bands from the level before where a spot was
/// known there; readings are added to those of now. The influence of a spot is that of a source
/// spread over the borders that meet in it. `band`: wanted half width of the coldest one of the
/// fabric, K; absent: do not care.
[[nodiscard]] std::optional<AirSurface> cold_spots_on(const TriangleLevel& level,
                                                      const Physics& physics,
                                                      const SpaceTemperatures& temperatures,
                                                      SpaceId air, std::optional<double> band,
                                                      const std::vector<Reading>& before,
                                                      std::vector<Reading>& now, Lack& lack);

/// The temperature at a place, with a band as a spot's: the influence is that of a source spread
/// over the element that holds it. `gap` and `warmth`: of the temperatures; `own_gap`: product of
/// the gap with itself by element; `band`: wanted, K; absent: do not care.
[[nodiscard]] ProbeValue probe_on(const TriangleLevel& level, const Flux& gap,
                                  const std::vector<double>& own_gap, const PlaceFinder& finder,
                                  const std::vector<double>& warmth, geometry::Point place,
                                  std::optional<double> band, const std::vector<Reading>& before,
                                  std::vector<Reading>& now, Lack& lack);

}  // namespace quoin::solver
