// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>

namespace quoin::materials {

/// What keeps the air of the room from an inside surface: what stands before it, or the still air
/// of an upper corner.
enum class Behind : std::uint8_t { still_air, curtain, furniture, fitted_furniture };

/// The resistance between the air of the room and a surface behind something, m2K/W.
/// Source: DIN technical report on thermal bridges (memory): 0.5 behind furniture that stands free,
/// 1.0 behind furniture that is built in. Behind a curtain, and in the still air of the upper
/// corners of a room, 0.35: common practice, no source.
[[nodiscard]] constexpr double resistance_behind(Behind behind) {
  switch (behind) {
    case Behind::still_air:
    case Behind::curtain:
      return 0.35;
    case Behind::furniture:
      return 0.5;
    case Behind::fitted_furniture:
      return 1.0;
  }
  return 0.25;
}

template <class Visitor>
void choose_behind(Visitor& visit, std::optional<Behind>& behind) {
  visit.choice(
      "behind", behind,
      {{"still air", Behind::still_air},
       {"curtain", Behind::curtain},
       {"furniture", Behind::furniture},
       {"fitted furniture", Behind::fitted_furniture}},
      "inside: what stands before the surface, in place of its resistance; still air: that of "
      "the upper corners of a room");
}

}  // namespace quoin::materials
