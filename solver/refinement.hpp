// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "solver/blame.hpp"

namespace quoin::solver {

/// A subdivision with those columns and rows of cells cut in two that together bear most of the
/// blame.
[[nodiscard]] geometry::Subdivision cut_where_it_matters(geometry::Subdivision subdivision,
                                                         const Blame& blame);

}  // namespace quoin::solver
