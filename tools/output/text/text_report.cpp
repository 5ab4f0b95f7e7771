// SPDX-License-Identifier: Apache-2.0
#include "tools/output/text/text_report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <variant>
#include <vector>

#include "tools/answer/survey/text_survey.hpp"
#include "tools/output/report.hpp"
#include "tools/output/text/table_text.hpp"

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

std::string section_text(const report::Section* section, const TextStyle& style) {
  if (section == nullptr) return "";
  std::string text;
  for (const report::Block& block : section->blocks) text += std::visit(Printed{style}, block);
  return text.empty() ? "" : heading(section->title, style) + text;
}

std::string chances_text(const Results& results, const TextStyle& style) {
  std::vector<NamedChances> all;
  for (const SolvedVariant& solved : results.variants)
    all.push_back({solved.variant.name, &solved.chances});
  return chance_text(all, style);
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
  if (results.survey) text += survey_text(*results.survey, style);
  if (told == Told::all) {
    for (const report::Section& section : document.sections) text += section_text(&section, style);
    return text + chances_text(results, style);
  }
  if (!document.first.changes.items.empty())
    text += heading("What changes", style) + print(document.first.changes);
  return text + section_text(report::section_named(document, "warnings"), style) +
         section_text(report::section_named(document, "cautions"), style);
}

}  // namespace quoin::tools
