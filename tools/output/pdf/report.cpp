// SPDX-License-Identifier: Apache-2.0
#include "tools/output/pdf/report.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <numeric>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "tools/answer/results/version.hpp"
#include "tools/draw/canvas/lettering.hpp"
#include "tools/draw/canvas/paint.hpp"
#include "tools/output/pdf/page_flow.hpp"
#include "tools/output/report/figure.hpp"
#include "tools/output/report/report.hpp"
#include "tools/terminal/text_table.hpp"

namespace quoin::tools {
namespace {

/// Columns in one table that a page is wide enough for.
constexpr std::size_t most_columns = 12;

/// Sets one block below the other. On paper only section and field of the chosen variant are shown;
/// all stand side by side in the comparison, and with their flows as files beside it.
struct Set {
  PageFlow& flow;
  const Pictures& pictures;
  std::size_t chosen = 0;
  const report::List& steps;            ///< of the first page, which are not said again
  std::vector<std::string> names = {};  ///< of the variants

  void operator()(const report::Heading& heading) const { flow.subheading(words_of(heading)); }
  void operator()(const report::Paragraph& paragraph) const { flow.paragraph(paragraph.words); }
  void operator()(const report::List& list) const {
    for (std::size_t k = 0; k < list.items.size(); ++k)
      flow.item(list.items[k], list.in_order ? k + 1 : 0);
  }
  /// Where a table has more columns than a page, the rest follows with the same first columns.
  void operator()(const report::Table& table) const {
    flow.subheading(table.caption);
    std::size_t done = table.keys;
    do {
      const std::size_t last = std::min(table.columns.size(), done + most_columns - table.keys);
      part(table, done, last);
      done = last;
    } while (done < table.columns.size());
  }
  void operator()(const report::Figure& /*figure*/) const {}  // set by `section`
  /// The case file lies beside the report, and its digest in it.
  void operator()(const report::Verbatim& /*verbatim*/) const {}
  void operator()(const report::Blank& blank) const {
    flow.paragraph(fmt::format("{}", fmt::join(blank.lines, " · ")));
    flow.blank(100.0);
  }

  /// The blocks of a section. On paper the words of the first variant and of the chosen one are
  /// told; those of the others stand in the tables.
  void section(const std::vector<report::Block>& blocks) const {
    const bool alone = std::none_of(blocks.begin(), blocks.end(), [&](const report::Block& block) {
      const auto* list = std::get_if<report::List>(&block);
      return !std::holds_alternative<report::Figure>(block) &&
             !std::holds_alternative<report::Heading>(block) &&
             (list == nullptr || list->items != steps.items);
    });
    bool passed_over = false;  // the variant that is told of
    for (std::size_t k = 0; k < blocks.size(); ++k) {
      const auto* list = std::get_if<report::List>(&blocks[k]);
      const auto* heading = std::get_if<report::Heading>(&blocks[k]);
      if (heading != nullptr) passed_over = !heading->badges.empty() && !is_told(heading->words);
      const auto* figure = std::get_if<report::Figure>(&blocks[k]);
      if (passed_over &&
          (heading != nullptr || std::holds_alternative<report::Paragraph>(blocks[k]))) {
        continue;
      }
      if (list != nullptr && list->in_order && list->items == steps.items) continue;
      if (heading != nullptr && k + 1 < blocks.size() &&
          std::holds_alternative<report::Figure>(blocks[k + 1])) {
        continue;  // set with its figure
      }
      if (figure != nullptr) {
        if (is_shown(*figure))
          flow.picture(report::picture_of(*figure, pictures), words_above(blocks, k), alone);
        continue;
      }
      if (list != nullptr && !list->in_order) {
        for (const std::string& item : list->items) {
          if (is_told_in(item)) flow.item(item);
        }
        continue;
      }
      std::visit(*this, blocks[k]);
    }
  }

 private:
  /// The heading right before a figure; empty where it has none.
  static std::string words_above(const std::vector<report::Block>& blocks, std::size_t k) {
    const auto* heading = k == 0 ? nullptr : std::get_if<report::Heading>(&blocks[k - 1]);
    return heading == nullptr ? "" : words_of(*heading);
  }

  [[nodiscard]] bool is_told(const std::string& name) const {
    return name == names.front() || name == names[chosen];
  }

  /// Whether an item of a list is not of a variant that is passed over.
  [[nodiscard]] bool is_told_in(const std::string& item) const {
    return std::none_of(names.begin(), names.end(), [&](const std::string& name) {
      return !is_told(name) && item.starts_with(name + ": With ");
    });
  }

  [[nodiscard]] bool is_shown(const report::Figure& figure) const {
    using Kind = report::Figure::Kind;
    const bool of_one = figure.kind == Kind::field || figure.kind == Kind::section;
    return figure.kind != Kind::flow && (!of_one || figure.variant == chosen);
  }

  static std::string words_of(const report::Heading& heading) {
    std::string words = heading.words;
    for (const report::Badge& badge : heading.badges) words += fmt::format("  [{}]", badge.words);
    return words;
  }

  void part(const report::Table& table, std::size_t from, std::size_t to) const {
    std::vector<std::size_t> columns(table.keys);
    std::iota(columns.begin(), columns.end(), std::size_t{0});
    for (std::size_t c = from; c < to; ++c) columns.push_back(c);
    std::vector<std::string> headings;
    for (const std::size_t c : columns) {
      const bool number = report::is_number(table.rows.front()[c]);
      headings.push_back((number ? "#" : "") + table.columns[c].heading);
    }
    std::vector<std::vector<std::string>> rows;
    for (const auto& row : table.rows) {
      rows.emplace_back();
      for (const std::size_t c : columns) rows.back().push_back(report::text_of(row[c]));
    }
    flow.table(headings, rows);
  }
};

}  // namespace

std::string report_pdf(const Results& results) { return report_pdf(results, pictures_of(results)); }

std::string report_pdf(const Results& results, const Pictures& pictures) {
  if (results.variants.empty()) return "";
  return pdf_of(report_pages(results, pictures), harmless(fitted(results.title, 1.0, 200.0), {}));
}

std::vector<Canvas> report_pages(const Results& results, const Pictures& pictures) {
  const report::Document document = report::document_of(results);
  PageFlow flow(results.title, fmt::format("Quoin {}, input {}", QUOIN_VERSION,
                                           std::string_view(results.sha256).substr(0, 16)));
  Set set{flow, pictures, document.first.chosen, document.first.steps};
  for (const SolvedVariant& solved : results.variants) set.names.push_back(solved.variant.name);
  flow.title(document.title);
  flow.paragraph(document.first.place);
  if (!document.note.empty()) flow.paragraph(document.note);
  flow.subheading(document.first.sentence);
  if (!document.first.steps.items.empty()) {
    flow.heading("What to do, in this order");
    set(document.first.steps);
  }
  flow.heading("How it comes out");
  set(document.first.variants);
  flow.paragraph(document.first.sure);
  for (const report::Section& section : document.sections) {
    flow.heading(section.title);
    set.section(section.blocks);
  }
  return flow.pages();
}

}  // namespace quoin::tools
