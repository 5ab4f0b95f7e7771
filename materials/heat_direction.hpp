// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>

namespace quoin::materials {

/// Which way heat crosses an air layer or a surface.
enum class HeatDirection : std::uint8_t { horizontal, up, down };

}  // namespace quoin::materials
