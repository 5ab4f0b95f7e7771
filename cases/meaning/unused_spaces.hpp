// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "cases/grammar/written.hpp"
#include "cases/model/case.hpp"
#include "cases/text/fault_list.hpp"

namespace quoin::cases {

/// A space as one variant writes it, and whether that variant has a use for it.
struct SpaceUse {
  std::string name;
  Mark mark;
  bool used = false;
};

/// 1 for each space that a variant has a use for, else 0. Of use is what the section shows, what is
/// the air of another, what heat is lost to, what an unheated space is measured by, and, where it
/// shows no air outside, the coldest one, which factors are measured against.
[[nodiscard]] Per<SpaceId, char> spaces_of_use(const Variant& variant);

/// The spaces of a variant that was read without a fault.
[[nodiscard]] std::vector<SpaceUse> uses_of(const Document& document, const Variant& variant);

/// Refuses spaces that no variant has a use for: they do nothing, which cannot be meant. Shape: by
/// variant.
void check_uses(const std::vector<std::vector<SpaceUse>>& variants, FaultList& faults);

}  // namespace quoin::cases
