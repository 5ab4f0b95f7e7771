// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cases/model/case.hpp"
#include "cases/model/survey.hpp"
#include "solver/survey/parametrised.hpp"
#include "tools/answer/survey/zones.hpp"

namespace quoin::tools {

/// Faces nearer to an inside angle than this exchange less heat, m.
inline constexpr double angle_reach = 0.150;

/// What the surface resistance of a group of faces depends on.
struct SurfaceKind {
  cases::SpaceId space;
  /// Of the resistance of an upright face of that side by the standard.
  double ratio = 1.0;
  std::optional<double> stated;  ///< by the author, m2K/W
  double design = 0.0;           ///< resistance for surface temperature, m2K/W
  bool at_angle = false;
  std::vector<std::size_t> stretches;  ///< that cover it

  bool operator==(const SurfaceKind&) const = default;
};

/// The wall behind a place on a surface, straight through from face to face.
struct WallBehind {
  struct Piece {
    std::size_t region = 0;  ///< of the zoned section
    double thickness = 0.0;  ///< m
  };
  std::vector<Piece> pieces;  ///< from the place on
  cases::SpaceId opposite;    ///< not valid: none within the section
  geometry::Point exit;       ///< where the wall ends
};

/// A section made ready for readings.
struct SurveyedSection {
  std::string name;  ///< in a house; empty: the only one
  const cases::Variant* variant = nullptr;
  ZonedSection zoned;
  solver::Parametrised parametrised;
  std::vector<cases::SpaceId> airs;  ///< in the order of the shares
  std::vector<SurfaceKind> kinds;    ///< of the groups of faces
  std::vector<geometry::Surface> surfaces;
  std::vector<geometry::Point> angles;  ///< inside ones

  [[nodiscard]] std::size_t air_number(cases::SpaceId space) const;
};

/// The section of a variant with the zones, stretches and readings of a survey that lie in it.
/// `cells_per_metre`: how fine.
[[nodiscard]] SurveyedSection surveyed_section(const std::string& name,
                                               const cases::Variant& variant,
                                               const cases::Survey& survey, double cells_per_metre);

/// A place on a surface.
struct OnSurface {
  std::size_t surface = 0;
  double along = 0.0;     ///< m
  std::size_t face = 0;   ///< of that surface
  double distance = 0.0;  ///< of the place wanted, m
};

/// The place of the surfaces nearest to a point.
[[nodiscard]] std::optional<OnSurface> nearest_on_surface(const SurveyedSection& section,
                                                          geometry::Point place);

/// The mean over a stretch of surface about a place.
[[nodiscard]] solver::Watched mean_about(const SurveyedSection& section, const OnSurface& place,
                                         double width);

/// The temperature within the material, straight between nodes.
[[nodiscard]] solver::Watched at_point(const SurveyedSection& section, geometry::Point place);

[[nodiscard]] WallBehind wall_behind(const SurveyedSection& section, const OnSurface& place);

}  // namespace quoin::tools
