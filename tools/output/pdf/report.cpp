// SPDX-License-Identifier: Apache-2.0
#include "tools/output/pdf/report.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <numeric>
#include <optional>
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

/// Sets one block below the other. On paper only the fields of the first variant and of the chosen
/// one are shown; all stand side by side in the comparison, and with their flows as files beside
/// it.
struct Set {
  PageFlow& flow;
  const Pictures& pictures;
  std::size_t chosen = 0;
  const report::List& steps;  ///< of the first page, which are not said again

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
  void operator()(const report::Figure& figure) const {
    if (is_shown(figure)) flow.picture(report::picture_of(figure, pictures));
  }
  /// The case file lies beside the report, and its digest in it.
  void operator()(const report::Verbatim& /*verbatim*/) const {}
  void operator()(const report::Blank& blank) const {
    flow.paragraph(fmt::format("{}", fmt::join(blank.lines, " · ")));
    flow.blank(100.0);
  }

  /// The blocks of a section; two pictures of a kind stand beside each other, with the headings
  /// they may have.
  void section(const std::vector<report::Block>& blocks) const {
    for (std::size_t k = 0; k < blocks.size(); ++k) {
      const auto* list = std::get_if<report::List>(&blocks[k]);
      if (list != nullptr && list->in_order && list->items == steps.items) continue;
      const auto one = figure_from(blocks, k);
      const auto other = one ? figure_from(blocks, one->block + 1) : std::nullopt;
      if (!other || one->figure->kind != other->figure->kind) {
        std::visit(*this, blocks[k]);
        continue;
      }
      flow.pictures(one->words, report::picture_of(*one->figure, pictures), other->words,
                    report::picture_of(*other->figure, pictures));
      k = other->block;
    }
  }

 private:
  /// A figure that is shown, with the heading before it.
  struct Headed {
    std::string words;
    const report::Figure* figure = nullptr;
    std::size_t block = 0;
  };

  /// The figure that blocks show from one on, past figures that are not shown; nothing where
  /// something else comes first.
  [[nodiscard]] std::optional<Headed> figure_from(const std::vector<report::Block>& blocks,
                                                  std::size_t from) const {
    Headed headed;
    for (std::size_t k = from; k < blocks.size(); ++k) {
      const auto* heading = std::get_if<report::Heading>(&blocks[k]);
      const auto* figure = std::get_if<report::Figure>(&blocks[k]);
      if (heading != nullptr && headed.words.empty()) {
        headed.words = words_of(*heading);
      } else if (figure == nullptr) {
        return std::nullopt;
      } else if (is_shown(*figure)) {
        headed.figure = figure;
        headed.block = k;
        return headed;
      }
    }
    return std::nullopt;
  }

  [[nodiscard]] bool is_shown(const report::Figure& figure) const {
    using Kind = report::Figure::Kind;
    return figure.kind != Kind::flow &&
           (figure.kind != Kind::field || figure.variant == 0 || figure.variant == chosen);
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
  const report::Document document = report::document_of(results);
  PageFlow flow(results.title, fmt::format("Quoin {}, input {}", QUOIN_VERSION,
                                           std::string_view(results.sha256).substr(0, 16)));
  const Set set{flow, pictures, document.first.chosen, document.first.steps};
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
  return pdf_of(flow.pages(), harmless(fitted(results.title, 1.0, 200.0), {}));
}

}  // namespace quoin::tools
