// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "cases/grammar/written.hpp"
#include "cases/model/case.hpp"
#include "cases/text/fault_list.hpp"
#include "geometry/recipes/drawing.hpp"

namespace quoin::cases {

/// The probes of a drawing, each at its place: as written, or so far along a surface from a place
/// that the recipe names. What cannot be placed is left out, with a fault; where either way along
/// the surface would do, a remark says which was taken. Shape: at most that of `written`.
[[nodiscard]] std::vector<Named<geometry::Point>> placed_probes(
    const std::vector<Named<WrittenProbe>>& written, const geometry::Drawing& drawing,
    const Per<SpaceId, Space>& spaces, FaultList& faults, std::vector<Remark>& remarks);

}  // namespace quoin::cases
