// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

#include "tools/output/report/report.hpp"

namespace quoin::tools {

/// What the report page is put together from. Every text is escaped here, and only here.

/// A table that scrolls in a box of its own where the page is narrow. Columns whose first cell is a
/// number have their heading to the right. Empty without rows.
[[nodiscard]] std::string html_table(const report::Table& table);

/// Words that stand out, in the colour of their tone; the word says it without the colour.
[[nodiscard]] std::string html_badge(const report::Badge& badge);

/// The scripts or the style sheets of the page, by their ending, one after the other.
[[nodiscard]] std::string page_text(std::string_view ending);

/// The head of a page, by which nothing is loaded and nothing runs but the script whose digest
/// stands there.
[[nodiscard]] std::string html_head(const std::string& title, const std::string& style,
                                    std::string_view script);

[[nodiscard]] std::string html_list(const report::List& list);
[[nodiscard]] std::string html_paragraph(std::string_view text);

/// A part of the page under its heading, which is plain words; empty where the content is. The name
/// becomes its anchor.
[[nodiscard]] std::string html_section(std::string_view name, std::string_view title,
                                       const std::string& content);

/// A picture within the page, and the words for who cannot see it.
[[nodiscard]] std::string html_figure(const std::string& svg, std::string_view says);

/// A text as a string of a style sheet, quotes included.
[[nodiscard]] std::string css_string(std::string_view text);

}  // namespace quoin::tools
