// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>

#include "cases/case.hpp"

namespace quoin::cases {

/// Whether the sheet of a variant shows a region or a space; a recipe may know more than it paints.
template <class Id>
[[nodiscard]] bool is_painted(const Variant& variant, Id id) {
  return std::any_of(variant.sheet.begin(), variant.sheet.end(), [&](const geometry::Patch& patch) {
    return patch.fill == geometry::Fill{id};
  });
}

}  // namespace quoin::cases
