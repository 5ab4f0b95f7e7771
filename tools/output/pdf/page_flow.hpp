// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "tools/draw/canvas/picture.hpp"

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
  /// on each page.
  void table(const std::vector<std::string>& headings,
             const std::vector<std::vector<std::string>>& rows);
  /// A picture of ours, shrunk where it is higher than a page.
  void picture(const Picture& picture);
  /// Two pictures beside each other, each under its words, which may be empty. Pictures that would
  /// be shrunk hardly less below each other.
  void pictures(std::string_view one_words, const Picture& one, std::string_view other_words,
                const Picture& other);
  /// An empty frame to write in.
  void blank(double height);

  /// The pages, as paint.hpp takes them.
  [[nodiscard]] std::vector<Canvas> pages() const;

 private:
  struct Heading {
    std::string words;
    bool begins_section = false;
  };
  /// Of those that wait for what they head.
  [[nodiscard]] double height_of_headings() const;
  /// Goes to the next page where so much does not fit, with what heads it; writes the headings.
  void make_room(double height);
  void write(const Heading& heading);
  /// `part`: what it is to who has it read out, see Mark.
  void lines(std::string_view part, std::string_view words, double indent,
             const Lettering& lettering);
  /// A row of a table, its cells broken into lines.
  struct Row {
    std::vector<std::vector<std::string>> cells;
    std::vector<char> is_number;
    double height = 0.0;
  };
  void row(const Row& row, const std::vector<double>& widths, bool bold);

  std::string title_;
  std::string foot_;
  std::vector<Canvas> pages_;
  std::vector<Heading> headings_;
  double y_ = 0.0;  ///< how far the last page is filled
};

}  // namespace quoin::tools
