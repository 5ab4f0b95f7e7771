// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <span>
#include <string>

#include "tools/answer/results/results.hpp"
#include "tools/disk/embedded_file.hpp"

namespace quoin::tools {

/// The tables of cases/catalogue, and the cases they are of.
[[nodiscard]] std::span<const EmbeddedFile> catalogue_files();

/// Where a solved variant stands among the details of the catalogue: the rows on either side of it,
/// by thickness and moisture, and what they have. Empty where the catalogue has no detail like it:
/// other masonry, another lining, thinner or thicker, wetter; or all else is not made up alike.
[[nodiscard]] std::string beside_catalogue(const SolvedVariant& solved);

}  // namespace quoin::tools
