// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "cases/grammar/written.hpp"
#include "cases/text/fault_list.hpp"
#include "geometry/sheet.hpp"

namespace quoin::cases {

/// An area between two coordinates along each axis, m.
struct Box {
  Interval x{infinite, -infinite};
  Interval y{infinite, -infinite};
};

/// What is wrong with a band over some regions, all of one material: a box that meets nothing a
/// sheet shows of them. Nothing where it meets any.
[[nodiscard]] std::optional<Complaint> misplaced(const geometry::Sheet& sheet,
                                                 const std::vector<geometry::RegionId>& regions,
                                                 const Box& box, std::string_view material);

}  // namespace quoin::cases
