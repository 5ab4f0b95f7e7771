// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <vector>

#include "geometry/section.hpp"

namespace quoin::geometry {

/// What can be wrong with a drawing.
enum class FlawKind : std::uint8_t {
  no_material,         ///< the sheet shows no material at all
  no_space,            ///< no material touches a space
  idle_space,          ///< a painted space touches no material: `space`
  island,              ///< material that heat reaches from no space: `region`
  parted,              ///< material that a gap of nothing parts from the rest, so that it meets
                       ///< `space` alone and no heat crosses it: `region`, where in the gap
  overlapping_spaces,  ///< `space` covers `other` along a face of material: which one is meant?
  enclosed_gap,        ///< a hole of nothing inside the material: no heat crosses it
  sloping_membrane,    ///< a membrane along neither axis: `membrane`
  hidden_membrane,     ///< a membrane painted over all along: `membrane`
  bare_membrane,       ///< a membrane that does not lie between two materials: `membrane`
};

/// One flaw and where it is.
struct Flaw {
  FlawKind kind;
  Point where;
  SpaceId space;
  SpaceId other;
  RegionId region;
  MembraneId membrane = {};
};

/// The flaws of a drawing, in a fixed order. Whether two overlapping spaces matter is for those who
/// know their resistances to say.
[[nodiscard]] std::vector<Flaw> flaws(const Sheet& sheet, const Section& section);

}  // namespace quoin::geometry
