// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "tools/draw/pictures.hpp"
#include "tools/results.hpp"

namespace quoin::tools {

/// Pictures of a case for the report page. Each is the content of one section, or part of it.

/// Small fields of all variants, for an eye that wants one picture.
[[nodiscard]] std::string html_overview(const Pictures& pictures);
/// The section as drawn, for each variant that is drawn in another way.
[[nodiscard]] std::string html_drawings(const Results& results, const Pictures& pictures);
[[nodiscard]] std::string html_fields(const Results& results, const Pictures& pictures);
/// Temperature along the inside surface.
[[nodiscard]] std::string html_surface(const Pictures& pictures);
[[nodiscard]] std::string html_flow_lines(const Results& results, const Pictures& pictures);

}  // namespace quoin::tools
