// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geometry/facing.hpp"
#include "geometry/ids.hpp"

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

}  // namespace quoin::geometry
