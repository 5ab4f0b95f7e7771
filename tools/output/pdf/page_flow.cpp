// SPDX-License-Identifier: Apache-2.0
#include "tools/output/pdf/page_flow.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <memory>
#include <numeric>
#include <tuple>
#include <utility>

#include "tools/draw/canvas/lettering.hpp"
#include "tools/draw/canvas/paint.hpp"

namespace quoin::tools {
namespace {

constexpr double page_height = (page_height_mm - 2 * page_edge_mm) / unit_mm;  ///< units
constexpr double top = 30.0;                   ///< below the running title
constexpr double bottom = page_height - 26.0;  ///< above the number of the page
constexpr double text_size = 9.7;              ///< 7.5 points
constexpr double section_size = 15.0;          ///< of the heading of a section
constexpr double table_size = 8.5;             ///< 6.6 points
constexpr double pitch = 1.25;                 ///< of lines, in sizes
constexpr double row_gap = 1.8;                ///< between the lines of two rows
constexpr std::size_t most_lines = 4000;
constexpr double cell_gap = 10.0;

/// The longest piece of a text that is never broken: all of a number, else a word.
double unbroken_width(const std::string& text, double size, bool is_number) {
  if (is_number) return text_width(text, size);
  double widest = 0.0;
  for (std::size_t from = 0; from < text.size();) {
    const std::size_t to = std::min(text.find(' ', from), text.size());
    widest = std::max(widest, text_width(text.substr(from, to - from), size));
    from = to + 1;
  }
  return widest;
}

/// How wide each column is: as wide as its longest cell where all fit, else what is left beyond the
/// longest words is shared out by what columns ask for.
std::vector<double> widths_of(const std::vector<std::string>& names,
                              const std::vector<std::vector<std::string>>& rows,
                              const std::vector<char>& is_number) {
  std::vector<double> least, most;
  for (std::size_t c = 0; c < names.size(); ++c) {
    const bool number = is_number[c] != 0;
    least.push_back(unbroken_width(names[c], bold_width * table_size, false));
    most.push_back(text_width(names[c], bold_width * table_size));
    for (const auto& row : rows) {
      least[c] = std::max(least[c], unbroken_width(row[c], table_size, number));
      most[c] = std::max(most[c], text_width(row[c], table_size));
    }
    least[c] += cell_gap + 1.0;
    most[c] += cell_gap + 1.0;
  }
  const double asked = std::accumulate(most.begin(), most.end(), 0.0);
  const double needed = std::accumulate(least.begin(), least.end(), 0.0);
  std::vector<double> widths = least;
  for (std::size_t c = 0; c < names.size(); ++c) {
    if (needed >= page_width) {
      widths[c] = least[c] * page_width / needed;
    } else if (asked <= page_width) {
      widths[c] = most[c] * page_width / asked;
    } else {
      widths[c] += (most[c] - least[c]) * (page_width - needed) / (asked - needed);
    }
  }
  return widths;
}

}  // namespace

PageFlow::PageFlow(std::string title, std::string foot)
    : title_(std::move(title)), foot_(std::move(foot)), pages_(1), y_(top) {}

double PageFlow::height_of_headings() const {
  double height = 0.0;
  for (const Heading& heading : headings_) {
    const double size = heading.begins_section ? section_size : text_size;
    const std::size_t count =
        wrapped(heading.words, bold_width * size, page_width, most_lines).size();
    height += static_cast<double>(count) * pitch * size + (heading.begins_section ? 26.0 : 5.0);
  }
  return height;
}

void PageFlow::make_room(double height) {
  const std::vector<Heading> headings = headings_;
  const double head = height_of_headings();
  headings_.clear();
  const double needed = headings.empty() ? height : head + std::max(height, 3 * pitch * text_size);
  if (y_ + needed > bottom && y_ != top) {
    pages_.emplace_back();
    y_ = top;
  }
  for (const Heading& heading : headings) write(heading);
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

void PageFlow::row(const Row& row, const std::vector<double>& widths, bool bold) {
  double x = 0.0;
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
  page.line({0.0, y_}, {page_width, y_}, bold ? Stroke{black, 0.9} : Stroke{{0x9a9a9a}, 0.5});
}

void PageFlow::table(const std::vector<std::string>& headings,
                     const std::vector<std::vector<std::string>>& rows) {
  if (rows.empty()) return;
  std::vector<std::string> names = headings;
  std::vector<char> is_number;
  for (std::string& name : names) {
    is_number.push_back(name.starts_with('#') ? 1 : 0);
    if (is_number.back() != 0) name.erase(0, 1);
  }
  const std::vector<double> widths = widths_of(names, rows, is_number);
  const auto broken = [&](const std::vector<std::string>& cells, double size) {
    Row row{{}, is_number, 0.0};
    std::size_t most = 1;
    for (std::size_t c = 0; c < cells.size(); ++c) {
      row.cells.push_back(wrapped(cells[c], size, widths[c] - cell_gap, most_lines));
      most = std::max(most, row.cells.back().size());
    }
    row.height = pitch * table_size * static_cast<double>(most) + row_gap;
    return row;
  };
  const Row head = broken(names, bold_width * table_size);
  for (std::size_t r = 0; r < rows.size(); ++r) {
    const Row next = broken(rows[r], table_size);
    const std::size_t before = pages_.size();
    make_room(next.height + (r == 0 ? head.height : 0.0));
    if (r == 0 || pages_.size() != before) {
      if (r > 0) pages_[before - 1].end("Table");
      pages_.back().begin("Table");
      row(head, widths, true);
    }
    row(next, widths, false);
  }
  pages_.back().end("Table");
  y_ += 8.0;
}

void PageFlow::picture(const Picture& picture) {
  if (picture.is_empty()) return;
  const double height = picture.height();
  constexpr double smallest = 0.75;  // still legible, and saves a page
  // Two stand on a page, and one takes what is left of its page where that is hardly less. What is
  // wider than high stays legible in less.
  const double share = height > page_width ? 0.47 : 0.42;
  const double half = std::min(1.0, share * (bottom - top) / height);
  const double rest = (bottom - y_ - height_of_headings()) / height;
  const double scale = rest >= half * smallest ? std::min(half, rest) : half;
  make_room(height * scale);
  pages_.back().begin("Figure");
  pages_.back().inset(std::make_shared<const Canvas>(picture.canvas()),
                      {(1.0 - scale) / 2 * page_width, y_}, scale);
  pages_.back().end("Figure");
  y_ += height * scale + 6.0;
}

void PageFlow::pictures(std::string_view one_words, const Picture& one,
                        std::string_view other_words, const Picture& other) {
  constexpr double scale = 0.49;
  const bool small = std::min(one.height(), other.height()) > 0.47 * (bottom - top) / 0.75;
  if (one.is_empty() || other.is_empty() || !small) {
    if (!one_words.empty()) subheading(one_words);
    picture(one);
    if (!other_words.empty()) subheading(other_words);
    return picture(other);
  }
  const bool words = !one_words.empty() || !other_words.empty();
  const double head = words ? 3 * pitch * text_size : 0.0;
  const double height = scale * std::max(one.height(), other.height());
  make_room(head + height);
  const double left = 0.0, right = (1.0 - scale) * page_width;
  for (const auto& [x, caption, picture] :
       {std::tuple{left, one_words, &one}, std::tuple{right, other_words, &other}}) {
    if (words) {
      pages_.back().begin("H3");
      double y = y_;
      for (const std::string& line :
           wrapped(caption, bold_width * text_size, scale * page_width, 2)) {
        y += pitch * text_size;
        pages_.back().text({x, y}, line, {text_size, Anchor::start, 0.0, true, black, {}});
      }
      pages_.back().end("H3");
    }
    pages_.back().begin("Figure");
    pages_.back().inset(std::make_shared<const Canvas>(picture->canvas()), {x, y_ + head}, scale);
    pages_.back().end("Figure");
  }
  y_ += head + height + 6.0;
}

void PageFlow::blank(double height) {
  make_room(height + 8.0);
  pages_.back().rectangle({0.5, y_ + 6.0}, page_width - 1.0, height, {{}, {{0x767676}, 0.8}});
  y_ += height + 14.0;
}

std::vector<Canvas> PageFlow::pages() const {
  PageFlow whole = *this;
  whole.make_room(0.0);  // a heading with nothing below it
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
