// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "geometry/flank.hpp"
#include "geometry/triangles/nodes.hpp"
#include "solver/accuracy/estimate.hpp"
#include "solver/scheme/checks.hpp"
#include "solver/scheme/coupling.hpp"
#include "solver/scheme/field.hpp"

namespace quoin::solver {

/// One cold place on a surface.
struct Spot {
  geometry::Point place;
  SpaceId space;
  RegionId region;
  /// Where fans of material touch in that point alone, which of the further nodes of the mesh is
  /// the spot's; absent: the node of the grid. The same on every mesh of a section.
  std::optional<std::size_t> further;
  double along = 0.0;        ///< on the developed surface, m
  double dip = 0.0;          ///< how much colder it may be between nodes beside it, K; in the band
  Estimate temperature;      ///< degC
  Estimate factor;           ///< fRsi; NaN where inside and outside are equally warm
  double thermometer = 0.0;  ///< mean over the coldest 10 mm there, degC: what a thermometer reads
};

/// A mean over a thermometer's width of surface between proved bounds.
struct ProvedMean {
  geometry::Point place;     ///< the middle of it
  double temperature = 0.0;  ///< the middle of low and high, degC
  double low = 0.0;          ///< the truth lies between low and high
  double high = 0.0;
};

/// What happens on the surfaces of one inside or unheated air.
struct AirSurface {
  SpaceId air;
  Spot coldest;
  std::vector<Spot> cold_spots;  ///< every local minimum along the surfaces, coldest first
  /// Of the coldest part of the fabric, where it was proved.
  std::optional<ProvedMean> thermometer = {};
};

struct ProbeValue {
  geometry::Point place;
  Estimate temperature;  ///< degC
};

/// What a section solved in triangles has beside the grid that shows its field.
struct OnTriangles {
  std::vector<geometry::Point> places;      ///< of the nodes of the triangles
  std::vector<geometry::Element> elements;  ///< through these nodes
  std::vector<std::vector<double>> basis;   ///< g of each air there. Shape: airs by places
  std::vector<double> temperature;          ///< there, degC
  std::vector<geometry::Surface> surfaces;  ///< through these nodes
  std::vector<std::vector<double>> stream;  ///< at the nodes of the grid. Shape: airs by nodes
  std::vector<char> stream_leaps;           ///< cells of the grid, see Stream; empty: none
};

/// One purpose solved: the field on the finest mesh and what follows from it.
struct Solution {
  Field field;
  Physics physics;
  std::vector<double> temperature;  ///< at each node, degC
  /// g of each air in each cell, by the control volumes on the cells; empty: not kept.
  /// Shape: airs of the field by cells
  std::vector<std::vector<double>> cells;
  /// Where slopes run that no grid follows; the field is then that of the triangles, read at the
  /// nodes of a grid which shows these slopes in steps.
  std::optional<OnTriangles> triangles;
  std::vector<AirSurface> airs;  ///< inside and unheated ones
  Per<SpaceId, double> flows;    ///< into the section, W/m
  std::vector<Coupling> couplings;
  std::vector<ProbeValue> probes;
  std::vector<Check> checks;
  bool accurate = true;               ///< the wanted accuracy was reached
  geometry::Subdivision subdivision;  ///< of the finest mesh
};

/// A plane part of the detail on its own, by the exact sum of resistances.
struct PlainPart {
  std::string name;
  double transmittance = 0.0;        ///< U with the resistances of the heat-flow purpose, W/(m2 K)
  double surface_factor = 0.0;       ///< fRsi with the resistances of the surface purpose
  double surface_temperature = 0.0;  ///< degC, surface purpose
};

/// How the floor on the ground that psi leaves out was reckoned.
enum class FloorLoss : std::uint8_t {
  none,        ///< there is none
  by_formula,  ///< ISO 13370
  solved,      ///< as the same floor without its wall
};

/// Linear thermal transmittance by one way of measuring.
struct LinearTransmittance {
  geometry::Dimensions dimensions;
  Estimate value;  ///< psi, W/(m K)
  FloorLoss floor = FloorLoss::none;
};

/// How far the field at a cut plane is from the one-dimensional one.
struct CutPlane {
  geometry::Point from;
  geometry::Point to;
  double departure =
      0.0;  ///< largest |g - its share in a plane wall| along the plane; 0: one-dimensional
  double distance = 0.0;  ///< to the coldest spot, m
  bool fabric = true;  ///< runs through fabric; false: through frame or glazing only, where a cut
                       ///< is a convention
};

}  // namespace quoin::solver
