// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/findings/findings.hpp"

namespace quoin::solver {

/// The cut planes that run through material from one space to another, each with how far the field
/// there is from that of a plane wall of the same layers, and its distance from a place (the
/// coldest spot). Cut planes that do not end on a space at both ends have no plane wall to compare
/// with: departure NaN.
[[nodiscard]] std::vector<CutPlane> cut_planes(const Field& field, const Physics& physics,
                                               geometry::Point coldest);

/// The same of a section in triangles, where cut planes run at any angle; those that do not stand
/// at right angles to the surfaces cut no plane wall either. `airs`: of the basis.
[[nodiscard]] std::vector<CutPlane> cut_planes(const OnTriangles& triangles,
                                               const std::vector<SpaceId>& airs,
                                               const Physics& physics, geometry::Point coldest);

}  // namespace quoin::solver
