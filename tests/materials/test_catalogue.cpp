// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <regex>
#include <set>
#include <sstream>
#include <string>

#include "materials/catalogue_text.hpp"

using quoin::materials::catalogue_text;

namespace {

// Read as text: what the reader of case files makes of it is tested with that reader.

std::string text() { return std::string(catalogue_text()); }

std::size_t count(const std::string& text, const std::regex& pattern) {
  return static_cast<std::size_t>(std::distance(
      std::sregex_iterator(text.begin(), text.end(), pattern), std::sregex_iterator()));
}

std::set<std::string> captures(const std::string& text, const std::regex& pattern) {
  std::set<std::string> found;
  for (std::sregex_iterator match(text.begin(), text.end(), pattern), end; match != end; ++match) {
    found.insert((*match)[1]);
  }
  return found;
}

const std::regex value(R"(\{value: )");
const std::regex sourced_value(
    R"(\{value: [^{}]+, source: \w+, confidence: (published|memory|typical)\})");

TEST_CASE("every value of the catalogue names its source and how well it is known") {
  CHECK(count(text(), value) > 250);
  CHECK(count(text(), value) == count(text(), sourced_value));
  CHECK(count("{value: 0.8}\n{value: 1, source: M15, confidence: sure}", value) == 2);
  CHECK(count("{value: 0.8}\n{value: 1, source: M15, confidence: sure}", sourced_value) == 0);
}

TEST_CASE("every law of the catalogue with numbers in it names their source") {
  CHECK(count(text(), std::regex(R"(\n    law:)")) == count(text(), std::regex(R"(\n    about:)")));
  const std::size_t laws = count(text(), std::regex(R"(\n    law:)")) -
                           count(text(), std::regex(R"(\n    law: \{constant: \{\}\})"));
  CHECK(laws > 30);
  CHECK(count(text(), std::regex(R"(\n    law source: \w+)")) == laws);
  CHECK(count(text(), std::regex(R"(\n    law confidence: (published|memory|typical))")) == laws);
}

TEST_CASE("the sources the catalogue lists are those it uses") {
  std::set<std::string> used = captures(text(), std::regex(R"(source: (\w+))"));
  const std::size_t begin = text().find("\nsources:\n");
  const std::string sources = text().substr(begin, text().find("\nmaterials:\n") - begin);
  CHECK(captures(sources, std::regex(R"(\n  (\w+): ")")) == used);
}

TEST_CASE("common practice is never called published") {
  CHECK(count(text(), std::regex("source: (practice|mix|pores), confidence: (published|memory)")) ==
        0);
  CHECK(count(text(), std::regex("source: practice, confidence: typical")) > 50);
}

}  // namespace
