// SPDX-License-Identifier: Apache-2.0
#include "tools/output/text/report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <variant>

#include "tools/output/report/report.hpp"
#include "tools/output/text/table.hpp"

namespace quoin::tools {
namespace {

constexpr std::size_t most_badge = 24;  // columns

std::string heading(std::string_view words, const TextStyle& style) {
  return "\n" + toned(cut_to(harmless(words, style), style.width, style), Tone::strong, style) +
         "\n";
}

/// Shows one block after the other; pictures are for paper and screens.
struct Printed {
  const TextStyle& style;

  std::string operator()(const report::Heading& each) const {
    std::size_t badges = 0;
    for (const report::Badge& badge : each.badges)
      badges += 2 + columns_of(cut_to(harmless(badge.words, style), most_badge, style));
    const std::size_t room = style.width - std::min(style.width, badges);
    std::string words =
        toned(cut_to(harmless(each.words, style), room, style), Tone::strong, style);
    for (const report::Badge& badge : each.badges)
      words +=
          "  " + toned(cut_to(harmless(badge.words, style), most_badge, style), badge.tone, style);
    return "\n" + words + "\n";
  }
  std::string operator()(const report::Paragraph& each) const {
    return paragraph(each.words, 2, style);
  }
  std::string operator()(const report::List& each) const {
    std::string text;
    for (std::size_t k = 0; k < each.items.size(); ++k)
      text += paragraph(each.in_order ? fmt::format("{}. {}", k + 1, each.items[k]) : each.items[k],
                        2, style);
    return text;
  }
  std::string operator()(const report::Table& each) const {
    return "\n" + paragraph(each.caption, 0, style) + table_text(each, style);
  }
  std::string operator()(const report::Figure& /*each*/) const { return ""; }
  std::string operator()(const report::Verbatim& /*each*/) const { return ""; }
  std::string operator()(const report::Blank& /*each*/) const { return ""; }
};

/// `tables`: with them.
std::string section_text(const report::Section* section, const TextStyle& style,
                         bool tables = true) {
  if (section == nullptr) return "";
  std::string text;
  for (const report::Block& block : section->blocks) {
    if (tables || !std::holds_alternative<report::Table>(block))
      text += std::visit(Printed{style}, block);
  }
  return text.empty() ? "" : heading(section->title, style) + text;
}

/// Whether a variant asks what thickness or moisture would be enough.
bool asks_what_is_enough(const SolvedVariant& solved) {
  return solved.variant.enough.thickness.has_value() || !solved.variant.enough.moisture_of.empty();
}

/// What the case asks by keys of its own: its answers belong to the first screen, too. The twelve
/// rows of a year stay with all the rest.
std::string asked_text(const Results& results, const report::Document& document,
                       const TextStyle& style) {
  std::string text;
  if (std::any_of(results.variants.begin(), results.variants.end(), asks_what_is_enough))
    text += section_text(report::section_named(document, "enough"), style);
  text += section_text(report::section_named(document, "year"), style, false);
  text += section_text(report::section_named(document, "readings"), style);
  return text + section_text(report::section_named(document, "vapour"), style);
}

}  // namespace

std::string text_report(const Results& results, const TextStyle& style, Told told) {
  const report::Document document = report::document_of(results);
  const Printed print{style};
  std::string text =
      toned(cut_to(harmless(document.title, style), style.width, style), Tone::strong, style) +
      "\n" + paragraph(document.first.place, 0, style) + paragraph(document.note, 0, style) + "\n" +
      paragraph(document.first.sentence, 0, style);
  if (!document.first.steps.items.empty())
    text += heading("What to do, in this order", style) + print(document.first.steps);
  text += heading("How it comes out", style) + table_text(document.first.variants, style) + "\n" +
          paragraph(document.first.sure, 0, style);
  if (told == Told::all) {
    for (const report::Section& section : document.sections) text += section_text(&section, style);
    return text;
  }
  if (!document.first.changes.items.empty())
    text += heading("What changes", style) + print(document.first.changes);
  return text + asked_text(results, document, style) +
         section_text(report::section_named(document, "warnings"), style) +
         section_text(report::section_named(document, "cautions"), style);
}

}  // namespace quoin::tools
