// SPDX-License-Identifier: Apache-2.0
#pragma once

namespace quoin::cases {

/// From one coordinate to another, m.
struct Interval {
  double from = 0.0;
  double to = 0.0;
};

}  // namespace quoin::cases
