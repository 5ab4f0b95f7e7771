// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geometry/facing.hpp"
#include "geometry/sheet.hpp"

namespace quoin::geometry {

/// One layer of a wall, from the inside out.
struct Layer {
  RegionId region;
  double thickness = 0.0;  ///< m
  bool hollow = false;     ///< a layer of air, which a closer may close
  MembraneId behind = {};  ///< on its face away from the room; not valid: none
};

/// The three ways the trade measures a plane part of the envelope.
enum class Dimensions { internal, overall_internal, external };

/// The ground under a floor that lies on it.
struct FloorOnGround {
  RegionId ground;
  double width = 0.0;           ///< of the floor between its walls, long against it, m
  double wall_thickness = 0.0;  ///< m
};

/// What a suspended floor lies over: a void with air of its own.
struct FloorOverVoid {
  FloorOnGround below;       ///< of the ground in the void
  double height = 0.0;       ///< of the floor's top above the ground outside, m
  std::vector<Layer> walls;  ///< around the void, from the inside out
  SpaceId outside;           ///< of those walls
};

/// A plane part that meets at the detail, for plain-wall values and the linear transmittance.
struct Flank {
  std::string name;           ///< "wall", "frame": what the report calls it
  std::vector<Layer> layers;  ///< from the inside out
  SpaceId inside;
  SpaceId outside;
  /// Its length by internal dimensions, m. All three are 0 where nothing meets and psi has no
  /// meaning.
  double internal = 0.0;
  double overall_internal = 0.0;    ///< by overall internal dimensions, m
  double external = 0.0;            ///< by external dimensions, m
  Facing looks = Facing::sideways;  ///< where its inside face looks
  /// Where the layers, which may then be none, are a floor on the ground: its U is that of ISO
  /// 13370.
  std::optional<FloorOnGround> on_ground = {};
  /// Where the layers are a floor over a void, which then is its outside: psi takes its U by ISO
  /// 13370 from inside to outdoors, though as a plane part it ends at the void.
  std::optional<FloorOverVoid> over_void = {};
};

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
