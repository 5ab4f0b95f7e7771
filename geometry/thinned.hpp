// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "geometry/subdivision.hpp"

namespace quoin::geometry {

/// The same halved until it has no more than so many nodes, or no line that may go.
[[nodiscard]] Subdivision thinned(Subdivision subdivision, std::size_t most_nodes);

}  // namespace quoin::geometry
