// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "cases/written.hpp"
#include "geometry/sheet.hpp"

namespace quoin::cases {

/// The least box that holds all a sheet shows of some regions, m.
struct Box {
  Interval x{infinite, -infinite};
  Interval y{infinite, -infinite};
};
[[nodiscard]] Box box_of(const geometry::Sheet& sheet,
                         const std::vector<geometry::RegionId>& regions);

/// Whether a box lies over anything a sheet shows of some regions.
[[nodiscard]] bool meets(const geometry::Sheet& sheet,
                         const std::vector<geometry::RegionId>& regions, const Box& box);

}  // namespace quoin::cases
