// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <string>

#include "tools/output/overview.hpp"

namespace quoin::tools {
namespace {

/// The table of one row with a chance.
std::string table_of(double chance) {
  OverviewRow row;
  row.title = "Wall";
  row.variant = "as found";
  row.chance = chance;
  return overview_files({row}).at(1).content;
}

bool tells(double chance, const std::string& percent) {
  return table_of(chance).find(",," + percent + ",") != std::string::npos;
}

}  // namespace

TEST_CASE("the overview tells no chance as none and none as certain") {
  CHECK(tells(0.427, "42.7"));
  CHECK(tells(0.0, "0.5"));
  CHECK(tells(1.0, "99.5"));
  CHECK(tells(0.9999, "99.5"));
  CHECK_FALSE(tells(1.0, "100.0"));
}

}  // namespace quoin::tools
