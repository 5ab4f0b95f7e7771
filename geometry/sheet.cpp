// SPDX-License-Identifier: Apache-2.0
#include "geometry/sheet.hpp"

namespace quoin::geometry {

Outline rectangle(double x0, double x1, double y0, double y1) {
  return {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}};
}

}  // namespace quoin::geometry
