// SPDX-License-Identifier: Apache-2.0
#include "geometry/thinned.hpp"

#include <utility>

namespace quoin::geometry {

Subdivision thinned(Subdivision subdivision, std::size_t most_nodes) {
  while (nodes(subdivision) > most_nodes) {
    const std::size_t before = nodes(subdivision);
    subdivision = halved(std::move(subdivision));
    if (nodes(subdivision) == before) break;
  }
  return subdivision;
}

}  // namespace quoin::geometry
