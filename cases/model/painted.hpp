// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <string>

#include "cases/model/case.hpp"

namespace quoin::cases {

/// Whether the sheet of a variant shows a region or a space; a recipe may know more than it paints.
template <class Id>
[[nodiscard]] bool is_painted(const Variant& variant, Id id) {
  return std::any_of(variant.sheet.begin(), variant.sheet.end(), [&](const geometry::Patch& patch) {
    return patch.fill == geometry::Fill{id};
  });
}

/// What a variant shows of a material; null where it shows none.
[[nodiscard]] inline const Region* shown(const Variant& variant, const std::string& material) {
  for (const RegionId id : geometry::ids(variant.regions)) {
    if (variant.regions[id].name == material && is_painted(variant, id))
      return &variant.regions[id];
  }
  return nullptr;
}

}  // namespace quoin::cases
