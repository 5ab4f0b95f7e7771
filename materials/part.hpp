// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>

namespace quoin::materials {

/// What a face made of a material is, for the choice of its surface resistance and of what may lie
/// on it: the ground takes no coat, and is fabric otherwise.
enum class Part : std::uint8_t { fabric, frame, glazing, ground };

/// Whether a part belongs to the walls and floors and not to a window.
[[nodiscard]] constexpr bool is_fabric(Part part) {
  return part == Part::fabric || part == Part::ground;
}

}  // namespace quoin::materials
