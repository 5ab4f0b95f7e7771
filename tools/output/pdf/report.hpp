// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tools/answer/results/results.hpp"
#include "tools/draw/canvas/canvas.hpp"
#include "tools/draw/pictures.hpp"

namespace quoin::tools {

/// The report as the text of a PDF file for print and for files: the same words, tables and
/// pictures as the page, on numbered A4 pages. Throws: PartError where it cannot be painted.
[[nodiscard]] std::string report_pdf(const Results& results, const Pictures& pictures);
[[nodiscard]] std::string report_pdf(const Results& results);

/// Its pages, of a case with a variant at least.
[[nodiscard]] std::vector<Canvas> report_pages(const Results& results, const Pictures& pictures);

}  // namespace quoin::tools
