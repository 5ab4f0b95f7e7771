// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "tools/draw/pictures.hpp"
#include "tools/results.hpp"

namespace quoin::tools {

/// The report as the text of a PDF file for print and for files: the same words, tables and
/// pictures as the page, on numbered A4 pages. Throws: PartError where it cannot be painted.
[[nodiscard]] std::string report_pdf(const Results& results, const Pictures& pictures);
[[nodiscard]] std::string report_pdf(const Results& results);

}  // namespace quoin::tools
