// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "cases/text/files.hpp"
#include "cases/text/yaml_words.hpp"
#include "cases/write_sheet.hpp"
#include "tests/cases/read_support.hpp"

using quoin::testing::faults_of;
using quoin::testing::head;
using quoin::testing::read;
using namespace quoin::cases;

namespace {

const std::string wall = "section:\n  wall: {layers: [[common brick, 330]]}\n";

bool remarks(const Case& source, const std::string& words) {
  const auto& all = source.variants.at(0).remarks;
  return std::any_of(all.begin(), all.end(), [&](const Remark& remark) {
    return remark.text.find(words) != std::string::npos;
  });
}

/// A name as YAML writes it, whatever it holds.
std::string case_named(const std::string& name) {
  const std::string word = yaml_word(name), other = yaml_word(name + " too");
  return "quoin: 1\ntitle: t\nspaces:\n  " +
         yaml_entry(name, "{is: inside, temperature: 18}", "\n  ") +
         "\n  yard: {is: outside, temperature: 1}\n  " +
         yaml_entry(name + " stair",
                    "{is: unheated, losses: {" + yaml_entry(name, "2", " ") + ", yard: 1}}",
                    "\n  ") +
         "\nmaterials:\n  " + yaml_entry(name + " too", "{conductivity: 0.8}", "\n  ") +
         "\nsection:\n  sheet:\n    - {fill: " + word +
         ", x: [0, 100], y: [0, 500]}\n    - {fill: " + yaml_word(name + " stair") +
         ", x: [0, 100], y: [500, 900]}\n    - {fill: " + other +
         ", x: [100, 400], y: [0, 900]}\n    - {fill: yard, x: [400, 500], y: [0, 900]}\nprobes:\n "
         " " +
         yaml_entry(name, "[100, 100]", "\n  ") + "\nreadings:\n  " +
         yaml_entry(name, "12", "\n  ") + "\ncriteria:\n  " +
         yaml_entry(name, "{fRsi: 0.7}", "\n  ") + "\nvariants:\n  " +
         yaml_entry(name, "{}", "\n  ") + "\n";
}

}  // namespace

TEST_CASE("a sheet with hostile names is plain text and reads back to the same names") {
  for (const std::string& name :
       {std::string("\x1b[2J"), std::string("a\0b", 3), std::string("\xc2\x9b"),
        std::string("\xe2\x80\xae"), std::string("a\rb"), std::string("\xe2\x80\xa8x"),
        std::string("\xef\xbb\xbfx"), std::string("a: {b"), std::string("'\"\\"),
        std::string("? x"), std::string("~"), std::string("\xf0\x9f\x94\xa5"),
        std::string(600, '\x1b'), std::string(3000, 'w'), std::string("a\nb\tc"),
        std::string("#x")}) {
    const Case source = read(case_named(name));
    CHECK(source.variants.at(0).spaces[SpaceId(0u)].name == name);
    const std::string sheet = sheet_text(source.variants.at(0));
    CHECK(std::none_of(sheet.begin(), sheet.end(),
                       [](char sign) { return sign == '\x1b' || sign == '\r' || sign == '\0'; }));
    const Variant back = read(sheet).variants.at(0);
    REQUIRE(back.spaces.size() == 3);
    CHECK(back.spaces[SpaceId(0u)].name == name);
    REQUIRE(back.spaces[SpaceId(2u)].losses.size() == 2);
    CHECK(back.probes.at(0).name == name);
    CHECK(back.criteria.at(0).name == name);
    CHECK(sheet_text(back).substr(sheet_text(back).find("\nspaces")) ==
          sheet.substr(sheet.find("\nspaces")));
  }
}

TEST_CASE("twenty thousand materials like an unknown one are a hundred faults and a number") {
  std::string text = head + wall + "materials:\n";
  for (int k = 0; k < 20000; ++k) text += "  m" + std::to_string(k) + ": {like: nothing known}\n";
  const auto faults = faults_of(text);
  REQUIRE(faults.size() == 101);
  CHECK(faults.back().what == "19900 more faults are not shown");
}

TEST_CASE("many unknown keys are a hundred faults and a number") {
  std::string text = head + wall;
  for (int k = 0; k < 90000; ++k) text += "key" + std::to_string(k) + ": 1\n";
  const auto faults = faults_of(text);
  REQUIRE(faults.size() == 101);
  CHECK(faults.back().what == "89900 more faults are not shown");
}

TEST_CASE("an inside surface without resistance is remarked on, one outside is not") {
  const auto with = [](const std::string& inside, const std::string& outside) {
    return read("quoin: 1\nspaces:\n  hall: {is: inside, temperature: 18" + inside +
                "}\n  yard: {is: outside, temperature: 1" + outside + "}\n" + wall);
  };
  CHECK(remarks(with(", resistance: 0", ""), "have no resistance"));
  CHECK(remarks(with(", resistance: 0.0001", ""), "very low"));
  CHECK_FALSE(remarks(with("", ", resistance: 0"), "resistance"));
  CHECK_FALSE(remarks(with(", resistance: 0.13", ""), "resistance"));
}

TEST_CASE("a conductivity alone makes a material, as long as nothing goes by its mass") {
  const auto own = [](const std::string& values, const std::string& moisture) {
    return head + "materials:\n  own: {conductivity: 0.8" + values +
           "}\nsection:\n  wall: {layers: [[own, 330" + moisture + "]]}\n";
  };
  CHECK(read(own("", "")).variants.at(0).regions.size() == 1);
  CHECK(faults_of(own("", ", 5 vol-%")).empty());
  CHECK(faults_of(own("", ", 5 mass-%")).size() == 1);
  CHECK(faults_of(own(", density: 1700", ", 5 mass-%")).empty());
  CHECK(faults_of(own(", law: {per mass percent: {increase: 4}}", "")).size() == 1);
  CHECK(faults_of(own(", law: {exponential: {per volume: 10}}", "")).empty());
  CHECK(sheet_text(read(own("", "")).variants.at(0)).find("density") == std::string::npos);
}

TEST_CASE("a reading may be written as its temperature alone") {
  const Case source = read(head + wall + "probes: {A: [0, 500]}\nreadings: {A: 12.4}\n");
  CHECK(source.variants.at(0).readings.at(0).temperature == 12.4);
  CHECK(source.variants.at(0).readings.at(0).plus_or_minus == 0.5);
}

TEST_CASE("a humidity by month that overrules what a household gives off is remarked on") {
  const std::string months = "[50, 50, 50, 50, 50, 50, 50, 50, 50, 50, 50, 50]";
  const auto year = [&](const std::string& moisture) {
    return read("quoin: 1\nspaces:\n  hall: {is: inside, temperature: 18, " + moisture +
                "}\n  yard: {is: outside, temperature: 1, humidity: 90}\n" + wall +
                "climate:\n  outside temperature: [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1]\n  outside "
                "humidity: " +
                months + "\n  inside humidity: " + months + "\n");
  };
  CHECK(remarks(year("humidity class: 3"), "takes the place of the 'humidity class'"));
  CHECK_FALSE(remarks(year("humidity: 60"), "takes the place"));
}

TEST_CASE("a space is used by what it is for, not only by being shown") {
  const auto spaces = [](const std::string& more) {
    return "quoin: 1\nspaces:\n  hall: {is: inside, temperature: 18}\n  yard: {is: outside, "
           "temperature: 1}\n" +
           more + wall;
  };
  const auto unused = [](const std::vector<Fault>& faults) {
    return faults.size() == 1 && faults[0].what.find("is not used") != std::string::npos;
  };
  CHECK(unused(faults_of(spaces("  loft: {is: unheated, temperature: 5}\n"))));
  CHECK(unused(faults_of(spaces("  nook: {like: hall, resistance: 0.5}\n"))));
  // One variant that shows it is enough.
  CHECK(faults_of(spaces("  loft: {is: unheated, temperature: 5}\n") +
                  "variants:\n  under the loft: {section: {wall: {outside: loft}}}\n")
            .empty());
  // What another space loses heat to has a use.
  CHECK(
      faults_of("quoin: 1\nspaces:\n  hall: {is: inside, temperature: 18}\n  yard: {is: outside, "
                "temperature: 1}\n  loft: {is: unheated, losses: {yard: 2, byre: 1}}\n  byre: {is: "
                "unheated, temperature: 7}\nsection:\n  wall: {layers: [[common brick, 330]], "
                "outside: loft}\n")
          .empty());
}

TEST_CASE("a table is looked for in the folder of the case and below, nowhere else") {
  std::vector<std::string> asked;
  const Files files = [&](const std::string& name) -> std::optional<std::string> {
    asked.push_back(name);
    return "root:x:0:0\n";
  };
  for (const char* name : {"../x.csv", "/etc/passwd", "a/../../x.csv", ".."}) {
    CHECK_THROWS_AS(
        (void)case_of(head + wall + "climate: {table: " + name + "}\n", "case.yaml", files),
        InputError);
  }
  CHECK(asked.empty());
  CHECK_THROWS_AS((void)case_of(head + wall + "climate: {table: a/x.csv}\n", "case.yaml", files),
                  InputError);
  CHECK(asked == std::vector<std::string>{"a/x.csv"});
}
