// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "cases/text/fault_list.hpp"
#include "cases/text/faults.hpp"
#include "cases/text/utf8.hpp"
#include "cases/text/words.hpp"

namespace {

using quoin::cases::Fault;
using quoin::cases::FaultList;
using quoin::cases::InputError;
using quoin::cases::Mark;
using quoin::cases::text_of;

/// The text of one fault at a place of a text.
std::string told(const std::string& text, Mark mark) {
  FaultList faults("case.yaml", text);
  faults.add(mark, {"wrong"});
  return text_of(faults.sorted().at(0));
}

}  // namespace

TEST_CASE("a fault shows place, line, caret, found, expected and remedy") {
  FaultList faults("case.yaml", "a: 1\n  corner: {leg: 365 m}\n");
  faults.add({2, 17}, {"this is hardly meant: 365 m", "365 m", "a length", "write 365"});
  CHECK(text_of(faults.sorted().at(0)) ==
        "case.yaml:2:17: this is hardly meant: 365 m\n"
        "    2 |   corner: {leg: 365 m}\n"
        "      |                 ^\n"
        "  found     365 m\n"
        "  expected  a length\n"
        "  remedy    write 365\n");
}

TEST_CASE("a fault of the whole file has no line") {
  FaultList faults("case.yaml", "");
  faults.add({}, {"the file is empty"});
  CHECK(text_of(faults.sorted().at(0)) == "case.yaml: the file is empty\n");
}

TEST_CASE("columns count characters and the caret stands under the place meant") {
  // "küche" has six bytes; the place is byte 9, character 8.
  CHECK(told("küche: x\n", {1, 9}) == "case.yaml:1:8: wrong\n    1 | küche: x\n      |        ^\n");
  // Wide characters take two columns on a terminal, tabs stay tabs.
  CHECK(told("壁: x\n", {1, 6}) == "case.yaml:1:4: wrong\n    1 | 壁: x\n      |     ^\n");
  CHECK(told("a:\tx\n", {1, 4}) == "case.yaml:1:4: wrong\n    1 | a:\tx\n      |   \t^\n");
}

TEST_CASE("of a long line only the part about the place is shown") {
  std::string line(1004, 'b');
  line.replace(0, 504, std::string(500, 'a').append("HERE"));
  const std::string text = told(line, {1, 501});
  CHECK(text.find("case.yaml:1:501: wrong\n") == 0);
  CHECK(text.find(std::string("…").append(60, 'a').append("HERE")) != std::string::npos);
  const std::size_t shown = text.find("| ") + 2;
  const std::size_t caret = text.find("| ", shown) + 2;
  CHECK(text.substr(caret) == std::string(61, ' ').append("^\n"));
  CHECK(text.size() < 400);
}

TEST_CASE("faults come in the order of the text, each once") {
  FaultList faults("case.yaml", "a\nb\nc\n");
  faults.add({3, 1}, {"third"});
  faults.add({1, 1}, {"first"});
  faults.add({2, 1}, {"second"});
  faults.add({1, 1}, {"first"});
  faults.enter_variant("wet");
  faults.add({1, 1}, {"first"});
  faults.add({2, 1}, {"another"});
  const auto all = faults.sorted();
  REQUIRE(all.size() == 4);
  CHECK(all[0].what == "first");
  CHECK(all[1].what == "second");
  CHECK(all[2].what == "in the variant 'wet': another");
  CHECK(all[3].what == "third");
  CHECK(faults.met() == 6);
}

TEST_CASE("of very many faults the first are told and the rest counted") {
  const std::string text(2000, '\n');
  FaultList faults("case.yaml", text);
  for (std::size_t line = 1; line <= 600; ++line) faults.add({line, 1}, {"wrong"});
  const auto all = faults.sorted();
  REQUIRE(all.size() == 101);
  CHECK(all[99].line == 100);
  CHECK(all[100].what == "500 more faults are not shown");
}

TEST_CASE("once the list is full nobody is asked to tell a fault, and it still counts") {
  const std::string text(300, '\n');
  FaultList faults("case.yaml", text);
  int told = 0;
  for (std::size_t line = 1; line <= 300; ++line) {
    faults.add({line, 1}, [&] {
      ++told;
      return quoin::cases::Complaint{"wrong"};
    });
  }
  CHECK(told == 100);
  CHECK(faults.met() == 300);
  CHECK(faults.sorted().back().what == "200 more faults are not shown");
}

TEST_CASE("a fault holds nothing that steers a terminal, whatever the file and its names hold") {
  const std::string line = "a: \x1b[2J\xc2\x9b \xff \xe2\x80\xae";
  FaultList faults("ca\x1bse.yaml", line);
  faults.enter_variant("\x1b]0;x\x07");
  faults.add({1, 1}, {"what\x07", "found\x1b\n", "expected\x7f", "remedy\xc2\x85"});
  for (const std::string& text :
       {text_of(faults.sorted().at(0)), std::string(InputError(faults.sorted()).what())}) {
    for (const char* bad : {"\x1b", "\x07", "\x7f", "\xc2\x9b", "\xc2\x85", "\xff", "\xe2\x80\xae"})
      CHECK(text.find(bad) == std::string::npos);
    CHECK(text.find("what\uFFFD") != std::string::npos);
    CHECK(std::count(text.begin(), text.end(), '\n') == 6);  // one for each line of a fault
  }
}

TEST_CASE("an input error tells all its faults") {
  FaultList faults("case.yaml", "a\nb\n");
  faults.add({1, 1}, {"first"});
  faults.add({2, 1}, {"second"});
  const InputError error(faults.sorted());
  const std::string text = error.what();
  CHECK(text.find("case.yaml:1:1: first") != std::string::npos);
  CHECK(text.find("case.yaml:2:1: second") != std::string::npos);
}

TEST_CASE("the nearest known word is found for slips of the fingers, not for other words") {
  using quoin::cases::nearest;
  const std::vector<std::string> known = {"temperature", "humidity", "wind", "resistance",
                                          "softwood across the grain"};
  CHECK(nearest("temprature", known) == "temperature");
  CHECK(nearest("Humidity", known) == "humidity");
  CHECK(nearest("wnid", known) == "wind");
  CHECK(nearest("softwod", known) == "softwood across the grain");
  CHECK(nearest("colour", known).empty());
  CHECK(nearest("x", {"y"}).empty());
}

TEST_CASE("a word that is part of known ones is asked back with those") {
  using quoin::cases::did_you_mean;
  const std::vector<std::string> known = {"common brick",          "soft limestone",
                                          "mineral wool",          "lime plaster",
                                          "plastic masonry paint", "wood fibre board"};
  CHECK(did_you_mean("brick", known) == "did you mean 'common brick'?");
  CHECK(did_you_mean("plaster", known) == "did you mean 'lime plaster'?");
  CHECK(did_you_mean("rock wool", known) == "did you mean 'mineral wool'?");
  CHECK(did_you_mean("wood fibre", known) == "did you mean 'wood fibre board'?");
  CHECK(did_you_mean("stone", known) == "did you mean 'soft limestone'?");
  CHECK(did_you_mean("comon brick", known) == "did you mean 'common brick'?");
  CHECK(did_you_mean("lime stone", known) == "did you mean 'soft limestone'?");
  CHECK(did_you_mean("rockwool", known) == "did you mean 'mineral wool'?");
  CHECK(did_you_mean("plasterboard", known).empty());  // its synonym is not known here
  CHECK(did_you_mean("velvet", known).empty());
}

TEST_CASE("edit distance counts insertions, deletions, replacements and swaps") {
  using quoin::cases::edit_distance;
  CHECK(edit_distance("", "abc") == 3);
  CHECK(edit_distance("abc", "") == 3);
  CHECK(edit_distance("abc", "abc") == 0);
  CHECK(edit_distance("abc", "acb") == 1);
  CHECK(edit_distance("kitten", "sitting") == 3);
}

TEST_CASE("UTF-8 is told from other bytes") {
  using quoin::cases::first_character;
  CHECK(first_character("a").code == U'a');
  CHECK(first_character("é").code == 0xE9);
  CHECK(first_character("€").bytes == 3);
  CHECK(first_character("😀").code == 0x1F600);
  for (const char* text : {"\x80", "\xC0\xAF", "\xE2\x82", "\xED\xA0\x80", "\xF4\x90\x80\x80",
                           "\xFF", "\xE0\x80\x80", "\xF0\x80\x80\x80", "\xC3("}) {
    CHECK(first_character(text).bytes == 0);
  }
}
