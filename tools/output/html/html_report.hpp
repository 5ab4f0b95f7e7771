// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "tools/draw/pictures.hpp"
#include "tools/results.hpp"

namespace quoin::tools {

/// One self-contained page for the owner, the contractor and building control, in this order:
/// verdicts in plain words, variants side by side, a thermocouple to read off with, pictures, the
/// year, readings, materials, boundaries, heat flow, doubts, checks, assumptions and cautions, what
/// it was made from, a blank for remarks. It asks for nothing over the network and lets no script
/// run but its own; without script, and on paper, its pictures stand for themselves.
[[nodiscard]] std::string report_page(const Results& results, const Pictures& pictures);
[[nodiscard]] std::string report_page(const Results& results);

}  // namespace quoin::tools
