// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>

#include "cases/model/case.hpp"

namespace quoin::tools {

/// Insulation between a room and the masonry it makes colder.
struct Lined {
  geometry::RegionId lining;
  geometry::RegionId masonry;
};

/// The first lining that a straight line through the section meets between a space inside and
/// masonry behind it; nothing where there is none.
[[nodiscard]] std::optional<Lined> lined_inside(const cases::Variant& variant);

/// What is said of a lining where nothing was asked about vapour; empty where it was, or where
/// there is no lining.
[[nodiscard]] std::string lining_remark(const cases::Variant& variant);

}  // namespace quoin::tools
