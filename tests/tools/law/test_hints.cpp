// SPDX-License-Identifier: Apache-2.0
// Other ways to write a value, which starting cases tell in comments, are read.
#include <doctest/doctest.h>

#include <optional>
#include <regex>
#include <string>

#include "cases/read.hpp"
#include "cases/starting_case.hpp"
#include "cases/text/faults.hpp"

namespace quoin::testing {
namespace {

std::optional<cases::Case> read(const std::string& text) {
  try {
    return cases::case_of(text, "new.yaml");
  } catch (const cases::InputError&) {
    return std::nullopt;
  }
}

/// What stands behind the mark of the probe: another way to write it.
std::string with_other_probe(std::string text) {
  static const std::regex probe(R"(# probes:[^\n]*\n#   A: \[[^\]]*\] *# (\{[^\n]*\})\n)");
  return std::regex_replace(text, probe, "probes:\n  A: $1\n");
}

}  // namespace

TEST_CASE("the other way to place a probe works in every starting case that shows one") {
  std::size_t shown = 0;
  for (const cases::StartingPoint& point : cases::starting_points()) {
    CAPTURE(point.name);
    const std::string text = *cases::starting_case(point.name);
    const std::string other = with_other_probe(text);
    if (other == text) continue;
    ++shown;
    const auto placed = read(other);
    REQUIRE(placed.has_value());
    CHECK(placed->variants.front().probes.size() > 0);
  }
  CHECK(shown == cases::starting_points().size() - 1);  // a sheet has no named places
}

TEST_CASE("every state of moisture that a starting case lists is read") {
  const std::string text = *cases::starting_case("corner");
  const std::string stated = "moisture: sheltered";
  for (const char* state :
       {"dry", "exposed", "damp", "saturated", "0.15 m3/m3", "8 mass-%", "at 80 %"}) {
    CAPTURE(state);
    REQUIRE(text.find(state) != std::string::npos);
    std::string other = text;
    other.replace(other.find(stated), stated.size(), std::string("moisture: ") + state);
    CHECK(read(other).has_value());
  }
}

}  // namespace quoin::testing
