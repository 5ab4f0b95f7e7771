// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include "tests/tools/by_hand.hpp"
#include "tests/tools/xml.hpp"
#include "tools/outputs.hpp"
#include "tools/page_flow.hpp"
#include "tools/paint_error.hpp"
#include "tools/pdf_report.hpp"
#include "tools/rsvg_paint.hpp"
#include "tools/svg_surface.hpp"

using namespace quoin;
using namespace quoin::tools;
using quoin::testing::count;

namespace {

std::string small_picture(const std::string& colour) {
  Canvas canvas;
  canvas.rectangle({10, 10}, 100, 50, "fill=\"" + colour + "\"");
  return canvas.picture(200, "a", "b");
}

/// A number of four bytes, the highest first, as PNG has them.
unsigned number_at(const std::string& text, std::size_t at) {
  unsigned value = 0;
  for (std::size_t k = 0; k < 4; ++k)
    value = 256 * value + static_cast<unsigned char>(text[at + k]);
  return value;
}

TEST_CASE("a PNG picture has the wanted width, and the height that goes with it") {
  const std::string png = png_of(small_picture("#ff0000"), 320);
  CHECK(png.substr(1, 3) == "PNG");
  CHECK(number_at(png, 16) == 320);
  CHECK(number_at(png, 20) == 100);
  CHECK(png == png_of(small_picture("#ff0000"), 320));
  CHECK(png != png_of(small_picture("#0000ff"), 320));
}

TEST_CASE("each SVG picture among the files gets a PNG of its name") {
  const std::vector<File> pngs = pngs_of(
      {{"a.svg", small_picture("#ff0000")}, {"b.csv", "x"}, {"c.svg", small_picture("#0")}});
  REQUIRE(pngs.size() == 2);
  CHECK(pngs[0].name == "a.png");
  CHECK(pngs[1].name == "c.png");
  CHECK(number_at(pngs[0].content, 16) == 1280);
}

TEST_CASE("what is no SVG picture is refused, not painted") {
  CHECK_THROWS_AS(static_cast<void>(png_of("<svg", 100)), PaintError);
  CHECK_THROWS_AS(static_cast<void>(png_of("", 100)), PaintError);
  CHECK_THROWS_AS(static_cast<void>(pdf_of({Page{{{"<p/>", 0, 0, 10, 10}}, {}}}, "t")), PaintError);
}

TEST_CASE("a PDF report is the same bytes each time and has no date") {
  const Results results = testing::results_by_hand();
  const std::string pdf = report_pdf(results);
  CHECK(pdf.substr(0, 5) == "%PDF-");
  CHECK(pdf == report_pdf(results));
  CHECK(pdf.find("Date") == std::string::npos);
  Results other = results;
  other.variants[0].summary = "other words";
  CHECK(pdf != report_pdf(other));
}

TEST_CASE("words that need more than one font or direction are left to librsvg") {
  CHECK(is_plain("coldest 9.1 °C – ψ ≥ 0.75 „Wände“ m²K/W"));
  CHECK(is_plain(""));
  CHECK_FALSE(is_plain("\xF0\x9F\x94\xA5"));
  CHECK_FALSE(is_plain("\xD7\xA9\xD7\x9C"));  // right to left
  CHECK_FALSE(is_plain("e\xCC\x81"));         // a mark on the letter before
  CHECK_FALSE(is_plain("tab\t"));
  CHECK_FALSE(is_plain("\xFF"));
}

std::size_t lines_with(const Page& page, const std::string& words) {
  std::size_t found = 0;
  for (const PlacedText& text : page.texts) found += text.words == words ? 1 : 0;
  return found;
}

TEST_CASE("text flows from page to page, each with its number") {
  PageFlow flow("title", "foot");
  for (int k = 0; k < 120; ++k) flow.paragraph("words");
  const std::vector<Page> pages = flow.pages();
  REQUIRE(pages.size() == 3);
  std::size_t words = 0;
  for (std::size_t p = 0; p < pages.size(); ++p) {
    CHECK(lines_with(pages[p], "page " + std::to_string(p + 1) + " of 3") == 1);
    CHECK(lines_with(pages[p], "title") == 1);
    CHECK(lines_with(pages[p], "foot") == 1);
    words += lines_with(pages[p], "words");
    for (const PlacedText& text : pages[p].texts) {
      CHECK(text.y > 0.0);
      CHECK(text.y < page_height_mm - 10.0);
    }
  }
  CHECK(words == 120);
}

TEST_CASE("a long table has its headings on each page, and never without a row below them") {
  PageFlow flow("title", "foot");
  for (int k = 0; k < 37; ++k) flow.paragraph("words");  // leaves hardly room on the first page
  flow.table({"name", "#value"}, {0.5, 0.5},
             std::vector<std::vector<std::string>>(120, {"row", "1.5"}));
  std::size_t rows = 0;
  for (const Page& page : flow.pages()) {
    const std::size_t here = lines_with(page, "row");
    CHECK(lines_with(page, "name") == (here > 0 ? 1 : 0));
    rows += here;
  }
  CHECK(rows == 120);
}

TEST_CASE("a picture higher than a page is shrunk to it") {
  PageFlow flow("title", "foot");
  Canvas canvas;
  flow.picture(canvas.picture(5000, "a", "b"));
  const std::vector<Page> pages = flow.pages();
  REQUIRE(pages.size() == 1);
  const PlacedPicture& picture = pages[0].pictures.back();
  CHECK(picture.y + picture.height < page_height_mm);
  CHECK(picture.height > 5.0 * picture.width);
}

TEST_CASE("names that are markup, emoji or very long do no harm in the PDF report and PNG files") {
  for (const std::string& name : testing::hostile_names()) {
    CAPTURE(name.substr(0, 40));
    const Results results = testing::results_named(name);
    CHECK(report_pdf(results).size() > 10000);
    CHECK(png_of(surface_picture(results), 320).size() > 1000);
  }
}

}  // namespace
