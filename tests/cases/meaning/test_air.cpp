// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <string>

#include "cases/write_sheet.hpp"
#include "materials/moist_air.hpp"
#include "tests/cases/read_support.hpp"
#include "tests/support/within.hpp"

using quoin::testing::faults_of;
using quoin::testing::read;
using quoin::testing::WithinAbs;
using quoin::testing::WithinRel;
using namespace quoin::cases;

namespace {

const std::string section = "section: {wall: {layers: [[common brick, 330]]}}\n";

/// A case with these spaces; all invented.
std::string with_spaces(const std::string& spaces) {
  return "quoin: 1\nspaces:\n" + spaces + section;
}

/// The same with a third space, painted before the upper half of the wall.
std::string painted(const std::string& spaces, const std::string& third) {
  return "quoin: 1\nspaces:\n" + spaces +
         "section:\n  sheet:\n"
         "    - {fill: common brick, x: [0, 330], y: [0, 1000]}\n"
         "    - {fill: yard, x: [-100, 0], y: [0, 1000]}\n"
         "    - {fill: hall, x: [330, 430], y: [0, 500]}\n"
         "    - {fill: " +
         third + ", x: [330, 430], y: [500, 1000]}\n";
}

const Space& space_of(const Case& read, const std::string& name) {
  for (const Space& space : read.variants.front().spaces) {
    if (space.name == name) return space;
  }
  FAIL(name);
  return *read.variants.front().spaces.begin();
}

const std::string year =
    "  outside temperature: [4, 4, 6, 8, 11, 14, 17, 16, 14, 10, 6, 4]\n"
    "  outside humidity: [88, 86, 82, 78, 76, 77, 78, 79, 82, 85, 87, 88]\n";

const std::string rooms =
    "  hall: {is: inside, temperature: 18, humidity: 62}\n"
    "  yard: {is: outside, temperature: 2, humidity: 90}\n";

std::string table_of_year(const std::string& january) {
  std::string table = "# invented\nmonth,outside temperature,outside humidity\n" + january;
  for (int month = 2; month <= 12; ++month) table += std::to_string(month) + ",8,80\n";
  return table;
}

Case read_with_table(const std::string& table) {
  return case_of(with_spaces(rooms) + "climate: {table: year.csv}\n", "case.yaml",
                 [&](const std::string& name) -> std::optional<std::string> {
                   if (name != "year.csv") return std::nullopt;
                   return table;
                 });
}

TEST_CASE("the humidity inside by class is that of the outside air and what the class adds") {
  const Case cases =
      read(with_spaces("  hall: {is: inside, temperature: 18, humidity class: 3}\n"
                       "  yard: {is: outside, temperature: 0, humidity: 90}\n"));
  // By hand: (0.90 x 610.5 + 810) / 2062.8 Pa, psat(18) by the formula of ISO 13788.
  CHECK(*space_of(cases, "hall").humidity == WithinAbs{0.6590, 5e-5});
  const Case safer = read(with_spaces(
      "  hall: {is: inside, temperature: 18, humidity class: {class: 3, safety factor: 1.1}}\n"
      "  yard: {is: outside, temperature: 0, humidity: 90}\n"));
  CHECK(*space_of(safer, "hall").humidity == WithinAbs{0.6983, 5e-5});  // 891 in place of 810 Pa
}

TEST_CASE("moisture production and air change balance") {
  const Case cases =
      read(with_spaces("  hall: {is: inside, temperature: 20, moisture production: "
                       "{rate: 300 g/h, volume: 150 m3, air change: 0.5 1/h}}\n"
                       "  yard: {is: outside, temperature: 0, humidity: 80}\n"));
  // By hand: 0.3 / (0.5 x 150) = 0.004 kg/m3, x 461.5 x 293.15 = 541.1 Pa; psat(20) 2336.95 Pa.
  CHECK(*space_of(cases, "hall").humidity == WithinAbs{(0.8 * 610.5 + 541.15) / 2336.95, 5e-5});
}

TEST_CASE("a logged reading gives itself back in the weather it was taken in") {
  const Case cases = read(
      with_spaces("  hall: {is: inside, temperature: 19, logged: {temperature: 19, humidity: 58, "
                  "outside temperature: 5, outside humidity: 85}}\n"
                  "  yard: {is: outside, temperature: 5, humidity: 85}\n"));
  CHECK(*space_of(cases, "hall").humidity == WithinRel{0.58, 1e-12});  // a few roundings
}

TEST_CASE("a table of readings counts by its means, of the vapour and not of the humidity") {
  const auto read_log = [](const std::string& table) {
    return case_of(with_spaces("  hall: {is: inside, temperature: 19, logged: {table: log.csv}}\n"
                               "  yard: {is: outside, temperature: 4, humidity: 85}\n"),
                   "case.yaml", [&](const std::string& name) -> std::optional<std::string> {
                     CHECK(name == "log.csv");
                     return table;
                   });
  };
  const Case cases = read_log(
      "# invented\ntime,temperature,humidity,outside temperature,outside humidity\n"
      "1,18,60,2,90\n2,20,50,6,80\n3,18,60,2,90\n4,20,50,6,80\n"
      "5,18,60,2,90\n6,20,50,6,80\n7,18,60,2,90\n8,20,50,6,80\n");
  // By hand: inside 60 % of 2062.8 Pa and 50 % of 2336.9 Pa, mean 1203.1 Pa; outside 90 % of 705.2
  // and 80 % of 934.5 Pa, mean 691.2 Pa, at 4 degC. The mean of the humidities would give 1208.
  const double excess = 1203.1 - 691.2;
  const double expected = (0.85 * quoin::materials::saturation_pressure(4.0) + excess) /
                          quoin::materials::saturation_pressure(19.0);
  CHECK(*space_of(cases, "hall").humidity == WithinAbs{expected, 1e-4});
  REQUIRE(cases.variants[0].remarks.size() == 1);
  CHECK(cases.variants[0].remarks[0].text.find("8 readings") != std::string::npos);
  for (const char* faulty :
       {"temperature,humidity,outside temperature\n18,60,2\n",
        "temperature,humidity,outside temperature,outside humidity\n",
        "temperature,humidity,outside temperature,outside humidity\n18,60,2\n",
        "temperature,humidity,outside temperature,outside humidity\n18,0.6,2,90\n",
        "temperature,humidity,outside temperature,outside humidity\n22,60,18,90\n"}) {
    CAPTURE(faulty);
    CHECK_THROWS_AS((void)read_log(faulty), InputError);
  }
}

TEST_CASE("readings of too few hours are no log of a household") {
  const auto is_read = [](const std::string& rows) {
    const std::string table =
        "time,temperature,humidity,outside temperature,outside humidity\n" + rows;
    try {
      (void)case_of(with_spaces("  hall: {is: inside, temperature: 19, logged: {table: log.csv}}\n"
                                "  yard: {is: outside, temperature: 4, humidity: 85}\n"),
                    "case.yaml", [&](const std::string&) { return std::optional(table); });
    } catch (const InputError& error) {
      REQUIRE(error.faults.size() == 1);
      CHECK(error.faults[0].what.find("too few") != std::string::npos);
      return false;
    }
    return true;
  };
  const auto rows = [](int count, const char* time) {
    std::string text;
    for (int k = 1; k <= count; ++k) text += fmt::format(fmt::runtime(time), k) + ",19,55,4,85\n";
    return text;
  };
  CHECK_FALSE(is_read("2026-01-05 08:00,20,55,2,85\n2026-01-05 20:00,20,56,3,85\n"));
  CHECK_FALSE(is_read(rows(12, "05/01/2026 {:02}:00")));  // many, within half a day
  CHECK_FALSE(is_read(rows(6, "{}")));
  CHECK(is_read(rows(7, "{}")));  // how far apart is not told
  CHECK(is_read(rows(8, "2026-01-{:02}")));
  CHECK(is_read(rows(8, "1/{}/2026")));  // the month first
}

TEST_CASE("a household that gives off more than the air holds gets 100 % and a remark") {
  const Case cases =
      read(with_spaces("  hall: {is: inside, temperature: 10, humidity class: 4}\n"
                       "  yard: {is: outside, temperature: 2, humidity: 95}\n"));
  CHECK(*space_of(cases, "hall").humidity == 1.0);
  REQUIRE(cases.variants[0].remarks.size() == 1);
  CHECK(cases.variants[0].remarks[0].text.find("run wet") != std::string::npos);
}

TEST_CASE("a room that drips is remarked on, an ordinary one is not") {
  const auto remarks = [](const std::string& humidity) {
    return read(with_spaces("  hall: {is: inside, temperature: 18, humidity: " + humidity +
                            "}\n  yard: {is: outside, temperature: 2}\n"))
        .variants[0]
        .remarks.size();
  };
  CHECK(remarks("98") == 1);
  CHECK(remarks("90") == 0);
}

TEST_CASE("an unheated space with b is that far from the inside towards the outside") {
  const Case cases = read(painted(rooms + "  porch: {is: unheated, b: 0.75}\n", "porch"));
  CHECK(space_of(cases, "porch").temperature == 6.0);
  CHECK(space_of(cases, "porch").b == 0.75);
}

TEST_CASE("losses of an unheated space name the spaces it loses to") {
  const Case cases =
      read(painted(rooms + "  porch: {is: unheated, losses: {yard: 6, hall: 2}}\n", "porch"));
  const Space& porch = space_of(cases, "porch");
  REQUIRE(porch.losses.size() == 2);
  CHECK(porch.losses[0].to == SpaceId(1));
  CHECK(porch.losses[0].by_metre == 6.0);
  CHECK(porch.temperature == 6.0);  // (6 x 2 + 2 x 18) / 8, before the section is solved
}

TEST_CASE("furniture before a wall is a resistance by name") {
  const Case cases =
      read(painted(rooms + "  niche: {like: hall, behind: fitted furniture}\n", "niche"));
  CHECK(space_of(cases, "niche").resistance == 1.0);
  CHECK_FALSE(space_of(cases, "hall").resistance);
  const Case corner =
      read(painted(rooms + "  high corner: {like: hall, behind: still air}\n", "high corner"));
  CHECK(space_of(corner, "high corner").resistance == 0.35);
}

TEST_CASE("criteria are known by their test or by the guide that states them") {
  const Case cases = read(with_spaces(rooms) +
                          "criteria:\n"
                          "  mould: {critical humidity: by temperature}\n"
                          "  published: DIN 4108-2\n"
                          "  old: {published: {guide: IP 1/06 dwellings, with Rsi: as computed}}\n"
                          "  fRsi: {fRsi: {threshold: 0.7, Rsi: 0.25}}\n");
  const auto& criteria = cases.variants[0].criteria;
  REQUIRE(criteria.size() == 4);
  CHECK(std::holds_alternative<CriticalHumidity>(criteria[0].test));
  CHECK(std::get<FactorThreshold>(criteria[1].test).threshold == 0.70);
  CHECK(std::get<FactorThreshold>(criteria[1].test).resistance == 0.25);
  CHECK(criteria[1].guide == "DIN 4108-2");
  CHECK(criteria[2].with_any_resistance);
  CHECK(criteria[3].guide.empty());
}

TEST_CASE("a threshold of another Rsi is taken where the surface has that Rsi") {
  const std::string criteria = "criteria: {dwellings: {published: IP 1/06 dwellings}}\n";
  const auto fixed = [](const char* resistance) {
    return fmt::format(
        "  hall: {{is: inside, temperature: 18, humidity: 62, resistance: {}}}\n"
        "  yard: {{is: outside, temperature: 2, humidity: 90}}\n",
        resistance);
  };
  CHECK(faults_of(with_spaces(fixed("0.2")) + criteria).size() == 1);
  CHECK(faults_of(with_spaces(fixed("0.13")) + criteria).empty());
  // Everything is solved with the resistances for heat flow, too, of which 0.13 is one.
  CHECK(faults_of(with_spaces(rooms) + criteria).empty());
}

TEST_CASE("what the refusal of another Rsi says to write is taken as it says") {
  const std::string criterion = "criteria: {dwellings: ";
  const std::string rooms =
      "  hall: {is: inside, temperature: 18, humidity: 62, resistance: 0.2}\n"
      "  yard: {is: outside, temperature: 2, humidity: 90}\n";
  const auto faults =
      faults_of(with_spaces(rooms) + criterion + "{published: IP 1/06 dwellings}}\n");
  REQUIRE(faults.size() == 1);
  const std::string& remedy = faults[0].remedy;
  const std::size_t from = remedy.find('{'), to = remedy.rfind('}');
  REQUIRE(from != std::string::npos);
  const std::string written = remedy.substr(from, to + 1 - from);
  CAPTURE(written);
  const Case cases = read(with_spaces(rooms) + criterion + written + "}\n");
  CHECK(cases.variants[0].criteria[0].with_any_resistance);
  // The twin: in the other way the same is refused.
  const std::string stated = "{published: {guide: IP 1/06 dwellings, with Rsi: as stated}}}\n";
  CHECK(faults_of(with_spaces(rooms) + criterion + stated).size() == 1);
}

TEST_CASE("of a misused b only the misuse is said, of one temperature that it is one") {
  const std::string room = "  hall: {is: inside, temperature: 18, humidity: 62}\n";
  CHECK(faults_of(with_spaces(room + "  yard: {is: outside, b: 0.5}\n")).size() == 1);
  CHECK(faults_of(with_spaces(rooms + "  porch: {is: unheated, b: 1.5}\n")).size() == 1);
  const auto same = faults_of(with_spaces(room + "  yard: {is: outside, temperature: 18}\n"));
  REQUIRE(same.size() == 1);
  CHECK(same[0].what.find("all spaces have the same temperature") != std::string::npos);
}

TEST_CASE("a year reads from lists and, the same, from a table") {
  const Case lists = read(with_spaces(rooms) + "climate:\n  source: invented\n" + year);
  REQUIRE(lists.variants[0].climate);
  CHECK(lists.variants[0].climate->source == "invented");
  CHECK(lists.variants[0].climate->outside_temperature[4] == 11.0);
  CHECK(lists.variants[0].climate->outside_humidity[0] == 0.88);
  CHECK_FALSE(lists.variants[0].climate->inside_humidity);
  const Case table = read_with_table(table_of_year("1,4,88\n"));
  REQUIRE(table.variants[0].climate);
  CHECK(table.variants[0].climate->outside_temperature[0] == 4.0);
  CHECK(table.variants[0].climate->outside_humidity[11] == 0.80);
  CHECK(table.variants[0].climate->sha256.size() == 64);
}

/// The first fault of a case with this table; an empty one where it is read.
Fault fault_of(const std::string& table) {
  try {
    (void)read_with_table(table);
  } catch (const InputError& error) {
    return error.faults.front();
  }
  return Fault{};
}

TEST_CASE("a slip in a table is shown in the table") {
  const Fault ratio = fault_of(table_of_year("1,4,0.88\n"));
  CHECK(ratio.file == "year.csv");
  CHECK(ratio.line == 3);
  CHECK(ratio.column == 5);
  CHECK(ratio.source == "1,4,0.88");
  CHECK(ratio.what.find("this is hardly meant") != std::string::npos);
  CHECK(fault_of(table_of_year("1,4,5,88\n")).what.find("another number of values") !=
        std::string::npos);
  CHECK(fault_of("month,outside temperature\n").what.find("twelve rows") != std::string::npos);
  std::string misspelt = table_of_year("1,4,88\n");
  misspelt.replace(misspelt.find("outside humidity"), 16, "outside humidty ");
  CHECK(fault_of(misspelt).remedy == "did you mean 'outside humidity'?");
}

TEST_CASE("the rows of a year go by the names of their months, and by their order without") {
  const std::string july_first =
      "month,outside temperature,outside humidity\nJuly,17,78\nAUG,16,79\n9,14,82\n10,10,85\n"
      "November,6,87\nDec,4.5,88\n01,4,88\nFebruary,4,86\nMarch,6,82\nApril,8,78\nMay,11,76\n"
      "June,14,77\n";
  const Case named = read_with_table(july_first);
  REQUIRE(named.variants[0].climate);
  CHECK(named.variants[0].climate->outside_temperature[0] == 4.0);
  CHECK(named.variants[0].climate->outside_temperature[6] == 17.0);
  CHECK(named.variants[0].climate->outside_humidity[11] == 0.88);
  std::string unnamed = "outside temperature,outside humidity\n";
  for (int row = 0; row < 12; ++row) unnamed += std::to_string(row) + ",80\n";
  CHECK(read_with_table(unnamed).variants[0].climate->outside_temperature[0] == 0.0);
  CHECK(read_with_table(unnamed).variants[0].climate->outside_temperature[6] == 6.0);
}

TEST_CASE("a month named twice, left out or unknown is shown in the table") {
  const auto faults = [](const std::string& table) {
    try {
      (void)read_with_table(table);
    } catch (const InputError& error) {
      return error.faults;
    }
    return std::vector<Fault>{};
  };
  CHECK(faults(table_of_year("1,4,88\n")).empty());
  const auto twice = faults(table_of_year("July,4,88\n"));
  REQUIRE(twice.size() == 1);
  CHECK(twice[0].file == "year.csv");
  CHECK(twice[0].what == "July is given twice");
  CHECK(twice[0].line == 9);  // the comment, the heading, the first row, 2 to 7
  CHECK(twice[0].column == 1);
  CHECK(twice[0].remedy == "missing: January");
  const auto unknown = faults(table_of_year("Janury,4,88\n"));
  REQUIRE(unknown.size() == 1);
  CHECK(unknown[0].what == "no month is called 'Janury'");
  CHECK(unknown[0].line == 3);
  CHECK(unknown[0].remedy == "did you mean 'January'?");
  CHECK(faults(table_of_year("13,4,88\n")).size() == 1);
}

TEST_CASE("a table whose columns are not separated by commas is told so, both kinds") {
  std::string semicolons = "month;outside temperature;outside humidity\n";
  for (int month = 1; month <= 12; ++month) semicolons += std::to_string(month) + ";4,5;88\n";
  const Fault by_semicolon = fault_of(semicolons);
  CHECK(by_semicolon.what == "semicolons separate the columns of this table");
  CHECK(by_semicolon.line == 1);
  CHECK(by_semicolon.column == 6);
  CHECK(by_semicolon.expected.find("commas") != std::string::npos);
  std::string tabs = semicolons;
  std::replace(tabs.begin(), tabs.end(), ';', '\t');
  CHECK(fault_of(tabs).what == "tabs separate the columns of this table");
  std::string note = table_of_year("1,4,88\n");
  note.insert(2, "a; b ");  // in a remark it may stand
  CHECK(fault_of(note).what.empty());
}

TEST_CASE("the humidity by month is enough for a criterion, but not one that is missing") {
  const std::string mould = "criteria: {mould: {surface humidity: 80}}\nclimate:\n" + year;
  const std::string air =
      "  hall: {is: inside, temperature: 18}\n  yard: {is: outside, temperature: 2}\n";
  const std::string by_month = "  inside humidity: [50,50,50,50,50,60,60,60,60,50,50,50]\n";
  CHECK(faults_of(with_spaces(air) + mould + by_month).empty());
  REQUIRE(faults_of(with_spaces(air) + mould).size() == 1);
  CHECK(read(with_spaces(air) + "climate:\n" + year + by_month).variants[0].criteria.size() == 1);
  CHECK(read(with_spaces(air) + "climate:\n" + year).variants[0].criteria.empty());
}

TEST_CASE("what is written as a sheet reads back with its air, criteria and year") {
  const Case once = read(painted("  hall: {is: inside, temperature: 18, humidity class: 3}\n"
                                 "  yard: {is: outside, temperature: 2, humidity: 90}\n"
                                 "  porch: {is: unheated, losses: {yard: 6}}\n"
                                 "  niche: {like: hall, behind: furniture}\n",
                                 "niche") +
                         "    - {fill: porch, x: [0, 330], y: [1000, 1100]}\n"
                         "criteria: {mould: {critical humidity: by temperature}, guide: "
                         "{published: {guide: DIN 4108-2, with Rsi: as computed}}}\n"
                         "climate:\n" +
                         year + "enough: {moisture: common brick}\n");
  const std::string written = sheet_text(once.variants[0]);
  const Case again = read(written);
  CHECK(sheet_text(again.variants[0]) == written);
  CHECK(again.variants[0].spaces[SpaceId(0)].moisture);
  CHECK(again.variants[0].spaces[SpaceId(2)].losses.size() == 1);
  CHECK(again.variants[0].criteria[1].guide == "DIN 4108-2");
  CHECK(again.variants[0].climate->outside_humidity == once.variants[0].climate->outside_humidity);
  CHECK(again.variants[0].enough.moisture_of == "common brick");
}

}  // namespace
