// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <utility>

#include "tests/tools/by_hand.hpp"
#include "tests/tools/xml.hpp"
#include "tools/draw/canvas/paint.hpp"
#include "tools/draw/chart/surface.hpp"
#include "tools/output/outputs.hpp"
#include "tools/output/pdf/page_flow.hpp"
#include "tools/output/pdf/report.hpp"
#include "tools/parts/parts.hpp"

using namespace quoin;
using namespace quoin::tools;
using quoin::testing::count;

namespace {

Picture small_picture(Colour colour) {
  Canvas canvas;
  canvas.rectangle({10, 10}, 100, 50, {colour, {}});
  return {std::move(canvas), 200, "a", "b"};
}

/// A number of four bytes, the highest first, as PNG has them.
unsigned number_at(const std::string& text, std::size_t at) {
  unsigned value = 0;
  for (std::size_t k = 0; k < 4; ++k)
    value = 256 * value + static_cast<unsigned char>(text[at + k]);
  return value;
}

TEST_CASE("a PNG picture has the wanted width, and the height that goes with it") {
  const std::string png = png_of(small_picture({0xff0000}), 320);
  CHECK(png.substr(1, 3) == "PNG");
  CHECK(number_at(png, 16) == 320);
  CHECK(number_at(png, 20) == 100);
  CHECK(png == png_of(small_picture({0xff0000}), 320));
  CHECK(png != png_of(small_picture({0x0000ff}), 320));
}

TEST_CASE("each SVG picture among the files gets a PNG of its name where they are asked for") {
  std::vector<std::string> svg, png;
  for (const File& file : files_of(testing::results_by_hand(), Png::too)) {
    const std::string stem = file.name.substr(0, file.name.rfind('.'));
    if (file.name.ends_with(".svg")) svg.push_back(stem);
    if (!file.name.ends_with(".png")) continue;
    png.push_back(stem);
    CHECK(number_at(file.content, 16) == 1280);
  }
  CHECK(svg == png);
  CHECK(svg.size() >= 4);
  for (const File& file : files_of(testing::results_by_hand()))
    CHECK_FALSE(file.name.ends_with(".png"));
}

TEST_CASE("what cannot be painted is told as that, with the reason") {
  CHECK_THROWS_AS(png_of(small_picture({0xff0000}), 100'000'000), PartError);
  CHECK_THROWS_WITH(png_of(small_picture({0xff0000}), 100'000'000),
                    doctest::Contains("a picture cannot be painted: "));
}

TEST_CASE("a part of the program that is missing is told as that") {
  std::string reason;
  CHECK(static_cast<bool>(function_of("paint", "quoin_paint_pdf", reason)));
  CHECK(reason.empty());
  CHECK_FALSE(static_cast<bool>(function_of("paint", "no_such_function", reason)));
  CHECK(reason.find("no_such_function") != std::string::npos);
  CHECK_FALSE(static_cast<bool>(function_of("nothing", "quoin_paint_pdf", reason)));
  CHECK(reason.find("nothing") != std::string::npos);
}

TEST_CASE("every kind of item and every sort of ink is painted") {
  const auto blank = png_of({Canvas(), 200, "", ""}, 320);
  const auto hatch = std::make_shared<const Hatch>(
      Hatch{"h", 8, 8, 30, {{{0, 4}, {8, 4}}}, {black, 1.0, {}, Ends::round}});
  const auto inner = [] {
    Canvas canvas;
    canvas.circle({5, 5}, 3, {black, {}});
    return std::make_shared<const Canvas>(std::move(canvas));
  }();
  const std::vector<void (*)(Canvas&)> plain{
      [](Canvas& c) {
        c.line({10, 10}, {90, 90}, {black, 1.0});
      },
      [](Canvas& c) {
        c.line({10, 10}, {90, 90}, {black, 1.0, {4, 2}});
      },
      [](Canvas& c) {
        c.area({{{10, 10}, {90, 10}, {50, 90}}}, {grey, {}});
      },
      [](Canvas& c) {
        c.area({{{10, 10}, {90, 10}, {50, 90}}}, {grey, {}, 0.2});
      },
      [](Canvas& c) {
        c.rectangle({10, 10}, 50, 40, {{}, {black, 2.0}});
      },
      [](Canvas& c) {
        c.rectangle({10, 10}, 50, 40, {{}, {black, 2.0}}, 5.0);
      },
      [](Canvas& c) {
        c.text({10, 40}, "words", {});
      },
      [](Canvas& c) {
        c.text({10, 40}, "words", {13.0, Anchor::end, 0.0, true, black, {}});
      },
      [](Canvas& c) {
        c.text({60, 60}, "words", {13.0, Anchor::middle, 90.0, false, grey, {}});
      }};
  std::set<std::string> different{blank};
  const auto add = [&](Canvas canvas) {
    different.insert(png_of({std::move(canvas), 200, "", ""}, 320));
  };
  for (const auto draw : plain) {
    Canvas canvas;
    draw(canvas);
    add(std::move(canvas));
  }
  Canvas hatched, inset, haloed;
  hatched.rectangle({10, 10}, 50, 40, {hatch, {}});
  inset.inset(inner, {30, 30}, 2.0);
  haloed.rectangle({0, 0}, 100, 100, {grey, {}});
  haloed.text({10, 40}, "words", {13.0, Anchor::start, 0.0, false, black, white});
  add(hatched);
  add(inset);
  add(haloed);
  CHECK(different.size() == plain.size() + 4);
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

std::size_t lines_with(const Canvas& page, const std::string& words) {
  std::size_t found = 0;
  for (const Item& item : page.items()) {
    const auto* text = std::get_if<Words>(&item);
    found += text != nullptr && text->text == words ? 1 : 0;
  }
  return found;
}

TEST_CASE("text flows from page to page, each with its number") {
  PageFlow flow("title", "foot");
  for (int k = 0; k < 120; ++k) flow.paragraph("words");
  const std::vector<Canvas> pages = flow.pages();
  REQUIRE(pages.size() == 3);
  std::size_t words = 0;
  for (std::size_t p = 0; p < pages.size(); ++p) {
    CHECK(lines_with(pages[p], "page " + std::to_string(p + 1) + " of 3") == 1);
    CHECK(lines_with(pages[p], "title") == 1);
    CHECK(lines_with(pages[p], "foot") == 1);
    words += lines_with(pages[p], "words");
    for (const Item& item : pages[p].items()) {
      const auto* text = std::get_if<Words>(&item);
      if (text == nullptr) continue;
      CHECK(text->at.y > 0.0);
      CHECK(text->at.y * unit_mm < page_height_mm - 2 * page_edge_mm);
    }
  }
  CHECK(words == 120);
}

TEST_CASE(
    "a heading stays with what it heads and one with nothing below it is written all the same") {
  for (const double height : {60.0, 600.0}) {
    PageFlow flow("title", "foot");
    for (int k = 0; k < 30; ++k) flow.paragraph("words");
    flow.heading("section");
    flow.subheading("part");
    flow.blank(height);
    flow.heading("last");
    const std::vector<Canvas> pages = flow.pages();
    const std::size_t place = height > 100.0 ? 1 : 0;
    REQUIRE(pages.size() > place);
    CHECK(lines_with(pages[place], "section") == 1);
    CHECK(lines_with(pages[place], "part") == 1);
    std::size_t last = 0;
    for (const Canvas& page : pages) last += lines_with(page, "last");
    CHECK(last == 1);
  }
}

TEST_CASE("a long table has its headings on each page, and never without a row below them") {
  PageFlow flow("title", "foot");
  for (int k = 0; k < 37; ++k) flow.paragraph("words");  // leaves hardly room on the first page
  flow.table({"name", "#value"}, std::vector<std::vector<std::string>>(120, {"row", "1.5"}));
  std::size_t rows = 0;
  for (const Canvas& page : flow.pages()) {
    const std::size_t here = lines_with(page, "row");
    const std::size_t headings = lines_with(page, "name");
    CHECK(headings <= 2);  // a long narrow table stands in two columns, each with its headings
    CHECK((headings > 0) == (here > 0));
    CHECK(here >= headings);
    rows += here;
  }
  CHECK(rows == 120);
}

TEST_CASE("a picture higher than a page is shrunk to it") {
  PageFlow flow("title", "foot");
  flow.picture({Canvas(), 5000, "a", "b"});
  const std::vector<Canvas> pages = flow.pages();
  REQUIRE(pages.size() == 1);
  const auto found =
      std::find_if(pages[0].items().begin(), pages[0].items().end(),
                   [](const Item& item) { return std::holds_alternative<Inset>(item); });
  REQUIRE(found != pages[0].items().end());
  const Inset& picture = std::get<Inset>(*found);
  CHECK((picture.corner.y + picture.scale * 5000) * unit_mm < page_height_mm - 2 * page_edge_mm);
  CHECK(picture.scale > 0.05);
}

TEST_CASE("names that are markup, emoji or very long do no harm in the PDF report and PNG files") {
  for (const std::string& name : testing::hostile_names()) {
    CAPTURE(name.substr(0, 40));
    const Results results = testing::results_named(name);
    CHECK(report_pdf(results).size() > 10000);
    CHECK(png_of(drawn_surface(results), 320).size() > 1000);
  }
}

}  // namespace
