// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "tools/draw/canvas/picture.hpp"
#include "tools/output/pdf/grid.hpp"

namespace quoin::tools {

/// Text, tables and pictures set one below the other on as many A4 pages as it takes. Lengths are
/// units of pictures: `page_width` across the text of a page.
class PageFlow {
 public:
  /// `title` stands on top of every page, `foot` at the bottom beside the number of the page.
  PageFlow(std::string title, std::string foot);

  void title(std::string_view words);       ///< of the whole, on its first page
  void heading(std::string_view words);     ///< begins a section; stays with what follows
  void subheading(std::string_view words);  ///< of what follows, with which it stays
  void paragraph(std::string_view words);
  /// Of a list; with its number where the order counts.
  void item(std::string_view words, std::size_t number = 0);
  /// A table as wide as its words ask for: no word is cut or broken while the page is wide enough,
  /// and no number ever. A heading that begins with '#' stands over numbers. Headings are repeated
  /// on each page. A long table that is narrow enough stands in two columns beside each other.
  void table(const std::vector<std::string>& headings,
             const std::vector<std::vector<std::string>>& rows);
  /// A picture of ours, shrunk no further than its letters stay legible, unless it is higher than a
  /// page then. Where it does not fit on the page it stands on top of the next one, and what comes
  /// after it goes on here. `words`: above it; may be empty. `alone`: the headings that wait are of
  /// this picture and nothing else.
  void picture(const Picture& picture, std::string_view words = "", bool alone = false);
  /// An empty frame to write in.
  void blank(double height);

  /// The pages, as paint.hpp takes them.
  [[nodiscard]] std::vector<Canvas> pages() const;

 private:
  struct Heading {
    std::string words;
    bool begins_section = false;
  };
  /// A picture that waits for the next page, with the words above it.
  struct Waiting {
    std::shared_ptr<const Canvas> canvas;
    std::vector<Heading> headings;
    double height = 0.0;  ///< unshrunk
    double scale = 1.0;
  };
  /// Of those that wait for what they head.
  [[nodiscard]] static double height_of(const std::vector<Heading>& headings);
  /// Goes to the next page where so much does not fit, with what heads it; writes the headings.
  void make_room(double height);
  /// Begins a page, with the pictures that wait for it on top.
  void begin_page();
  void place(const Waiting& picture);
  void write(const Heading& heading);
  /// `part`: what it is to who has it read out, see Mark.
  void lines(std::string_view part, std::string_view words, double indent,
             const Lettering& lettering);
  /// From `left` on, on the page as far as it is filled.
  void row(const GridRow& row, const std::vector<double>& widths, bool bold, double left);
  /// Both halves of a table beside each other, where that saves room; else false, and nothing done.
  bool in_two_columns(const Grid& whole, const Grid& half);

  std::string title_;
  std::string foot_;
  std::vector<Canvas> pages_;
  std::vector<Heading> headings_;
  std::vector<Waiting> waiting_;
  double y_ = 0.0;  ///< how far the last page is filled
};

}  // namespace quoin::tools
