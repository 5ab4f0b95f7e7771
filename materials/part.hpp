// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>

namespace quoin::materials {

/// What a face made of a material is, for the choice of its surface resistance.
enum class Part : std::uint8_t { fabric, frame, glazing };

}  // namespace quoin::materials
