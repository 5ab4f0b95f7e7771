// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <string>

#include "cases/read.hpp"
#include "cases/text/harmless.hpp"
#include "tools/answer/run.hpp"
#include "tools/disk/base64.hpp"
#include "tools/output/html/page_data.hpp"
#include "tools/output/html/parts.hpp"
#include "tools/output/html/report.hpp"
#include "tools/output/report/parts.hpp"

namespace quoin::testing {
namespace {

tools::Results results_titled(const std::string& title) {
  const std::string text = "quoin: 1\ntitle: " + title + R"(
spaces:
  room: {is: inside, temperature: 18.5, humidity: 62}
  yard: {is: outside, temperature: 2}
section:
  wall: {layers: [{material: common brick, thickness: 225}]}
)";
  return tools::results_of(cases::case_of(text, "wall.yaml"), "wall.yaml", {});
}

std::string page_titled(const std::string& title) {
  return tools::report_page(results_titled(title));
}

std::size_t count(const std::string& text, const std::string& word) {
  std::size_t found = 0;
  for (std::size_t at = 0; (at = text.find(word, at)) != std::string::npos; ++at) ++found;
  return found;
}

}  // namespace

TEST_CASE("the report asks for nothing over the network and runs no script but its own") {
  const std::string page = page_titled("A wall");
  CHECK(page.find("http:") == std::string::npos);
  CHECK(page.find("https:") == std::string::npos);
  CHECK(page.find("default-src 'none'") != std::string::npos);
  CHECK(page.find("script-src 'sha256-") != std::string::npos);
  CHECK(page.find("unsafe-inline") == std::string::npos);
  CHECK(count(page, "<script") == 2);  // the data and the script
  CHECK(page.find("lang=\"en\"") != std::string::npos);
  CHECK(count(page, "<img ") == 5);  // section, field, surface, flow
  CHECK(count(page, "<img alt=\"") == 5);
  CHECK(page.size() < 2'000'000);
}

TEST_CASE("a hostile title does no harm in the report") {
  const std::string page =
      page_titled("'</title></script><script>alert(\"x\")</script> & \xF0\x9F\x98\x80'");
  CHECK(count(page, "<script") == 2);
  CHECK(count(page, "</script") == 2);
  CHECK(count(page, "</title") == 1);
  CHECK(page.find("&lt;script&gt;") != std::string::npos);
  CHECK(count(page_titled(std::string(9000, 'w')), "<h1>") == 1);
}

TEST_CASE("no character in a page steers, turns or hides") {
  const std::string page = page_titled(R"("a\x9B31m\u202E b\uFEFF\e[31m c")");
  CHECK(page.find("31m\uFFFD b") != std::string::npos);
  CHECK(page == cases::harmless(page));
}

TEST_CASE("nothing in the data of the page can end the element that holds it") {
  tools::Results results = results_titled("A wall");
  results.variants.front().variant.name = "</script><!-- & \xF0\x9F\x98\x80 \"'";
  const std::string data = tools::page_data(results);
  CHECK(data.find_first_of("<>&") == std::string::npos);
  CHECK(data.find("\\u003c/script\\u003e") != std::string::npos);
}

TEST_CASE("a text in a style sheet stays a string") {
  CHECK(tools::css_string("a\"}</style>") == R"("a\22 \7d \3c \2f style\3e ")");
  CHECK(tools::css_string("ψ 2") == "\"ψ 2\"");
}

TEST_CASE("base64 has the values of RFC 4648") {
  const auto coded = [](const std::string& text) {
    return tools::base64({text.begin(), text.end()});
  };
  CHECK(coded("") == "");
  CHECK(coded("f") == "Zg==");
  CHECK(coded("fo") == "Zm8=");
  CHECK(coded("foo") == "Zm9v");
  CHECK(coded("foob") == "Zm9vYg==");
  CHECK(coded("fooba") == "Zm9vYmE=");
  CHECK(coded("foobar") == "Zm9vYmFy");
}

TEST_CASE("a grid too fine for the page is left out of it") {
  const tools::Results results = results_titled("A wall");
  CHECK(tools::page_data(results).find("\"grid\"") != std::string::npos);
  CHECK(tools::page_data(results, 10).find("\"grid\"") == std::string::npos);
}

TEST_CASE(
    "the report tells the verdict before all else, and carries the case, cautions and a blank") {
  const std::string page = page_titled("A wall");
  CHECK(page.find("class=\"answer\"") < page.find("<h2>"));
  CHECK(page.find("<h2>How it comes out") < page.find("<h2>All variants"));
  CHECK(page.find("{is: inside, temperature: 18.5, humidity: 62}") != std::string::npos);
  CHECK(page.find("Lead paint") != std::string::npos);
  CHECK(page.find("Remarks of the surveyor") != std::string::npos);
  CHECK(page.find("certified") == std::string::npos);
}

TEST_CASE("variants that share a row of a table are named beside it") {
  tools::SharedRows<tools::report::Row> shared;
  shared.add("as found", {tools::report::words_cell("brick")});
  shared.add("dried out", {tools::report::words_cell("brick")});
  shared.add("as found", {tools::report::words_cell("plaster")});
  const auto rows = tools::report::rows_of(shared, 2);
  REQUIRE(rows.size() == 2);
  CHECK(rows[0][0].words == "all");
  CHECK(rows[1][0].words == "as found");
}

}  // namespace quoin::testing
