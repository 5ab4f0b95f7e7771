// SPDX-License-Identifier: Apache-2.0
#include "tools/html_parts.hpp"

#include <fmt/format.h>

#include <cmath>

#include "tools/draw/canvas/xml.hpp"

namespace quoin::tools {
namespace {

bool is_letter_or_digit(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

std::string tagged(const HtmlCell& cell, std::string_view tag) {
  return fmt::format("<{}{}>{}</{}>", tag, cell.is_number ? " class=\"n\"" : "", cell.markup,
                     tag.substr(0, 2));
}

}  // namespace

HtmlCell text_cell(std::string_view text) { return {escaped(text), false}; }

HtmlCell digits_cell(std::string_view text) { return {escaped(text), true}; }

HtmlCell number_cell(double value, int decimals) {
  if (!std::isfinite(value)) return digits_cell("–");
  const std::string digits = fmt::format("{:.{}f}", value, decimals);
  const bool minus_zero =
      digits.front() == '-' && digits.find_first_not_of("-0.") == std::string::npos;
  return digits_cell(minus_zero ? digits.substr(1) : digits);
}

HtmlCell strong(HtmlCell cell) {
  cell.markup = "<strong>" + cell.markup + "</strong>";
  return cell;
}

std::string html_table(std::string_view caption, const std::vector<std::string>& headings,
                       const std::vector<HtmlRow>& rows) {
  if (rows.empty()) return "";
  std::string text = fmt::format(
      "<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"{}\">\n<table><caption>{}"
      "</caption>\n<thead><tr>",
      escaped(caption), escaped(caption));
  for (std::size_t k = 0; k < headings.size(); ++k) {
    text += tagged({escaped(headings[k]), rows.front()[k].is_number}, "th scope=\"col\"");
  }
  text += "</tr></thead>\n<tbody>\n";
  for (const HtmlRow& row : rows) {
    text += "<tr>";
    for (const HtmlCell& cell : row) text += tagged(cell, "td");
    text += "</tr>\n";
  }
  return text + "</tbody></table></div>\n";
}

std::vector<HtmlRow> html_rows(const SharedRows<HtmlRow>& shared, std::size_t variants) {
  std::vector<HtmlRow> rows;
  for (const auto& [names, row] : shared.rows(variants)) {
    rows.push_back({text_cell(names)});
    rows.back().insert(rows.back().end(), row.begin(), row.end());
  }
  return rows;
}

std::string html_item(std::string_view text) { return fmt::format("<li>{}</li>\n", escaped(text)); }

std::string html_list(const std::string& items) {
  return items.empty() ? "" : "<ul>\n" + items + "</ul>\n";
}

std::string html_paragraph(std::string_view text) {
  return text.empty() ? "" : fmt::format("<p>{}</p>\n", escaped(text));
}

std::string html_section(std::string_view name, std::string_view title,
                         const std::string& content) {
  if (content.empty()) return "";
  return fmt::format("<section id=\"{}\"><h2>{}</h2>\n{}</section>\n", name, escaped(title),
                     content);
}

std::string html_figure(const std::string& svg, std::string_view says) {
  // Coded byte by byte, so that nothing in the picture can end the attribute.
  std::string coded;
  coded.reserve(svg.size() * 5 / 4);
  constexpr std::string_view plain = " =.;,()-+_";
  constexpr std::string_view digits = "0123456789ABCDEF";
  for (const char c : svg) {
    if (is_letter_or_digit(c) || plain.find(c) != std::string_view::npos) {
      coded += c;
    } else {
      const auto byte = static_cast<unsigned char>(c);
      coded += {'%', digits[byte / 16], digits[byte % 16]};
    }
  }
  return fmt::format(
      "<figure><img alt=\"{}\" src=\"data:image/svg+xml;charset=utf-8,{}\"></figure>\n",
      escaped(says), coded);
}

std::string css_string(std::string_view text) {
  std::string coded = "\"";
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    coded += is_letter_or_digit(c) || c == ' ' || byte >= 0x80 ? std::string(1, c)
                                                               : fmt::format("\\{:x} ", byte);
  }
  return coded + '"';
}

}  // namespace quoin::tools
