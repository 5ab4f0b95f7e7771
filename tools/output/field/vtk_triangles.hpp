// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// The field of a variant that was solved in triangles, as a VTK XML unstructured grid (.vtu) of
/// quadratic triangles that follow every slope; arrays as in field_file. The heat flux is that in
/// the middle of each triangle. What vapour does is on a grid of its own and left out.
[[nodiscard]] std::string vtu_of(const SolvedVariant& solved);

}  // namespace quoin::tools
