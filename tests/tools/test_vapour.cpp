// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "cases/read.hpp"
#include "cases/write_sheet.hpp"
#include "materials/moist_air.hpp"
#include "tests/support/within.hpp"
#include "tools/json_vapour.hpp"
#include "tools/output/html/html_report.hpp"
#include "tools/output/report/parts.hpp"
#include "tools/output/text/text_report.hpp"
#include "tools/run.hpp"
#include "tools/vapour_conditions.hpp"
#include "tools/vapour_words.hpp"

namespace quoin::testing {
namespace {

tools::Results results_of(const std::string& text) {
  return tools::results_of(cases::case_of(text, "case.yaml"), "case.yaml", {}, {});
}

tools::SolvedVariant solved(const std::string& text) { return results_of(text).variants.front(); }

const std::string layers = R"(
materials:
  plaster: {conductivity: 0.80, density: 1600, vapour resistance: {dry: 10}}
  board: {conductivity: 0.040, density: 60, vapour resistance: {dry: 1}}
  brick: {conductivity: 0.77, density: 1700, vapour resistance: {dry: 10, wet: 5}}
  render: {conductivity: 0.80, density: 1800, vapour resistance: {dry: 15}}
section:
  wall:
    layers:
      - {material: plaster, thickness: 15}
      - {material: board, thickness: 60}
      - {material: brick, thickness: 330}
      - {material: render, thickness: 20}
)";

/// The wall of the chain of layers, see tests/verification/test_vapour.cpp.
const std::string chain = R"(quoin: 1
spaces:
  room: {is: inside, temperature: 20, humidity: 50}
  yard: {is: outside, temperature: -5, humidity: 80}
)" + layers;

const std::string climate = R"(
climate:
  outside temperature: [-3, -2, 2, 8, 13, 16, 18, 17, 13, 8, 3, -1]
  outside humidity: [88, 86, 82, 78, 76, 77, 78, 79, 82, 85, 87, 88]
)";

constexpr double day = 86400.0;

}  // namespace

TEST_CASE("a case that asks is told how much condenses where and by when") {
  const tools::SolvedVariant wall = solved(chain + "vapour: {days: 90}\n");
  REQUIRE(wall.vapour);
  REQUIRE(wall.vapour->stated);
  REQUIRE(wall.vapour->stated->places.size() == 1);
  const solver::CondensingPlace& place = wall.vapour->stated->places.front();
  // Source: computed, exact sums in series, printed with four digits.
  CHECK(place.rate.value / place.length == WithinRel{4.947e-7, 1e-4});
  CHECK(place.rate.band < 1e-6 * place.rate.value);  // layers in series are exact on any grid
  const auto json = tools::vapour_json(wall);
  CHECK(json["places"][0]["where"] == "between board and brick");
  CHECK(json["places"][0]["rate_g_m2_day"].get<double>() == WithinRel{42.74, 2e-4});
  CHECK(json["places"][0]["water_after_days_kg_m2"].get<double>() == WithinRel{3.847, 2e-4});
  CHECK(json["verdict"] == "none");
  CHECK_FALSE(solved(chain).vapour);
}

TEST_CASE("the months carry water on as a chain of layers does by hand") {
  // By hand: the interface board | brick is the one that condenses; each month it takes or gives
  // what comes from inside less what goes outside, at saturation while it holds water.
  const tools::SolvedVariant wall = solved(chain + climate + "vapour: by month\n");
  REQUIRE(wall.vapour->year);
  const tools::VapourYear& year = *wall.vapour->year;
  REQUIRE(year.first);
  REQUIRE(year.places.size() == 1);
  const std::array<double, 12> outside{-3, -2, 2, 8, 13, 16, 18, 17, 13, 8, 3, -1};
  const std::array<double, 12> humid{.88, .86, .82, .78, .76, .77, .78, .79, .82, .85, .87, .88};
  const std::array<double, 12> days{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  const double before = 0.25 + 0.015 / 0.80 + 0.060 / 0.040;
  const double after = 0.330 / 0.77 + 0.020 / 0.80 + 0.04;
  const double inside = 0.50 * materials::saturation_pressure(20.0);
  double water = 0.0;
  bool was_dry_again = false;
  for (std::size_t k = 0; k < 12; ++k) {
    const std::size_t month = (*year.first + k) % 12;
    const double there = 20.0 - (20.0 - outside[month]) * before / (before + after);
    const double saturated = materials::saturation_pressure(there);
    const double out = humid[month] * materials::saturation_pressure(outside[month]);
    const double rate = 2.0e-10 * ((inside - saturated) / (0.015 * 10 + 0.060) -
                                   (saturated - out) / (0.330 * 10 + 0.020 * 15));
    water = std::max(0.0, water + rate * days[month] * day);
    if (k == 0) CHECK(water > 0.0);
    CAPTURE(month);
    CHECK(year.places.front().water[k] == WithinAbs{water, 1e-6});  // kg/m2, of 1 and more
    was_dry_again = was_dry_again || (k > 0 && water == 0.0);
  }
  CHECK(was_dry_again);  // the sum reaches both kinds of months
  CHECK(year.places.front().water[year.places.front().most] > 1.0);
}

TEST_CASE("foil hides from diffusion what an open lining shows") {
  std::string foiled = chain;
  const std::string open = "board: {conductivity: 0.040, density: 60, vapour resistance: {dry: 1}}";
  foiled.replace(foiled.find(open), open.size(),
                 "board: {conductivity: 0.040, density: 60, vapour resistance: {dry: 1000000}}");
  CHECK(solved(foiled + "vapour: as stated\n").vapour->stated->places.empty());
  CHECK(!solved(chain + "vapour: as stated\n").vapour->stated->places.empty());
}

TEST_CASE("a material wetter than damp has the vapour resistance measured wet") {
  const std::string layer = "{material: brick, thickness: 330}";
  const auto brick_openness = [&](const std::string& moisture) {
    std::string text = chain;
    text.replace(text.find(layer), layer.size(),
                 "{material: brick, thickness: 330, moisture: " + moisture + "}");
    const cases::Case read = cases::case_of(text, "case.yaml");
    return tools::vapour_physics_of(read.variants.front()).openness[geometry::RegionId(2u)];
  };
  CHECK(brick_openness("0.09 m3/m3") == 1.0 / 10);  // no saturation is known: damp is 0.10
  CHECK(brick_openness("0.11 m3/m3") == 1.0 / 5);
}

TEST_CASE("coats lie on fabric, not on frames, and a space of the same air has them, too") {
  const cases::Case read = cases::case_of(R"(quoin: 1
spaces:
  room: {is: inside, temperature: 20, humidity: 50, coat: gloss paint}
  niche: {like: room, behind: furniture}
  bare niche: {like: room, behind: furniture, coat: none}
  yard: {is: outside, temperature: -5, humidity: 80, coat: 0.4 m}
section:
  sheet:
    - {fill: room, x: [-100, 0], y: [100, 300]}
    - {fill: niche, x: [-100, 0], y: [50, 100]}
    - {fill: bare niche, x: [-100, 0], y: [0, 50]}
    - {fill: common brick, x: [0, 225], y: [0, 200]}
    - {fill: oak across the grain, part: frame, x: [0, 225], y: [200, 300]}
    - {fill: yard, x: [225, 325], y: [0, 300]}
)",
                                          "case.yaml");
  const solver::VapourPhysics physics = tools::vapour_physics_of(read.variants.front());
  const geometry::RegionId brick(0u), frame(1u);
  CHECK(physics.coat[geometry::SpaceId(0u)][brick] == 3.0);
  CHECK(physics.coat[geometry::SpaceId(1u)][brick] == 3.0);
  CHECK(physics.coat[geometry::SpaceId(2u)][brick] == 0.0);
  CHECK(physics.coat[geometry::SpaceId(3u)][brick] == 0.4);
  CHECK(physics.coat[geometry::SpaceId(0u)][frame] == 0.0);
}

namespace {

/// A one-brick wall full of 22.3 kg/m2 of water, in autumn weather.
const std::string wet_wall = R"(quoin: 1
spaces:
  kitchen: {is: inside, temperature: 18.5, humidity: 60, coat: gloss paint}
  outdoors: {is: outside, temperature: 10, humidity: 78, wind: 2}
materials:
  brick: {conductivity: 1.0, density: 1700, vapour resistance: {dry: 10}}
section:
  wall:
    layers: [{material: brick, thickness: 225, moisture: 0.099 m3/m3}]
drying:
  wet: brick
  coats: [none, limewash, acrylic masonry paint, plastic masonry paint, elastomeric paint]
)";

}  // namespace

TEST_CASE("paint keeps a wall wet for years that limewash dries in months") {
  const tools::SolvedVariant wall = solved(wet_wall);
  REQUIRE(wall.drying);
  const tools::DryingLedger& ledger = *wall.drying;
  CHECK(ledger.excess == WithinAbs{22.275, 1e-9});  // kg a metre of a wall 1 m wide
  REQUIRE(ledger.rows.size() == 5);
  // Source: a coarse calculation of the trade, outward diffusion only, 22 kg/m2: half a year, 5, 10
  // and 19 years. The temperature of the room it had is not known, so within a third.
  const std::array<double, 4> years{0.5, 5.0, 10.0, 19.0};
  for (std::size_t k = 0; k < years.size(); ++k) {
    CAPTURE(ledger.rows[k + 1].outside_coat);
    const double outwards = ledger.rows[k + 1].out[1];
    CHECK(22.0 / outwards / (365.25 * day) == WithinRel{years[k], 0.33});
  }
  // By hand: film and coat in series outside, 0.002434 m of film in 2 m/s.
  const double rse = wall.surface.physics.surface_resistance(
      geometry::SpaceId(1u), geometry::RegionId(0u), geometry::Facing::sideways);
  const double u = 8.5 / (0.25 + 0.225 + rse);
  const double drive =
      materials::saturation_pressure(10.0 + u * rse) - 0.78 * materials::saturation_pressure(10.0);
  CHECK(ledger.rows[3].out[1] ==
        WithinRel{2.0e-10 * drive / (1.0 + 2.0e-10 / (6.85e-9 * 12.0)), 1e-6});
  CHECK(ledger.rows[0].cooling > 0.5);  // bare: so fast that it cools, which is said
  CHECK(ledger.rows[3].cooling < 0.05);
  const std::string text = tools::text_report(results_of(wet_wall), {.width = 2000});
  CHECK(text.find("cool their surface") != std::string::npos);
}

TEST_CASE(
    "what leaves a wet band outwards does not depend on how much dry wall is drawn beside it") {
  const auto band_in = [](const std::string& height) {
    return solved(R"(quoin: 1
spaces:
  room: {is: inside, temperature: 20, humidity: 50}
  outdoors: {is: outside, temperature: 4, humidity: 85}
materials: {wall brick: {like: common brick, moisture: sheltered}}
section:
  wall: {layers: [[lime plaster, 15], [wall brick, 225]], height: )" +
                  height + R"(}
  bands: [{of: wall brick, y: [0, 1000], moisture: saturated}]
drying: {coats: [limewash]}
)");
  };
  const tools::SolvedVariant low = band_in("2 m"), high = band_in("4 m");
  CHECK(high.drying->rows[0].out[1] == WithinRel{low.drying->rows[0].out[1], 0.1});
  CHECK(high.drying->rows[0].out[1] > 0.0);
  CHECK(high.drying->rows[0].seconds == WithinRel{low.drying->rows[0].seconds, 0.1});
}

TEST_CASE(
    "a room too humid for a wet wall takes nothing from it, and what it wets is not counted") {
  std::string humid = wet_wall;
  humid.replace(humid.find("humidity: 60"), 12, "humidity: 95");
  const tools::SolvedVariant wall = solved(humid);
  const tools::DryingRow& painted = wall.drying->rows.back();
  CHECK(painted.out[0] == WithinAbs{0.0, 1e-15});  // beside 1e-9 and more outwards
  CHECK(painted.out[1] > 1e-9);
  CHECK(tools::drying_time(INFINITY) == "never");
}

TEST_CASE("a coat inside is compared with each outside") {
  const tools::SolvedVariant wall = solved(wet_wall + "  inside coats: [none, vinyl wallpaper]\n");
  REQUIRE(wall.drying->rows.size() == 10);
  CHECK(wall.drying->rows[0].inside_coat == "none");
  CHECK(wall.drying->rows[9].inside_coat == "vinyl wallpaper");
  CHECK(wall.drying->rows[4].out[0] > 20.0 * wall.drying->rows[9].out[0]);
  CHECK(wall.drying->rows[4].out[1] == WithinRel{wall.drying->rows[9].out[1], 1e-9});
}

TEST_CASE("a dry wall has nothing to dry") {
  std::string dry = wet_wall;
  dry.replace(dry.find(", moisture: 0.099 m3/m3"), 23, "");
  const tools::SolvedVariant wall = solved(dry);
  REQUIRE(wall.drying);
  CHECK(wall.drying->rows.empty());
}

TEST_CASE("what vapour does is told without a verdict, and what is left out with it") {
  const tools::Results results =
      results_of(chain + "vapour: {days: 90}\ndrying: {coats: [limewash]}\n");
  std::string said;
  for (const tools::report::Block& block : tools::report::vapour_part(results)) {
    if (const auto* paragraph = std::get_if<tools::report::Paragraph>(&block))
      said += paragraph->words;
    if (const auto* heading = std::get_if<tools::report::Heading>(&block)) said += heading->words;
  }
  for (const std::string& told : {said}) {
    CHECK(told.find("no verdict") != std::string::npos);
    CHECK(told.find("EN 15026") != std::string::npos);
    CHECK(told.find("between board and brick") != std::string::npos);
    for (const char* verdict : {"safe", "fine", "acceptable"})
      CHECK(told.find(verdict) == std::string::npos);
  }
  CHECK(tools::report::vapour_part(results_of(chain)).empty());
}

TEST_CASE("water on the warm side of a membrane is told to be there, by the name of the membrane") {
  const auto with = [](const std::string& membrane) {
    std::string text = chain;
    const std::string before = "      - {material: brick, thickness: 330}\n";
    text.insert(text.find(before), membrane);
    return solved(text + "vapour: {days: 90}\n");
  };
  const auto place = [](const tools::SolvedVariant& wall) {
    return tools::vapour_json(wall)["places"][0]["where"].get<std::string>();
  };
  CHECK(place(with("      - {membrane: 100 m, name: damp proof paint}\n")) ==
        "between board and damp proof paint");
  CHECK(place(with("      - {membrane: tight}\n")) == "between board and tight membrane");
  CHECK(place(with("      - {membrane: 100 m}\n")) == "between board and membrane of sd 100 m");
  CHECK(place(with("")) == "between board and brick");
  // On the warm side it keeps the wall dry; read as a sheet by hand the case is the same.
  std::string text = chain;
  text.insert(text.find("      - {material: board"), "      - {membrane: 100 m}\n");
  const tools::SolvedVariant dry = solved(text + "vapour: as stated\n");
  CHECK(dry.vapour->stated->places.empty());
  const tools::SolvedVariant again = solved(cases::sheet_text(dry.variant));
  CHECK(again.vapour->stated->places.empty());
  CHECK(again.vapour->stated->field.flows[geometry::SpaceId(0u)] ==
        WithinRel{dry.vapour->stated->field.flows[geometry::SpaceId(0u)], 1e-9});
}

TEST_CASE("two layers of one material are told apart where water gathers") {
  const std::string two = R"(quoin: 1
spaces:
  room: {is: inside, temperature: 20, humidity: 65}
  yard: {is: outside, temperature: -10, humidity: 80}
materials:
  plaster: {conductivity: 0.80, density: 1600, vapour resistance: {dry: 100}}
  board: {conductivity: 0.040, density: 60, vapour resistance: {dry: 1}}
section:
  wall:
    layers:
      - {material: board, thickness: 30}
      - {material: plaster, thickness: 10}
      - {material: board, thickness: 60}
      - {material: plaster, thickness: 10}
vapour: as stated
)";
  const auto places = tools::vapour_json(solved(two))["places"];
  REQUIRE(places.size() >= 2);
  std::vector<std::string> where;
  for (const auto& place : places) where.push_back(place["where"].get<std::string>());
  std::sort(where.begin(), where.end());
  CHECK(std::adjacent_find(where.begin(), where.end()) == where.end());
  for (const std::string& words : where) {
    CHECK(words.find("from room") != std::string::npos);
    CHECK(words.find("between board and plaster, no.") == 0);
  }
}

TEST_CASE("a coat of paint goes on walls, not on the ground") {
  const std::string foot = R"(quoin: 1
spaces:
  room: {is: inside, temperature: 20, humidity: 50}
  yard: {is: outside, temperature: 5, humidity: 80, coat: 2 m}
section:
  wall base:
    layers: [{material: common brick, thickness: 225}]
    foundation: [{material: common brick, thickness: 225}]
    footing: limestone rubble
    ground: clay soil
)";
  const cases::Variant variant = cases::case_of(foot, "case.yaml").variants.front();
  const solver::VapourPhysics physics = tools::vapour_physics_of(variant);
  const auto& base = std::get<geometry::WallBase>(*variant.recipe);
  CHECK(physics.coat[base.outside][base.ground] == 0.0);
  CHECK(physics.coat[base.outside][base.layers.front().region] == 2.0);
}

}  // namespace quoin::testing
