// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "tools/answer/survey/judged_room.hpp"

namespace quoin::tools {

/// The fabric with every coordinate at its median.
[[nodiscard]] FabricState median_of(const FabricDraws& fabric);

/// Which input carries how much of the doubt, and how far each moves the margin: into a chance.
/// `median`: of the fabric; `variance`: of the margin over all draws.
void tell_inputs(const JudgedRoom& room, const FabricDraws& fabric, const FabricState& median,
                 const cases::Criterion& criterion, double variance, Chance& chance);

}  // namespace quoin::tools
