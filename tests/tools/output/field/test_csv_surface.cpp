// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cmath>
#include <sstream>

#include "materials/moist_air.hpp"
#include "tests/support/within.hpp"
#include "tests/tools/by_hand.hpp"
#include "tools/answer/run.hpp"
#include "tools/output/field/csv_surface.hpp"

using namespace quoin;
using namespace quoin::tools;
using quoin::testing::WithinAbs;

namespace {

/// The records of a CSV text after RFC 4180.
std::vector<std::vector<std::string>> records(const std::string& text) {
  std::vector<std::vector<std::string>> all{{""}};
  bool quoted = false;
  for (std::size_t k = 0; k < text.size(); ++k) {
    const char c = text[k];
    std::string& cell = all.back().back();
    if (quoted && c == '"' && k + 1 < text.size() && text[k + 1] == '"') {
      cell += c;
      ++k;
    } else if (c == '"') {
      quoted = !quoted;
    } else if (!quoted && c == ',') {
      all.back().emplace_back();
    } else if (!quoted && c == '\r') {
      REQUIRE(text[++k] == '\n');
      all.push_back({""});
    } else {
      cell += c;
    }
  }
  all.pop_back();  // the last record ends with a line end
  return all;
}

TEST_CASE("every record has a cell for every heading") {
  const auto all = records(surface_csv(testing::results_named("a, \"b\"\r\nc")));
  REQUIRE(all.size() > 20);
  CHECK(all[0] == std::vector<std::string>{"variant", "space", "material", "x_mm", "y_mm",
                                           "along_mm", "temperature_C", "fRsi",
                                           "surface_humidity_percent"});
  for (const auto& record : all) CHECK(record.size() == 9);
  CHECK(all[1][0] == "a, \"b\"\uFFFD c");
}

TEST_CASE("the surface is walked without a step back and holds the coldest spot") {
  const Results results = results_of(testing::small_case(), "a.yaml", {});
  const auto all = records(surface_csv(results));
  double before = -1.0, coldest = 100.0, coldest_factor = 1.0;
  for (std::size_t k = 1; k < all.size(); ++k) {
    if (all[k][0] != "as found") continue;
    CHECK(all[k][1] == "hall");
    const double along = std::stod(all[k][5]);
    CHECK(along > before);
    before = along;
    if (std::stod(all[k][6]) < coldest) {
      coldest = std::stod(all[k][6]);
      coldest_factor = std::stod(all[k][7]);
    }
    const double humidity = materials::surface_humidity(18.0, 0.62, std::stod(all[k][6]));
    CHECK(std::stod(all[k][8]) == WithinAbs{100 * humidity, 0.02});  // as printed
  }
  CHECK(before == WithinAbs{2000.0, 1e-6});  // two legs of 1 m
  const solver::Spot& spot = results.variants[0].surface.airs[0].coldest;
  // the estimate is extrapolated beyond the finest grid, by no more than its band
  CHECK(coldest == WithinAbs{spot.temperature.value, spot.temperature.band + 1e-3});
  CHECK(coldest_factor == WithinAbs{spot.factor.value, spot.factor.band + 1e-4});
}

TEST_CASE("fRsi of a row is its temperature between outside and inside") {
  for (const auto& record : records(surface_csv(results_of(testing::small_case(), "a.yaml", {})))) {
    if (record[0] == "variant") continue;
    CHECK(std::stod(record[7]) == WithinAbs{(std::stod(record[6]) - 1.0) / 17.0, 2e-5});  // printed
  }
}

TEST_CASE("a humidity that is not known leaves its cell empty") {
  Results results = testing::results_by_hand();
  for (SolvedVariant& solved : results.variants) {
    solved.variant.spaces[SpaceId(0u)].humidity.reset();
  }
  const auto all = records(surface_csv(results));
  CHECK(all[1][8].empty());
  CHECK_FALSE(all[1][6].empty());
}

TEST_CASE("text that a spreadsheet would run begins with an apostrophe") {
  for (const char* evil :
       {"=1+1",      "+1",      "-1",      "@SUM(A1)",      "\t=1",     "\r=1",
        "\n=1",      "|ls",     " =1",     "\u00A0=1",      "\uFEFF=1", "\u200B=1",
        "\uFF1D1+1", "\uFF0B1", "\uFF0D1", "\uFF20SUM(A1)", "\uFF5Cls", "\uFE661",
        "\uFE621",   "\u207A1", "\u22121", "\u3000=1"}) {
    CAPTURE(evil);
    CHECK(csv_cell(evil).find('\'') <= 1);  // first, or first within quotes
  }
  for (const char* good : {"hall", "a-b=c", "a|b", "\uFFE0", "1 = 1", "\u2013 as found", ""}) {
    CAPTURE(good);
    CHECK(csv_cell(good) == good);
  }
}

TEST_CASE("text that would steer a terminal or end a line does neither") {
  CHECK(csv_cell("\x1B[31mred\x07") == "\uFFFD[31mred\uFFFD");
  CHECK(csv_cell("\u009B31m\u202Eturned") == "\uFFFD31m\uFFFDturned");
  CHECK(csv_cell("two\nlines") == "two lines");
  CHECK(csv_cell("two\r\nlines") == "two\uFFFD lines");
  CHECK(csv_cell("not\xFFUTF-8") == "not\uFFFDUTF-8");
}

TEST_CASE("a cell holds nothing that steers a terminal") {
  CHECK(csv_cell("\x1b[2Jhall") == "\uFFFD[2Jhall");
  CHECK(csv_cell("a\xc2\x9b"
                 "b\u202e"
                 "c") == "a\uFFFDb\uFFFDc");
  CHECK(csv_cell("höll 墙") == "höll 墙");
}

TEST_CASE("cells are quoted where RFC 4180 asks for it, and only there") {
  CHECK(csv_cell("a b") == "a b");
  CHECK(csv_cell("a,b") == "\"a,b\"");
  CHECK(csv_cell("say \"x\"") == "\"say \"\"x\"\"\"");
  CHECK(csv_cell("").empty());
}

}  // namespace
