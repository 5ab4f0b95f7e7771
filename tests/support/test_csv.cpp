// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <sstream>
#include <stdexcept>

#include "tests/support/csv.hpp"

using quoin::testing::Csv;
using quoin::testing::csv_of;

namespace {

Csv csv(const std::string& text) {
  std::istringstream stream(text);
  return Csv(stream);
}

TEST_CASE("a table of check values gives its cells by column and row") {
  const Csv table = csv("# Source: invented\nname,value\na,1.5\nb,-2e-3\n");
  REQUIRE(table.rows().size() == 2);
  CHECK(table.rows()[0].text("name") == "a");
  CHECK(table.rows()[1].number("value") == -2e-3);
}

TEST_CASE("a table of check values that could not be checked against is refused") {
  CHECK_THROWS_AS(csv("name,value\na,1\n"), std::runtime_error);             // no source
  CHECK_THROWS_AS(csv("# Source: invented\nname\n"), std::runtime_error);    // no rows
  CHECK_THROWS_AS(csv("# Source: invented\na,b\n1\n"), std::runtime_error);  // too few cells
  CHECK_THROWS_AS(csv("# Source: invented\na\n1,2\n"), std::runtime_error);  // too many
  CHECK_THROWS_AS(csv_of(QUOIN_SOURCE_DIR "/tests/support/no_such.csv"), std::runtime_error);
}

TEST_CASE("a cell that is not a number, or a column that is not there, is never taken as 0") {
  const Csv table = csv("# Source: invented\na,b,c\n1x,,2\n");
  CHECK_THROWS_AS(table.rows()[0].number("a"), std::runtime_error);
  CHECK_THROWS_AS(table.rows()[0].number("b"), std::runtime_error);
  CHECK_THROWS_AS(table.rows()[0].number("d"), std::runtime_error);
  CHECK(table.rows()[0].number("c") == 2.0);
}

}  // namespace
