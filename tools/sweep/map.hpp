// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tools/draw/canvas/picture.hpp"
#include "tools/sweep/gathered.hpp"

namespace quoin::tools {

/// What a map of a sweep shows.
struct MapWish {
  std::vector<std::string> axes;  ///< along x, along y, and one for each panel: two or three
  std::string result;             ///< a column with numbers; empty: the first there is
};

/// One result over two or three axes as coloured cells with their figures; all other axes stay at
/// their first value, which the picture says. An axis may be told by the end of its path.
/// Throws: InputError with what there is to choose from.
[[nodiscard]] Picture map_of(Gathered& gathered, const MapWish& wish);

}  // namespace quoin::tools
