// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <string>

#include "cases/read.hpp"
#include "tools/html_report.hpp"
#include "tools/run.hpp"

namespace quoin::testing {
namespace {

std::string page_titled(const std::string& title) {
  const std::string text = "quoin: 1\ntitle: " + title + R"(
spaces:
  room: {is: inside, temperature: 18.5, humidity: 62}
  yard: {is: outside, temperature: 2}
section:
  wall: {layers: [{material: common brick, thickness: 225}]}
)";
  return tools::report_page(tools::results_of(cases::case_of(text, "wall.yaml"), "wall.yaml", {}));
}

std::size_t count(const std::string& text, const std::string& word) {
  std::size_t found = 0;
  for (std::size_t at = 0; (at = text.find(word, at)) != std::string::npos; ++at) ++found;
  return found;
}

}  // namespace

TEST_CASE("the report asks for nothing over the network and runs no script") {
  const std::string page = page_titled("A wall");
  CHECK(page.find("<script") == std::string::npos);
  CHECK(page.find("http:") == std::string::npos);
  CHECK(page.find("https:") == std::string::npos);
  CHECK(page.find("lang=\"en\"") != std::string::npos);
  CHECK(count(page, "<img ") == 2);
  CHECK(count(page, "<img alt=\"") == 2);
  CHECK(page.size() < 2'000'000);
}

TEST_CASE("a hostile title does no harm in the report") {
  const std::string page = page_titled("'<script>alert(\"x\")</script> & \xF0\x9F\x98\x80'");
  CHECK(page.find("<script") == std::string::npos);
  CHECK(page.find("&lt;script&gt;") != std::string::npos);
  CHECK(count(page_titled(std::string(9000, 'w')), "<h1>") == 1);
}

TEST_CASE("the report tells the verdict before all else, and carries cautions and a blank") {
  const std::string page = page_titled("A wall");
  CHECK(page.find("Below 11.1 \u00b0C it gets wet") < page.find("Side by side"));
  CHECK(page.find("Lead paint") != std::string::npos);
  CHECK(page.find("Remarks of the surveyor") != std::string::npos);
  CHECK(page.find("certified") == std::string::npos);
}

}  // namespace quoin::testing
