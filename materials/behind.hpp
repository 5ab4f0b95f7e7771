// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>

namespace quoin::materials {

/// What stands in front of an inside surface and keeps the air of the room from it.
enum class Behind : std::uint8_t { curtain, furniture, fitted_furniture };

/// The resistance between the air of the room and a surface behind something, m2K/W.
/// Source: DIN technical report on thermal bridges (memory): 0.5 behind furniture that stands free,
/// 1.0 behind furniture that is built in. Behind a curtain 0.35: common practice, no source.
[[nodiscard]] constexpr double resistance_behind(Behind behind) {
  switch (behind) {
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
  visit.choice("behind", behind,
               {{"curtain", Behind::curtain},
                {"furniture", Behind::furniture},
                {"fitted furniture", Behind::fitted_furniture}},
               "inside: what stands before the surface, in place of its resistance");
}

}  // namespace quoin::materials
