// SPDX-License-Identifier: Apache-2.0
#include "tools/output/pdf/page_flow.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <memory>
#include <numeric>
#include <utility>

#include "tools/draw/canvas/lettering.hpp"
#include "tools/draw/canvas/paint.hpp"

namespace quoin::tools {
namespace {

constexpr double page_height = (page_height_mm - 2 * page_edge_mm) / unit_mm;  ///< units
constexpr double top = 30.0;                                ///< below the running title
constexpr double bottom = page_height - 26.0;               ///< above the number of the page
constexpr double text_size = 9.7;                           ///< 7.5 points
constexpr double section_size = 15.0;                       ///< of the heading of a section
constexpr double least_size = 6.0 * 25.4 / 72.0 / unit_mm;  ///< of letters: 6 points

/// The smallest letters on a canvas; infinite where it has none.
double smallest_letters(const Canvas& canvas) {
  double smallest = std::numeric_limits<double>::infinity();
  for (const Item& item : canvas.items()) {
    if (const auto* words = std::get_if<Words>(&item))
      smallest = std::min(smallest, words->lettering.size);
    if (const auto* inset = std::get_if<Inset>(&item))
      smallest = std::min(smallest, inset->scale * smallest_letters(*inset->canvas));
  }
  return smallest;
}

}  // namespace

PageFlow::PageFlow(std::string title, std::string foot)
    : title_(std::move(title)), foot_(std::move(foot)), pages_(1), y_(top) {}

double PageFlow::height_of(const std::vector<Heading>& headings) {
  double height = 0.0;
  for (const Heading& heading : headings) {
    const double size = heading.begins_section ? section_size : text_size;
    const std::size_t count =
        wrapped(heading.words, bold_width * size, page_width, most_lines).size();
    height += static_cast<double>(count) * pitch * size + (heading.begins_section ? 26.0 : 5.0);
  }
  return height;
}

void PageFlow::make_room(double height) {
  const std::vector<Heading> headings = headings_;
  const double head = height_of(headings);
  headings_.clear();
  const double needed = headings.empty() ? height : head + std::max(height, 3 * pitch * text_size);
  // Pictures that waited may fill the page they come to.
  while (y_ + needed > bottom && y_ != top) begin_page();
  for (const Heading& heading : headings) write(heading);
}

void PageFlow::begin_page() {
  const auto room_of = [](const Waiting& picture) {
    return height_of(picture.headings) + picture.height * picture.scale + 6.0;
  };
  pages_.emplace_back();
  y_ = top;
  while (!waiting_.empty() && (y_ == top || y_ + room_of(waiting_.front()) <= bottom)) {
    place(waiting_.front());
    waiting_.erase(waiting_.begin());
  }
}

void PageFlow::write(const Heading& heading) {
  const double size = heading.begins_section ? section_size : text_size;
  const Lettering lettering{size, Anchor::start, 0.0, true, black, {}};
  if (!heading.begins_section) {
    y_ += 5.0;
    return lines("H3", heading.words, 0.0, lettering);
  }
  if (y_ > top) y_ += 16.0;
  lines("H2", heading.words, 0.0, lettering);
  y_ += 6.0;
  pages_.back().line({0.0, y_}, {page_width, y_}, {black, 1.2});
  y_ += 4.0;
}

void PageFlow::lines(std::string_view part, std::string_view words, double indent,
                     const Lettering& lettering) {
  const double size = lettering.size * (lettering.bold ? bold_width : 1.0);
  std::size_t begun = 0;  // the page on which the part was begun last; parts end with their page
  for (const std::string& line : wrapped(words, size, page_width - indent, most_lines)) {
    make_room(pitch * lettering.size);
    if (begun != pages_.size()) {
      if (begun > 0) pages_[begun - 1].end(part);
      pages_.back().begin(part);
      begun = pages_.size();
    }
    y_ += pitch * lettering.size;
    pages_.back().text({indent, y_}, line, lettering);
  }
  if (begun > 0) pages_[begun - 1].end(part);
}

void PageFlow::title(std::string_view words) {
  lines("H1", words, 0.0, {20.0, Anchor::start, 0.0, true, black, {}});
  y_ += 6.0;
}

void PageFlow::heading(std::string_view words) { headings_.push_back({std::string(words), true}); }

void PageFlow::subheading(std::string_view words) {
  headings_.push_back({std::string(words), false});
}

void PageFlow::paragraph(std::string_view words) {
  lines("P", words, 0.0, {text_size, Anchor::start, 0.0, false, black, {}});
  y_ += 5.0;
}

void PageFlow::item(std::string_view words, std::size_t number) {
  make_room(pitch * text_size);
  if (number == 0) {
    pages_.back().circle({4.0, y_ + pitch * text_size - 4.2}, 1.8, {black, {}});
  } else {
    pages_.back().text({0.0, y_ + pitch * text_size}, fmt::format("{}.", number),
                       {text_size, Anchor::start, 0.0, false, black, {}});
  }
  lines("LI", words, 14.0, {text_size, Anchor::start, 0.0, false, black, {}});
  y_ += 2.0;
}

void PageFlow::row(const GridRow& row, const std::vector<double>& widths, bool bold, double left) {
  double x = left;
  Canvas& page = pages_.back();
  const std::string_view part = bold ? "TH" : "TD";
  page.begin("TR");
  for (std::size_t c = 0; c < row.cells.size(); ++c) {
    page.begin(part);
    const double width = widths[c];
    const bool ends = row.is_number[c] != 0;
    const Lettering lettering{table_size, ends ? Anchor::end : Anchor::start, 0.0, bold, black, {}};
    double y = y_;
    for (const std::string& line : row.cells[c]) {
      y += pitch * table_size;
      page.text({ends ? x + width - cell_gap : x, y}, line, lettering);
    }
    x += width;
    page.end(part);
  }
  page.end("TR");
  y_ += row.height;
  page.line({left, y_}, {x, y_}, bold ? Stroke{black, 0.9} : Stroke{{0x9a9a9a}, 0.5});
}

bool PageFlow::in_two_columns(const Grid& whole, const Grid& half) {
  constexpr std::size_t fewest = 8;  // rows; fewer are hardly shorter so
  constexpr double saves = 0.75;     // of the height, at least
  const double width = std::accumulate(half.widths.begin(), half.widths.end(), 0.0);
  if (whole.rows.size() < fewest) return false;
  const auto height = [](const Grid& grid, std::size_t begin, std::size_t end) {
    return std::accumulate(grid.rows.begin() + static_cast<std::ptrdiff_t>(begin),
                           grid.rows.begin() + static_cast<std::ptrdiff_t>(end), grid.head.height,
                           [](double sum, const GridRow& row) { return sum + row.height; });
  };
  const std::size_t all = half.rows.size();
  std::size_t left = (all + 1) / 2;
  while (left < all && height(half, 0, left) < height(half, left, all)) ++left;
  const double needed = std::max(height(half, 0, left), height(half, left, all));
  if (needed > saves * height(whole, 0, all) || needed > bottom - top - 60.0) return false;
  make_room(needed);
  const double begun = y_;
  for (const bool second : {false, true}) {
    const double x = second ? page_width - width : 0.0;
    y_ = begun;
    pages_.back().begin("Table");
    row(half.head, half.widths, true, x);
    for (std::size_t r = second ? left : 0; r < (second ? all : left); ++r)
      row(half.rows[r], half.widths, false, x);
    pages_.back().end("Table");
  }
  y_ = begun + needed + 8.0;
  return true;
}

void PageFlow::table(const std::vector<std::string>& headings,
                     const std::vector<std::vector<std::string>>& rows) {
  if (rows.empty()) return;
  constexpr double gutter = 24.0;
  std::vector<std::string> names = headings;
  std::vector<char> is_number;
  for (std::string& name : names) {
    is_number.push_back(name.starts_with('#') ? 1 : 0);
    if (is_number.back() != 0) name.erase(0, 1);
  }
  const Grid grid = grid_of(names, is_number, rows, page_width);
  if (is_narrow(names, rows, is_number, (page_width - gutter) / 2) &&
      in_two_columns(grid, grid_of(names, is_number, rows, (page_width - gutter) / 2))) {
    return;
  }
  for (std::size_t r = 0; r < rows.size(); ++r) {
    const GridRow& next = grid.rows[r];
    const std::size_t before = pages_.size();
    make_room(next.height + (r == 0 ? grid.head.height : 0.0));
    if (r == 0 || pages_.size() != before) {
      if (r > 0) pages_[before - 1].end("Table");
      pages_.back().begin("Table");
      row(grid.head, grid.widths, true, 0.0);
    }
    row(next, grid.widths, false, 0.0);
  }
  pages_.back().end("Table");
  y_ += 8.0;
}

void PageFlow::place(const Waiting& picture) {
  for (const Heading& heading : picture.headings) write(heading);
  pages_.back().begin("Figure");
  pages_.back().inset(picture.canvas, {(1.0 - picture.scale) / 2 * page_width, y_}, picture.scale);
  pages_.back().end("Figure");
  y_ += picture.height * picture.scale + 6.0;
}

void PageFlow::picture(const Picture& picture, std::string_view words, bool alone) {
  if (picture.is_empty()) return;
  const double smallest = std::min(1.0, least_size / smallest_letters(picture.canvas()));
  Waiting next{std::make_shared<const Canvas>(picture.canvas()), {}, picture.height(), 1.0};
  if (alone) next.headings = std::exchange(headings_, {});
  if (!words.empty()) next.headings.push_back({std::string(words), false});
  const double head = height_of(next.headings) + height_of(headings_) + 6.0;
  // Two stand on a page where they are legible so, and one takes what is left of its page.
  const double half = std::clamp(0.47 * (bottom - top) / next.height, smallest, 1.0);
  next.scale = std::min(half, (bottom - top - height_of(next.headings) - 6.0) / next.height);
  const double rest = (bottom - y_ - head) / next.height;
  if (rest >= smallest) next.scale = std::min(next.scale, rest);
  if (rest < next.scale && y_ != top) {
    waiting_.push_back(std::move(next));
    return;
  }
  make_room(next.height * next.scale);
  place(next);
}

void PageFlow::blank(double height) {
  make_room(height + 8.0);
  pages_.back().rectangle({0.5, y_ + 6.0}, page_width - 1.0, height, {{}, {{0x767676}, 0.8}});
  y_ += height + 14.0;
}

std::vector<Canvas> PageFlow::pages() const {
  PageFlow whole = *this;
  whole.make_room(0.0);  // a heading with nothing below it
  while (!whole.waiting_.empty()) whole.begin_page();
  std::vector<Canvas> pages = std::move(whole.pages_);
  for (std::size_t p = 0; p < pages.size(); ++p) {
    const Lettering small{10.0, Anchor::start, 0.0, false, grey, {}};
    Lettering right = small;
    right.anchor = Anchor::end;
    const std::string number = fmt::format("page {} of {}", p + 1, pages.size());
    pages[p].text({0.0, 10.0}, fitted(title_, small.size, page_width), small);
    pages[p].line({0.0, 16.0}, {page_width, 16.0}, {{0x9a9a9a}, 0.6});
    pages[p].text({0.0, page_height - 4.0},
                  fitted(foot_, small.size, page_width - text_width(number, small.size) - 20.0),
                  small);
    pages[p].text({page_width, page_height - 4.0}, number, right);
  }
  return pages;
}

}  // namespace quoin::tools
