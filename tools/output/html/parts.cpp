// SPDX-License-Identifier: Apache-2.0
#include "tools/output/html/parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cstdint>
#include <vector>

#include "cases/text/sha256.hpp"
#include "tools/answer/words/outcome_words.hpp"
#include "tools/disk/base64.hpp"
#include "tools/draw/canvas/xml.hpp"
#include "tools/output/html/page_files.hpp"

namespace quoin::tools {
namespace {

bool is_letter_or_digit(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

/// A bar from one span below the dew point to one above the limit, with its place marked.
std::string bar(double place) {
  constexpr double span = 40.0;  // units from the dew point to the limit
  const double at = span * std::clamp(place + 1.0, 0.06, 2.94);
  const std::string_view where = place < 0   ? "below the dew point"
                                 : place < 1 ? "between dew point and limit"
                                             : "above the limit";
  return fmt::format(
      "<svg class=\"bar\" viewBox=\"0 0 120 18\" role=\"img\" aria-label=\"{}\"><rect width=\"40\" "
      "height=\"18\" fill=\"#fdd8dc\"/><rect x=\"40\" width=\"40\" height=\"18\" fill=\"#ffeab8\"/>"
      "<rect x=\"80\" width=\"40\" height=\"18\" fill=\"#d3ecda\"/><path d=\"M40 0V18M80 0V18\" "
      "stroke=\"#595959\" stroke-width=\"1\"/><rect x=\"{:.1f}\" y=\"2\" width=\"4\" height=\"14\" "
      "rx=\"1\" fill=\"#1a1a1a\"/></svg>",
      where, at - 2.0);
}

std::string markup_of(const report::Cell& cell) {
  if (cell.bar) return bar(*cell.bar);
  const std::string words = escaped(report::text_of(cell));
  if (cell.tone == Tone::plain) return words;
  if (report::is_number(cell) || cell.tone == Tone::strong) return "<strong>" + words + "</strong>";
  return html_badge({report::text_of(cell), cell.tone});
}

std::string tagged(std::string_view tag, bool number, const std::string& markup) {
  return fmt::format("<{}{}>{}</{}>", tag, number ? " class=\"n\"" : "", markup, tag.substr(0, 2));
}

/// The digest of a script or style sheet as a browser asks for it.
std::string digest(std::string_view text) {
  const std::string hex = cases::sha256(text);
  std::vector<std::uint8_t> bytes(hex.size() / 2);
  for (std::size_t k = 0; k < bytes.size(); ++k)
    std::from_chars(hex.data() + 2 * k, hex.data() + 2 * k + 2, bytes[k], 16);
  return "sha256-" + base64(bytes);
}

}  // namespace

std::string page_text(std::string_view ending) {
  std::string text;
  for (const EmbeddedFile& file : page_files()) {
    if (file.name.ends_with(ending)) text += file.text;
  }
  return text;
}

std::string html_head(const std::string& title, const std::string& style, std::string_view script) {
  return fmt::format(
      "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\n"
      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; img-src data:; "
      "style-src '{}'; script-src '{}'; base-uri 'none'; form-action 'none'\">\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
      "<title>{}</title>\n<style>{}</style></head>\n",
      digest(style), digest(script), escaped(title), style);
}

std::string html_badge(const report::Badge& badge) {
  return fmt::format("<span class=\"mark {}\">{}</span>", word_for(badge.tone),
                     escaped(badge.words));
}

std::string html_table(const report::Table& table) {
  if (table.rows.empty()) return "";
  std::string text = fmt::format(
      "<div class=\"wide\" role=\"region\" aria-label=\"{}\">\n<table><caption>{}"
      "</caption>\n<thead><tr>",
      escaped(table.caption), escaped(table.caption));
  for (std::size_t k = 0; k < table.columns.size(); ++k)
    text += tagged("th scope=\"col\"", report::is_number(table.rows.front()[k]),
                   escaped(table.columns[k].heading));
  text += "</tr></thead>\n<tbody>\n";
  for (const auto& row : table.rows) {
    text += "<tr>";
    for (const report::Cell& cell : row)
      text += tagged("td", report::is_number(cell), markup_of(cell));
    text += "</tr>\n";
  }
  return text + "</tbody></table></div>\n";
}

std::string html_list(const report::List& list) {
  if (list.items.empty()) return "";
  const std::string_view tag = list.in_order ? "ol" : "ul";
  std::string text = fmt::format("<{}>\n", tag);
  for (const std::string& item : list.items) text += fmt::format("<li>{}</li>\n", escaped(item));
  return text + fmt::format("</{}>\n", tag);
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
  for (const char c : printable(text)) {
    const auto byte = static_cast<unsigned char>(c);
    coded += is_letter_or_digit(c) || c == ' ' || byte >= 0x80 ? std::string(1, c)
                                                               : fmt::format("\\{:x} ", byte);
  }
  return coded + '"';
}

}  // namespace quoin::tools
