// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "cases/model/case.hpp"
#include "materials/conductivity.hpp"
#include "materials/surface_resistance.hpp"
#include "solver/scheme/physics.hpp"

namespace quoin::tools {

using geometry::Per;
using geometry::RegionId;
using geometry::SpaceId;

/// The conductivity of every region of a variant in its state of wetness.
[[nodiscard]] Per<RegionId, materials::Conductivity> conductivities(const cases::Variant& variant);

/// A variant as numbers for one purpose. Where the author fixed a resistance it holds for both.
[[nodiscard]] solver::Physics physics_of(const cases::Variant& variant, materials::Purpose purpose);

/// The air that fRsi is measured against: the coldest outside; where nothing is outside (a room
/// beside a cold loft), the coldest of all.
[[nodiscard]] SpaceId outside_of(const cases::Variant& variant);

/// The temperature of every space as its surfaces feel it: that of its air, less what a clear sky
/// or evaporation cools.
[[nodiscard]] solver::SpaceTemperatures temperatures_of(const cases::Variant& variant);

}  // namespace quoin::tools
