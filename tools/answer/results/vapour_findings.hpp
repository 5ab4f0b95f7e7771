// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "solver/vapour/condensation.hpp"

namespace quoin::tools {

using geometry::SpaceId;

/// Water at one place through a year.
struct WaterYear {
  solver::Meeting meeting;
  std::size_t part = 0;  ///< where two meet in several places, see solver::Site
  double length = 0.0;   ///< of the line where it lies in its wettest month, m; 0 within a
                         ///< material
  std::array<double, 12> water{};  ///< at the end of each month, kg/m, from the first on
  std::size_t most = 0;            ///< the index of the wettest month
  double band = 0.0;               ///< of the water then, kg/m
  geometry::Point place;           ///< where most of it lies then
};

/// The months of a climate, water carried from one to the next.
struct VapourYear {
  std::optional<std::size_t> first;  ///< month in which water first gathers; absent: it never does
  std::vector<WaterYear> places;     ///< wettest first
};

/// Where vapour would condense by steady diffusion alone. It shows where and how much, and never
/// passes or fails anything.
struct VapourCheck {
  std::optional<solver::Condensation> stated;  ///< at the stated conditions
  std::optional<double> days;                  ///< that they last
  std::optional<VapourYear> year;              ///< or over the months of the climate
  std::vector<std::string> remarks;            ///< in plain words
};

/// What leaves the wet part of a section through one pair of coats.
struct DryingRow {
  std::string outside_coat;
  std::string inside_coat;  ///< empty: as the case has it
  std::vector<double> out;  ///< to each air of the ledger, kg/(m2 s) of its surface; negative: in
  double net = 0.0;         ///< to all airs, kg/(m s)
  double seconds = 0.0;     ///< until the excess is gone by diffusion alone; infinite: never
  double cooling = 0.0;     ///< that evaporation would give the surface, K, and that is left out
};

/// How fast the wet part of a section dries by diffusion alone.
struct DryingLedger {
  std::vector<std::string> wet;  ///< the materials that are kept saturated
  double excess = 0.0;           ///< water to be lost, kg/m
  std::string down_to;           ///< what is left then, in words
  bool by_month = false;         ///< means over the year of the climate
  std::vector<SpaceId> airs;     ///< that the section meets
  std::vector<DryingRow> rows;   ///< empty: nothing is wet
};

}  // namespace quoin::tools
