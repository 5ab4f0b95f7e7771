// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <nlohmann/json.hpp>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// Metres as mm, to the thousandth.
[[nodiscard]] double page_mm(double metres);

/// The grid of a variant for the page: its lines, what its cells show, and the share that each air
/// but the last has in the temperature of each node, as base64 of two bytes each.
[[nodiscard]] nlohmann::ordered_json grid_json(const SolvedVariant& solved);

}  // namespace quoin::tools
