// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <tuple>

#include "tests/coverage/coverage.hpp"
#include "tests/coverage/twins.hpp"

namespace quoin::testing {
namespace {

using cases::ExplanationKind;

constexpr auto steady = Weather::steady;

Recipe brief(Detail detail, ExplanationKind truth, Wrong wrong = Wrong::nothing) {
  return {detail, truth, wrong, steady, Read::contact, false, true};
}

}  // namespace

TEST_CASE("ranges of sixty made-up surveys hold the truth about as often as they say") {
  Coverage all;
  for (const auto& [detail, truth, first] :
       {std::tuple{Detail::corner_225, ExplanationKind::conducts_better, 0U},
        std::tuple{Detail::corner_327, ExplanationKind::as_drawn, 20U},
        std::tuple{Detail::wall_225, ExplanationKind::conducts_less, 40U}})
    all += coverage_of(brief(detail, truth), 20, first);
  REQUIRE(all.told >= 50);
  // 0.90 less three times what 60 surveys scatter.
  CHECK(share(all.ratio, all.told) >= 0.78);
  CHECK(share(all.conductivity, all.conductivity_told) >= 0.78);
  CHECK(share(all.factor, all.factor_told) >= 0.78);
  CHECK(all.named - all.named_right <= 2);
}

TEST_CASE("least squares that trust thermometers and airs hold the truth far too rarely") {
  std::size_t told = 0, ratio = 0, conductivity = 0;
  for (std::uint32_t number = 0; number < 20; ++number) {
    const MadeSurvey made =
        made_survey(brief(Detail::corner_225, ExplanationKind::conducts_better), number);
    const auto held = held_with(Slip::naive, made);
    if (!held) continue;
    ++told;
    ratio += held->ratio ? 1 : 0;
    conductivity += held->conductivity ? 1 : 0;
  }
  REQUIRE(told >= 15);
  CHECK(std::min(share(ratio, told), share(conductivity, told)) < 0.6);
}

}  // namespace quoin::testing
