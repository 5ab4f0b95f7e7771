// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/enough_ninety.hpp"

#include <algorithm>

#include "tools/answer/judge/enough.hpp"

namespace quoin::tools {

void add_enough_at_ninety(SolvedVariant& solved, const solver::Effort& effort) {
  if (!solved.variant.enough.thickness) return;
  for (Chance& chance : solved.chances) {
    if (!chance.worse_in_ninety) continue;
    SolvedVariant humid = solved;
    cases::Space& room = humid.variant.spaces[chance.space];
    room.humidity = std::min(1.0, *room.humidity * *chance.worse_in_ninety);
    humid.variant.enough.moisture_of.clear();
    for (const EnoughFor& enough : what_is_enough(humid, effort).each) {
      if (enough.criterion != chance.criterion || enough.space != chance.space) continue;
      using Kind = Threshold::Kind;
      if (!enough.thickness) continue;
      const Kind kind = enough.thickness->kind;
      if (kind != Kind::holds_never && kind != Kind::dry_first)
        chance.enough = enough.thickness->value;
    }
  }
}

}  // namespace quoin::tools
