// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geometry/flank.hpp"
#include "geometry/sheet.hpp"

namespace quoin::geometry {

/// A place the trade has a word for: a point, or a straight piece of surface.
struct NamedPlace {
  std::string name;  ///< with its article: "the frame edge"
  Point from;
  Point to;  ///< the same as `from` for a point
};

/// What a recipe draws, and what it knows of it beyond the picture.
struct Drawing {
  Sheet sheet;
  std::vector<Flank> flanks;       ///< psi = L2D - sum(U x length) over these
  double thickness = 0.0;          ///< of the thickest flank, m
  std::vector<NamedPlace> places;  ///< points before the pieces they end, as the first match names
  /// The same floor on the same ground without the wall, which psi may take off as a floor solved
  /// like the detail itself; empty where there is none.
  Sheet floor_alone = {};
  SpaceId heat_sinks_in = {};  ///< a space whose level faces all let heat down; not valid: none
  std::vector<NamedPlace> timber_ends = {};  ///< points in the masonry where timber may rot
  int halves = 1;  ///< 2: half of a detail that is its own mirror image; psi is that of the whole
  /// The part a person looks at, where what runs on beyond it (the ground) would dwarf it.
  std::optional<Outline> close_up = {};
};

/// How much of a space a recipe paints beside the wall, m: enough to see it, not part of the
/// answer.
inline constexpr double space_margin = 0.1;

/// Lengths that differ by less than this are meant to be equal, m.
inline constexpr double snap_tolerance = 1e-6;

/// How far a cut plane must lie from the detail, m: three thicknesses, and a metre at least.
/// Source: ISO 10211 (memory).
[[nodiscard]] double cut_distance(double thickness);

/// Of all layers together, m.
[[nodiscard]] double thickness_of(const std::vector<Layer>& layers);

/// The layers of a lining and of the wall behind it.
[[nodiscard]] std::vector<Layer> together(std::vector<Layer> first,
                                          const std::vector<Layer>& second);

/// Draws a membrane, if there is one, along a line.
void draw(Sheet& sheet, MembraneId membrane, Outline line);

/// Paints upright layers side by side, the first with its left face at `x`, each from one level to
/// another, m.
void stand(Sheet& sheet, const std::vector<Layer>& layers, double x, double from, double to);

/// Paints level layers one below the other, the first with its top at `y`, each from one place
/// along x to another, m.
void lay(Sheet& sheet, const std::vector<Layer>& layers, double y, double from, double to);

/// Why a frame cannot be set into a wall; nothing where it can.
[[nodiscard]] std::optional<std::string> objection_to_frame(double setback, double depth,
                                                            double wall_thickness);

}  // namespace quoin::geometry
