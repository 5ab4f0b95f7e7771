// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "tools/shared_rows.hpp"

namespace quoin::tools {

/// What the report page is put together from. Every text is escaped here, and only here.

/// A cell of a table.
struct HtmlCell {
  std::string markup;
  bool is_number = false;
  bool operator==(const HtmlCell&) const = default;
};
[[nodiscard]] HtmlCell text_cell(std::string_view text);
/// Digits, set to the right.
[[nodiscard]] HtmlCell digits_cell(std::string_view text);
/// A dash where the value is not finite.
[[nodiscard]] HtmlCell number_cell(double value, int decimals);
/// The cell made to stand out.
[[nodiscard]] HtmlCell strong(HtmlCell cell);

using HtmlRow = std::vector<HtmlCell>;

/// A table that scrolls in a box of its own where the page is narrow. Columns whose first cell is a
/// number have their heading to the right. Empty without rows. Shape: each row as long as
/// `headings`.
[[nodiscard]] std::string html_table(std::string_view caption,
                                     const std::vector<std::string>& headings,
                                     const std::vector<HtmlRow>& rows);

/// Rows that several variants share, each begun by the names of its variants.
[[nodiscard]] std::vector<HtmlRow> html_rows(const SharedRows<HtmlRow>& shared,
                                             std::size_t variants);

/// An item of a list.
[[nodiscard]] std::string html_item(std::string_view text);
/// A list of finished items; empty without any.
[[nodiscard]] std::string html_list(const std::string& items);
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
