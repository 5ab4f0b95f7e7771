// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "tools/results.hpp"

namespace quoin::tools {

/// What the findings rest on, for the report page. Each is the content of one section.

/// Every material with its conductivity dry and as used, its moisture law and the sources of both.
[[nodiscard]] std::string html_materials(const Results& results);
/// Every space: its air, and the surface resistances of both purposes.
[[nodiscard]] std::string html_boundaries(const Results& results);
/// Warnings, each once.
[[nodiscard]] std::string html_doubts(const Results& results);
/// The laws of physics checked, and the accuracy reached.
[[nodiscard]] std::string html_checks(const Results& results);
/// By which rules, and what the method leaves out.
[[nodiscard]] std::string html_assumptions();
[[nodiscard]] std::string html_cautions();
/// The program, the input and its text.
[[nodiscard]] std::string html_made_from(const Results& results);

}  // namespace quoin::tools
