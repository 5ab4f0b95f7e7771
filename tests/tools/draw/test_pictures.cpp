// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <set>
#include <sstream>

#include "tests/tools/by_hand.hpp"
#include "tests/tools/golden.hpp"
#include "tests/tools/small_case.hpp"
#include "tests/tools/xml.hpp"
#include "tools/draw/canvas/colours.hpp"
#include "tools/draw/canvas/hatch.hpp"
#include "tools/draw/canvas/svg.hpp"
#include "tools/draw/chart/surface.hpp"
#include "tools/draw/field/field.hpp"
#include "tools/draw/section/dimensions.hpp"
#include "tools/draw/section/section.hpp"
#include "tools/draw/section/sheet.hpp"
#include "tools/run.hpp"

using namespace quoin;
using namespace quoin::tools;
using quoin::testing::count;
using quoin::testing::is_well_formed;

namespace {

std::string section_of_first(const Results& results) {
  const SolvedVariant& first = results.variants.front();
  return drawn_section(first.variant, first.conductivity, results.title).noted(results.note).svg();
}

std::string field_of_first(const Results& results) {
  return drawn_field(results.variants.front(), results.title).noted(results.note).svg();
}

TEST_CASE("the picture of a section is the golden one") {
  CHECK(testing::is_golden(section_of_first(testing::results_by_hand()), "section.svg"));
}

TEST_CASE("the picture of a field is the golden one") {
  CHECK(testing::is_golden(field_of_first(testing::results_by_hand()), "field.svg"));
}

TEST_CASE("a golden picture would not pass if one number differed") {
  Results results = testing::results_by_hand();
  results.variants[0].surface.airs[0].coldest.temperature.value += 0.1;
  CHECK(field_of_first(results) != testing::golden("field.svg"));
}

TEST_CASE("the same findings give the same picture twice") {
  CHECK(field_of_first(testing::results_by_hand()) == field_of_first(testing::results_by_hand()));
}

TEST_CASE("a section shows its layers, its overall size, its spaces, probes and cut planes") {
  const std::string picture = section_of_first(testing::results_by_hand());
  for (const char* shown : {">330<", ">15<", ">1345<", ">hall<", ">yard<", ">A<", ">cut plane<",
                            ">wall brick<", ">plaster<", ">500 mm<"}) {
    CAPTURE(shown);
    CHECK(picture.find(shown) != std::string::npos);
  }
  CHECK(picture.find(">lining<") == std::string::npos);  // not in this variant
}

TEST_CASE("a field shows its coldest spot, dew point, mould limit and labelled isotherms") {
  const std::string picture = field_of_first(testing::results_by_hand());
  for (const char* shown :
       {">coldest 9.1 °C<", ">dew point 10.6 °C<", ">mould 14.0 °C: colder surfaces", ">4<",
        ">A 11.2 °C<", ">hall, 18.0 °C, 62 %<"}) {
    CAPTURE(shown);
    CHECK(picture.find(shown) != std::string::npos);
  }
}

TEST_CASE("a limit that the material never reaches is said, not drawn") {
  Results results = testing::results_by_hand();
  results.variants[0].humidity[0].mould_temperature = 30.0;
  const std::string picture = field_of_first(results);
  CHECK(picture.find("all the material is colder") != std::string::npos);
  CHECK(picture.find(">mould 30.0 °C<") == std::string::npos);
}

TEST_CASE("names that are markup, emoji or very long do no harm in pictures") {
  for (const std::string& name : testing::hostile_names()) {
    CAPTURE(name.substr(0, 40));
    const Results results = testing::results_named(name);
    for (const std::string& picture :
         {section_of_first(results), field_of_first(results), drawn_surface(results).svg()}) {
      CHECK(is_well_formed(picture));
      CHECK(picture.find("<script") == std::string::npos);
      CHECK(count(picture, "<svg") == 1);
      CHECK(picture.find('\x01') == std::string::npos);
      CHECK(picture.find('\x1b') == std::string::npos);
      CHECK(picture.size() < 200000);
    }
  }
}

TEST_CASE("the check for well-formed markup sees markup that is not") {
  CHECK(is_well_formed("<a><b/></a>"));
  CHECK_FALSE(is_well_formed("<a><b></a>"));
  CHECK_FALSE(is_well_formed("<a></a></a>"));
  CHECK_FALSE(is_well_formed("<a> < </a>"));
}

TEST_CASE("steps of the temperature map look equally large and grow lighter") {
  double least = 1.0, most = 0.0;
  for (int k = 0; k < 20; ++k) {
    const Lab a = temperature_colour(k / 20.0), b = temperature_colour((k + 1) / 20.0);
    CHECK(b.lightness > a.lightness);
    const double step = std::hypot(b.lightness - a.lightness, b.green_red - a.green_red,
                                   b.blue_yellow - a.blue_yellow);
    least = std::min(least, step);
    most = std::max(most, step);
  }
  CHECK(most < 1.5 * least);
}

TEST_CASE("colours come out as the published conversion gives them") {
  // OKLab of white, black and sRGB red: the definition's own examples (memory)
  CHECK(hex(shown({1.0, 0.0, 0.0})) == "#ffffff");
  CHECK(hex(shown({0.0, 0.0, 0.0})) == "#000000");
  CHECK(hex(shown({0.62796, 0.22486, 0.12585})) == "#ff0000");
}

TEST_CASE("letters on every band contrast at least 3 to 1 with it") {
  // WCAG 2 contrast of large or bold text; relative luminance of sRGB
  const auto luminance = [](const std::string& colour) {
    double sum = 0.0;
    const double weights[] = {0.2126, 0.7152, 0.0722};
    for (int c = 0; c < 3; ++c) {
      const auto at = static_cast<std::size_t>(1 + 2 * c);
      const double v = std::stoi(colour.substr(at, 2), nullptr, 16) / 255.0;
      sum += weights[c] * (v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4));
    }
    return sum;
  };
  for (int k = 0; k <= 50; ++k) {
    const Lab ground = temperature_colour(k / 50.0);
    const double a = luminance(hex(shown(ground))), b = luminance(hex(ink_on(ground)));
    CHECK((std::max(a, b) + 0.05) / (std::min(a, b) + 0.05) >= 3.0);
  }
}

TEST_CASE("materials are drawn by what they are") {
  const auto kind = [](const char* name, double conductivity, double density) {
    return kind_of(testing::material(name, conductivity, density));
  };
  CHECK(kind("common brick", 0.62, 1650) == Kind::masonry);
  CHECK(kind("lime plaster", 0.7, 1600) == Kind::coat);
  CHECK(kind("concrete", 2.0, 2300) == Kind::stone);
  CHECK(kind("oak", 0.18, 700) == Kind::timber);
  CHECK(kind("mineral wool", 0.036, 50) == Kind::insulation);
  CHECK(kind("gypsum board", 0.21, 900) == Kind::board);
  CHECK(kind("aluminium", 200, 2700) == Kind::metal);
  CHECK(kind("glass", 1.0, 2500) == Kind::glass);
  CHECK(kind("soil", 1.5, 1800) == Kind::ground);
}

TEST_CASE("wet and dry states of one material share a hatch, two materials do not") {
  geometry::Per<geometry::RegionId, cases::Region> regions;
  materials::Material brick = testing::material("brick", 0.6, 1700);
  brick.saturation.emplace().value = 0.25;
  regions.add(testing::region("dry wall", brick));
  regions.add(testing::region("wet wall", brick));
  regions.add(testing::region("other wall", testing::material("other brick", 0.8, 1800)));
  regions[geometry::RegionId(1u)].moisture = 0.25;
  const Looks looks(regions);
  const auto look = [&](std::size_t r) { return looks[geometry::RegionId(r)]; };
  CHECK(look(0).hatch == look(1).hatch);
  CHECK(look(0).wet == nullptr);
  REQUIRE(look(1).wet != nullptr);
  CHECK(look(1).wet->name == "wet-2");
  CHECK(*look(2).hatch != *look(0).hatch);
  CHECK(look(2).ground != look(0).ground);
}

TEST_CASE("numbers in pictures are short and never negative zero") {
  CHECK(number(1.0) == "1");
  CHECK(number(-0.001) == "0");
  CHECK(number(2.346) == "2.35");
  CHECK(number(-12.5) == "-12.5");
  CHECK(length_in_mm(0.345) == "345");
  CHECK(length_in_mm(0.0125) == "12.5");
}

TEST_CASE("boxes overlap when they share a point, however they are turned") {
  CHECK(overlap({{0, 0}, 10, 2, 0}, {{9, 0}, 10, 2, 0}));
  CHECK_FALSE(overlap({{0, 0}, 10, 2, 0}, {{11, 0}, 10, 2, 0}));
  CHECK(overlap({{0, 0}, 10, 2, 45}, {{3, -3}, 2, 2, 0}));       // up the slope
  CHECK_FALSE(overlap({{0, 0}, 10, 2, 45}, {{3, 3}, 2, 2, 0}));  // down: beside it
  CHECK_FALSE(overlap({{3, 3}, 2, 2, 0}, {{0, 0}, 10, 2, 45}));
}

TEST_CASE("text is cut to its room with an ellipsis") {
  CHECK(fitted("short", 12, 100) == "short");
  const std::string cut = fitted("a rather long name for a wall", 12, 80);
  CHECK(cut.ends_with("…"));
  CHECK(text_width(cut, 12) <= 80);
  const auto lines = wrapped("one two three four five six seven", 12, 80, 2);
  REQUIRE(lines.size() == 2);
  CHECK(lines[1].ends_with("…"));
}

/// All that is written on a picture, in its order, with a space between two texts.
std::string words_on(const Picture& picture) {
  std::string all;
  for (const Item& item : picture.canvas().items()) {
    if (const auto* words = std::get_if<Words>(&item)) all += words->text + " ";
  }
  return all;
}

TEST_CASE("long titles and legends are wrapped, not cut") {
  Results results = testing::results_by_hand();
  SolvedVariant& solved = results.variants.front();
  const std::string title =
      "Lock-keeper's house, north-east corner of the kitchen behind the dresser, upper floor";
  const std::string material = "wall brick, wet from a downpipe that was mended a year ago";
  for (cases::Region& region : solved.variant.regions) region.name = material;
  const std::string section = words_on(drawn_section(solved.variant, solved.conductivity, title));
  CHECK(section.find(title) != std::string::npos);
  CHECK(section.find(material) != std::string::npos);
  CHECK(section.find("…") == std::string::npos);
  CHECK(words_on(drawn_field(solved, title)).find(title) != std::string::npos);
}

TEST_CASE("a space too small for its name is named beside it") {
  Results results = testing::results_by_hand();
  SolvedVariant& solved = results.variants.front();
  for (cases::Space& space : solved.variant.spaces) {
    space.name =
        "a room whose name is much too long for the narrow strip that is drawn of it " + space.name;
  }
  View view(shown_part(solved.variant, geometry::section_of(solved.variant.sheet)), {20, 60}, 90,
            90);
  Canvas canvas;
  TakenRoom taken;
  const auto unnamed = draw_spaces(canvas, view, solved.variant, false, taken);
  CHECK(unnamed.size() == solved.variant.spaces.size());
  const View large(shown_part(solved.variant, geometry::section_of(solved.variant.sheet)), {20, 60},
                   600, 600);
  CHECK(draw_spaces(canvas, large, solved.variant, false, taken).empty());
}

TEST_CASE("pictures of one kind have one scale for all variants of a case") {
  Results results = testing::results_by_hand();
  results.variants.push_back(tools::solved(testing::corner_variant("thick", 0.0, true), {}));
  const double scale = field_scale(results);
  for (const SolvedVariant& solved : results.variants) {
    Results alone = results;
    alone.variants = {solved};
    CHECK(field_scale(alone) >= scale);
    CHECK(section_scale(alone) >= section_scale(results));
  }
  // The scale bars are equally long, which they are not where each is as large as it fits.
  const auto bar = [](const Picture& picture) {
    double width = 0.0;
    for (const Item& item : picture.canvas().items()) {
      const auto* box = std::get_if<Rectangle>(&item);
      if (box != nullptr && box->height == 5.0) width = box->width;
    }
    return width;
  };
  CHECK(bar(drawn_field(results.variants.front(), "", scale)) ==
        bar(drawn_field(results.variants.back(), "", scale)));
  CHECK(bar(drawn_field(results.variants.front(), "", scale / 2)) !=
        bar(drawn_field(results.variants.front(), "", scale)));
}

}  // namespace
