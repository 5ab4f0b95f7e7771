// SPDX-License-Identifier: Apache-2.0
#include "tools/page_flow.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace quoin::tools {
namespace {

constexpr double edge_mm = 18.0;
constexpr double mm_in_unit = (page_width_mm - 2 * edge_mm) / page_width;
constexpr double page_height = (page_height_mm - 2 * edge_mm) / mm_in_unit;  ///< units
constexpr double top = 30.0;                   ///< below the running title
constexpr double bottom = page_height - 26.0;  ///< above the number of the page
constexpr double text_size = 12.0;             ///< 9.3 points
constexpr double table_size = 9.6;             ///< 7.4 points
constexpr double pitch = 1.4;                  ///< of lines, in sizes
constexpr std::size_t most_lines = 4000;
constexpr std::string_view ink = "#1c1c1c";
constexpr std::string_view grey = "#484848";
constexpr double cell_gap = 10.0;

}  // namespace

PageFlow::PageFlow(std::string title, std::string foot)
    : title_(std::move(title)), foot_(std::move(foot)), sheets_(1), y_(top) {}

void PageFlow::write(Sheet& sheet, Point at, std::string_view words, const Lettering& lettering) {
  if (!is_plain(words)) {
    sheet.canvas.text(at, words, lettering);
    return;
  }
  sheet.texts.push_back({std::string(words), edge_mm + at.x * mm_in_unit,
                         edge_mm + at.y * mm_in_unit, lettering.size * mm_in_unit, lettering.bold,
                         lettering.anchor == Anchor::end, lettering.colour == ink ? 0.11 : 0.28});
}

void PageFlow::make_room(double height) {
  if (y_ + height <= bottom || y_ == top) return;
  sheets_.emplace_back();
  y_ = top;
}

void PageFlow::lines(std::string_view words, double indent, const Lettering& lettering) {
  for (const std::string& line : wrapped(words, lettering.size, page_width - indent, most_lines)) {
    make_room(pitch * lettering.size);
    y_ += pitch * lettering.size;
    write(sheets_.back(), {indent, y_}, line, lettering);
  }
}

void PageFlow::title(std::string_view words) {
  lines(words, 0.0, {20.0, Anchor::start, 0.0, true, ink, ""});
  y_ += 6.0;
}

void PageFlow::heading(std::string_view words) {
  make_room(130.0);  // with some of what it heads
  if (y_ > top) y_ += 16.0;
  lines(words, 0.0, {15.0, Anchor::start, 0.0, true, ink, ""});
  y_ += 6.0;
  sheets_.back().canvas.line({0.0, y_}, {page_width, y_},
                             "stroke=\"#1c1c1c\" stroke-width=\"1.2\"");
  y_ += 4.0;
}

void PageFlow::subheading(std::string_view words) {
  make_room(60.0);
  y_ += 5.0;
  lines(words, 0.0, {text_size, Anchor::start, 0.0, true, ink, ""});
}

void PageFlow::paragraph(std::string_view words) {
  lines(words, 0.0, {text_size, Anchor::start, 0.0, false, ink, ""});
  y_ += 5.0;
}

void PageFlow::item(std::string_view words) {
  make_room(pitch * text_size);
  sheets_.back().canvas.circle({4.0, y_ + pitch * text_size - 4.2}, 1.8, "fill=\"#1c1c1c\"");
  lines(words, 14.0, {text_size, Anchor::start, 0.0, false, ink, ""});
  y_ += 2.0;
}

void PageFlow::row(const Row& row, const std::vector<double>& shares, bool bold) {
  double x = 0.0;
  for (std::size_t c = 0; c < row.cells.size(); ++c) {
    const double width = shares[c] * page_width;
    const bool ends = row.is_number[c] != 0;
    const Lettering lettering{table_size, ends ? Anchor::end : Anchor::start, 0.0, bold, ink, ""};
    double y = y_;
    for (const std::string& line : row.cells[c]) {
      y += pitch * table_size;
      write(sheets_.back(), {ends ? x + width - cell_gap : x, y}, line, lettering);
    }
    x += width;
  }
  y_ += row.height;
  sheets_.back().canvas.line(
      {0.0, y_}, {page_width, y_},
      bold ? "stroke=\"#1c1c1c\" stroke-width=\"0.9\"" : "stroke=\"#9a9a9a\" stroke-width=\"0.5\"");
}

void PageFlow::table(const std::vector<std::string>& headings, const std::vector<double>& shares,
                     const std::vector<std::vector<std::string>>& rows) {
  if (rows.empty()) return;
  std::vector<std::string> names = headings;
  std::vector<char> is_number;
  for (std::string& name : names) {
    is_number.push_back(name.starts_with('#') ? 1 : 0);
    if (is_number.back() != 0) name.erase(0, 1);
  }
  const auto broken = [&](const std::vector<std::string>& cells, double size) {
    Row row{{}, is_number, 0.0};
    std::size_t most = 1;
    for (std::size_t c = 0; c < cells.size(); ++c) {
      row.cells.push_back(wrapped(cells[c], size, shares[c] * page_width - cell_gap, 8));
      most = std::max(most, row.cells.back().size());
    }
    row.height = pitch * table_size * static_cast<double>(most) + 5.0;
    return row;
  };
  const Row head = broken(names, 1.08 * table_size);  // bold letters are wider
  for (std::size_t r = 0; r < rows.size(); ++r) {
    const Row next = broken(rows[r], table_size);
    const std::size_t before = sheets_.size();
    make_room(next.height + (r == 0 ? head.height : 0.0));
    if (r == 0 || sheets_.size() != before) row(head, shares, true);
    row(next, shares, false);
  }
  y_ += 8.0;
}

void PageFlow::picture(std::string svg) {
  if (svg.empty()) return;
  const double height = height_of(svg);
  constexpr double smallest = 0.75;  // still legible, and saves a page
  const double rest = (bottom - y_) / height, whole = (bottom - top) / height;
  const double scale = std::min(1.0, rest >= smallest ? rest : whole);
  make_room(height * scale);
  sheets_.back().pictures.push_back(
      {std::move(svg), edge_mm + (1.0 - scale) / 2 * page_width * mm_in_unit,
       edge_mm + y_ * mm_in_unit, scale * page_width * mm_in_unit, scale * height * mm_in_unit});
  y_ += height * scale + 6.0;
}

void PageFlow::blank(double height) {
  make_room(height + 8.0);
  sheets_.back().canvas.rectangle({0.5, y_ + 6.0}, page_width - 1.0, height,
                                  "fill=\"none\" stroke=\"#767676\" stroke-width=\"0.8\"");
  y_ += height + 14.0;
}

std::vector<Page> PageFlow::pages() const {
  std::vector<Page> pages;
  for (std::size_t p = 0; p < sheets_.size(); ++p) {
    Sheet sheet = sheets_[p];
    const Lettering small{10.0, Anchor::start, 0.0, false, grey, ""};
    Lettering right = small;
    right.anchor = Anchor::end;
    const std::string number = fmt::format("page {} of {}", p + 1, sheets_.size());
    write(sheet, {0.0, 10.0}, fitted(title_, small.size, page_width), small);
    sheet.canvas.line({0.0, 16.0}, {page_width, 16.0}, "stroke=\"#9a9a9a\" stroke-width=\"0.6\"");
    write(sheet, {0.0, page_height - 4.0},
          fitted(foot_, small.size, page_width - text_width(number, small.size) - 20.0), small);
    write(sheet, {page_width, page_height - 4.0}, number, right);
    Page page{{{sheet.canvas.picture(page_height, title_, number), edge_mm, edge_mm,
                page_width * mm_in_unit, page_height * mm_in_unit}},
              std::move(sheet.texts)};
    page.pictures.insert(page.pictures.end(), sheet.pictures.begin(), sheet.pictures.end());
    pages.push_back(std::move(page));
  }
  return pages;
}

}  // namespace quoin::tools
