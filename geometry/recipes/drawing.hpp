// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "geometry/sheet.hpp"

namespace quoin::geometry {

/// One layer of a wall, from the inside out.
struct Layer {
  RegionId region;
  double thickness = 0.0;  ///< m
};

/// The three ways the trade measures a plane part of the envelope.
enum class Dimensions { internal, overall_internal, external };

/// A plane part that meets at the detail, for plain-wall values and the linear transmittance.
struct Flank {
  std::string name;           ///< "wall", "frame": what the report calls it
  std::vector<Layer> layers;  ///< from the inside out
  SpaceId inside;
  SpaceId outside;
  double internal = 0.0;          ///< its length by internal dimensions, m
  double overall_internal = 0.0;  ///< by overall internal dimensions, m
  double external = 0.0;          ///< by external dimensions, m
};

/// What a recipe draws, and what it knows of it beyond the picture.
struct Drawing {
  Sheet sheet;
  std::vector<Flank> flanks;  ///< psi = L2D - sum(U x length) over these
  double thickness = 0.0;     ///< of the thickest flank, m: for the rule of three thicknesses
};

}  // namespace quoin::geometry
