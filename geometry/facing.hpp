// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>

namespace quoin::geometry {

/// Where a surface looks, seen from the material.
enum class Facing : std::uint8_t { sideways, up, down };

}  // namespace quoin::geometry
