// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "tools/door/door.hpp"
#include "tools/door/written.hpp"

namespace quoin::door {
namespace {

using nlohmann::json;

std::string text_of(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

/// Every case file of the repository.
std::vector<std::filesystem::path> case_files() {
  std::vector<std::filesystem::path> files;
  for (const char* folder : {"/cases/examples", "/cases/examples/house", "/cases/verification"}) {
    for (const auto& entry :
         std::filesystem::directory_iterator(std::string(QUOIN_SOURCE_DIR) + folder)) {
      if (entry.path().extension() == ".yaml") files.push_back(entry.path());
    }
  }
  std::sort(files.begin(), files.end());
  return files;
}

/// The values of a text by path, their text alone.
std::vector<std::pair<std::string, std::string>> by_path(const std::string& text) {
  std::vector<std::pair<std::string, std::string>> all;
  for (const json& value : json::parse(values(text)))
    all.emplace_back(value["path"], value["text"].is_null() ? "~" : value["text"]);
  return all;
}

constexpr const char* trial = R"(# a case of every spelling
quoin: 1
"title": 'it''s a wall'   # said so
note: >-
  first line
  second line

spaces: {hall: {is: inside, temperature: 19}, "out/side ~": {is: outside,
  temperature: -2 °C}}
materials:
  old brick: &brick {like: common brick, moisture: "damp"}
  same brick: *brick
section:
  wall:
    layers:
    - [lime plaster, 15]            # brief
    - material: old
        brick
      thickness: 330 mm

    -
      material: "lime\u0020plaster"
      thickness: &t 20
variants:
  thick: {section: {wall: {layers: [{material: old brick, thickness: *t}, [common brick, 102]]}}}
)";

}  // namespace

TEST_CASE("values of a case are listed with their places") {
  const json all = json::parse(values(trial));
  const auto find = [&](const std::string& path) -> json {
    for (const json& value : all) {
      if (value["path"] == path) return value;
    }
    return nullptr;
  };
  CHECK(find("title")["text"] == "it's a wall");
  CHECK(find("note")["text"] == "first line second line");
  CHECK(find("spaces/out~1side ~0/temperature")["text"] == "-2 °C");
  CHECK(find("section/wall/layers/0/1")["text"] == "15");
  CHECK(find("section/wall/layers/1/material")["text"] == "old brick");
  CHECK(find("section/wall/layers/2/material")["text"] == "lime plaster");
  CHECK(find("materials/same brick/moisture")["at"] == "materials/old brick/moisture");
  CHECK(find("variants/thick/section/wall/layers/0/thickness")["at"] ==
        "section/wall/layers/2/thickness");
  CHECK(find("quoin")["line"] == 2);
  CHECK(find("quoin")["column"] == 8);
  CHECK(find("spaces/nobody").is_null());
}

TEST_CASE("an edited value changes alone and the same value changes nothing") {
  std::mt19937 random(7);
  const std::vector<std::string> others{
      "12",    "0.33 m", "wood fibre board", "~",  "null", "a: b",  "#1", "'", "\"", "[", "-",
      "é × µ", "true ",  "x #y, z",          "*t", "&",    "yes\\n"};
  std::vector<std::string> texts{trial};
  for (const auto& file : case_files()) texts.push_back(text_of(file));
  REQUIRE(texts.size() > 20);
  for (const std::string& text : texts) {
    const json all = json::parse(values(text));
    const auto before = by_path(text);
    for (std::size_t k = 0; k < all.size(); ++k) {
      if (all[k]["text"].is_null()) continue;
      const std::string path = all[k]["path"];
      CAPTURE(path);
      CHECK(edited(text, path, all[k]["text"].get<std::string>()) == text);
      if (random() % 4 != 0) continue;
      const std::string value = others[random() % others.size()];
      CAPTURE(value);
      const std::string after = edited(text, path, value);
      const auto now = by_path(after);
      REQUIRE(now.size() == before.size());
      const std::string at = all[k].value("at", path);
      for (std::size_t n = 0; n < now.size(); ++n) {
        CHECK(now[n].first == before[n].first);
        const bool meant = all[n].value("at", all[n]["path"].get<std::string>()) == at;
        CHECK(now[n].second == (meant ? value : before[n].second));
      }
      CHECK(by_path(edited(after, path, all[k]["text"].get<std::string>())) == before);
    }
  }
}

TEST_CASE("comments order and spelling stay where a value is edited") {
  const std::string text = edited(trial, "section/wall/layers/1/thickness", "440");
  std::string wanted = trial;
  wanted.replace(wanted.find("330 mm"), 6, "440");
  CHECK(text == wanted);
  std::string quoted = trial;
  quoted.replace(quoted.find("'it''s a wall'"), 14, "'that''s one'");
  CHECK(edited(trial, "title", "that's one") == quoted);
}

TEST_CASE("a text with other line ends and a byte order mark keeps them") {
  const std::string text = "\xEF\xBB\xBFquoin: 1\r\ntitle: x # y\r\nnote: é\r\n";
  CHECK(edited(text, "title", "z") == "\xEF\xBB\xBFquoin: 1\r\ntitle: z # y\r\nnote: é\r\n");
  CHECK(edited(text, "note", "è") == "\xEF\xBB\xBFquoin: 1\r\ntitle: x # y\r\nnote: è\r\n");
}

TEST_CASE("what is placed inserted or removed leaves the rest as it is") {
  const std::string brief = "a: 1\nb: [x, y]\nc: {d: 2}\ne:\n  - p # one\n  - q\nf:\n  g: 1\n";
  CHECK(inserted(brief, "b/1", "z") ==
        "a: 1\nb: [x, z, y]\nc: {d: 2}\ne:\n  - p # one\n  - q\nf:\n  g: 1\n");
  CHECK(inserted(brief, "b/2", "z") ==
        "a: 1\nb: [x, y, z]\nc: {d: 2}\ne:\n  - p # one\n  - q\nf:\n  g: 1\n");
  CHECK(inserted(brief, "e/1", "{r: 1}") ==
        "a: 1\nb: [x, y]\nc: {d: 2}\ne:\n  - p # one\n  - {r: 1}\n  - q\nf:\n  g: 1\n");
  CHECK(inserted(brief, "e/2", "r") ==
        "a: 1\nb: [x, y]\nc: {d: 2}\ne:\n  - p # one\n  - q\n  - r\nf:\n  g: 1\n");
  CHECK(placed(brief, "c/h i", "3") ==
        "a: 1\nb: [x, y]\nc: {d: 2, h i: 3}\ne:\n  - p # one\n  - q\nf:\n  g: 1\n");
  CHECK(placed(brief, "f/h", "3") ==
        "a: 1\nb: [x, y]\nc: {d: 2}\ne:\n  - p # one\n  - q\nf:\n  g: 1\n  h: 3\n");
  CHECK(placed(brief, "n/o/p", "3") == brief + "n: {o: {p: 3}}\n");
  CHECK(placed(brief, "e", "[]") == "a: 1\nb: [x, y]\nc: {d: 2}\ne:\n  []\nf:\n  g: 1\n");
  CHECK(removed(brief, "e/0") == "a: 1\nb: [x, y]\nc: {d: 2}\ne:\n  - q\nf:\n  g: 1\n");
  CHECK(removed(brief, "b/1") == "a: 1\nb: [x]\nc: {d: 2}\ne:\n  - p # one\n  - q\nf:\n  g: 1\n");
  CHECK(removed(brief, "f") == "a: 1\nb: [x, y]\nc: {d: 2}\ne:\n  - p # one\n  - q\n");
  CHECK(removed(brief, "a") == "b: [x, y]\nc: {d: 2}\ne:\n  - p # one\n  - q\nf:\n  g: 1\n");
  CHECK(removed(removed(brief, "f/g"), "c/d") ==
        "a: 1\nb: [x, y]\nc: {}\ne:\n  - p # one\n  - q\nf:\n  {}\n");
}

TEST_CASE("a path that leads nowhere is refused and named") {
  try {
    (void)edited(trial, "section/wall/layers/7/thickness", "1");
    FAIL("nothing was refused");
  } catch (const Refusal& refusal) {
    const json faults = json::parse(refusal.faults);
    REQUIRE(faults.size() == 1);
    CHECK(faults[0]["found"] == "section/wall/layers/7/thickness");
    CHECK(faults[0]["line"] == 0);
  }
  CHECK_THROWS_AS((void)edited(trial, "section/wall", "1"), Refusal);
  CHECK_THROWS_AS((void)removed(trial, "nothing"), Refusal);
  CHECK_THROWS_AS((void)inserted(trial, "section/wall/layers/9", "[a, 1]"), Refusal);
  CHECK_THROWS_AS((void)values("a: [1"), Refusal);
}

TEST_CASE("hostile names are keys like others") {
  for (const std::string name : {"a/b", "~1", "</script><b>", "x: y", "# no", "'", "\"", "{", "-",
                                 "0", "é\u202e", "../../etc", "`$(x)`"}) {
    CAPTURE(name);
    const std::string path = pointed("spaces", name) + "/temperature";
    const std::string text = placed("quoin: 1\nspaces: {}\n", path, "20");
    CHECK(by_path(text).back().first == path);
    CHECK(by_path(edited(text, path, "21")).back().second == "21");
    CHECK(removed(text, pointed("spaces", name)) == "quoin: 1\nspaces: {}\n");
  }
}

}  // namespace quoin::door
