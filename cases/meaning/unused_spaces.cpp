// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/unused_spaces.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <string>

#include "cases/model/painted.hpp"

namespace quoin::cases {
namespace {

/// The coldest air of a kind; not valid where there is none.
SpaceId coldest(const Variant& variant, SpaceKind kind) {
  SpaceId found;
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    const Space& space = variant.spaces[id];
    if (space.is != kind || space.air != id) continue;
    if (!found.valid() || space.temperature < variant.spaces[found].temperature) found = id;
  }
  return found;
}

}  // namespace

Per<SpaceId, char> spaces_of_use(const Variant& variant) {
  Per<SpaceId, char> used;
  for (const SpaceId id : geometry::ids(variant.spaces)) used.add(is_painted(variant, id) ? 1 : 0);
  const auto use = [&](SpaceId id) {
    if (id.valid()) used[id] = 1;
  };
  const auto ids = geometry::ids(variant.spaces);
  const bool shows_outside = std::any_of(ids.begin(), ids.end(), [&](SpaceId id) {
    return used[id] != 0 && variant.spaces[id].is == SpaceKind::outside;
  });
  if (!shows_outside) use(coldest(variant, SpaceKind::outside));
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    const Space& space = variant.spaces[id];
    if (used[id] != 0) use(space.air);
    if (space.b) use(coldest(variant, SpaceKind::inside));
    for (const Loss& loss : space.losses) use(loss.to);
  }
  return used;
}

std::vector<SpaceUse> uses_of(const Document& document, const Variant& variant) {
  const Per<SpaceId, char> used = spaces_of_use(variant);
  std::vector<SpaceUse> uses;
  for (std::size_t k = 0; k < document.spaces.size(); ++k)
    uses.push_back({document.spaces[k].name, document.spaces[k].mark, used[SpaceId(k)] != 0});
  return uses;
}

void check_uses(const std::vector<std::vector<SpaceUse>>& variants, FaultList& faults) {
  faults.enter_variant("");
  std::map<std::string, bool> used;
  for (const auto& uses : variants) {
    for (const SpaceUse& use : uses) used[use.name] = used[use.name] || use.used;
  }
  for (const auto& uses : variants) {
    for (const SpaceUse& use : uses) {
      if (used[use.name]) continue;
      used[use.name] = true;  // said once
      faults.add(use.mark,
                 {fmt::format("the space '{}' is not used", use.name), "",
                  "a space that the section names or shows",
                  "name it in the section, as `inside: ...` or `fill: ...`, or remove it"});
    }
  }
}

}  // namespace quoin::cases
