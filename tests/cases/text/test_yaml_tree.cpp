// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <string>

#include "cases/meaning/merge.hpp"
#include "cases/text/fault_list.hpp"
#include "cases/text/yaml_tree.hpp"

namespace {

using quoin::cases::FaultList;
using quoin::cases::merge;
using quoin::cases::Node;
using quoin::cases::tree_of;

/// The tree of a text that must have no faults.
Node tree(const std::string& text) {
  FaultList faults("test", text);
  const auto result = tree_of(text, faults);
  if (!faults.empty()) FAIL(faults.sorted().front().what);
  REQUIRE(result);
  return *result;
}

/// What is wrong with a text, in one line for each fault.
std::string faults_of(const std::string& text) {
  FaultList faults("test", text);
  (void)tree_of(text, faults);
  std::string all;
  for (const auto& fault : faults.sorted())
    all +=
        std::to_string(fault.line) + ':' + std::to_string(fault.column) + ' ' + fault.what + '\n';
  return all;
}

}  // namespace

TEST_CASE("a tree knows kinds, texts, quotes and places") {
  const Node root = tree("a: 1\nb: [x, \"y\"]\nc:\n  d: ~\n");
  CHECK(root.kind == Node::Kind::map);
  REQUIRE(root.entries.size() == 3);
  CHECK(root.find("a")->value.text == "1");
  const Node& list = root.find("b")->value;
  CHECK(list.kind == Node::Kind::sequence);
  CHECK_FALSE(list.items[0].quoted);
  CHECK(list.items[1].quoted);
  CHECK(list.items[1].text == "y");
  CHECK(list.items[1].mark.line == 2);
  CHECK(list.items[1].mark.byte == 8);
  const auto* inner = root.find("c")->value.find("d");
  REQUIRE(inner != nullptr);
  CHECK(inner->mark.line == 4);
  CHECK(inner->mark.byte == 3);
  CHECK(inner->value.kind == Node::Kind::nothing);
  CHECK(root.find("e") == nullptr);
}

TEST_CASE("lines may end with LF, CR LF or CR, and a byte order mark may come first") {
  for (const std::string text : {"a: 1\nb: 2\n", "a: 1\r\nb: 2\r\n", "a: 1\rb: 2", "a: 1\nb: 2",
                                 "\xEF\xBB\xBF"
                                 "a: 1\nb: 2\n"}) {
    CAPTURE(text);
    const Node root = tree(text);
    REQUIRE(root.entries.size() == 2);
    CHECK(root.entries[0].mark.byte == 1);
    CHECK(root.entries[1].mark.line == 2);
    CHECK(root.entries[1].value.text == "2");
  }
}

TEST_CASE("an alias stands for a copy of what its anchor holds") {
  const Node root = tree("a: &x {k: [1, 2]}\nb: *x\n");
  CHECK(root.find("b")->value.find("k")->value.items[1].text == "2");
}

TEST_CASE("all form faults of a text come at once") {
  CHECK(faults_of("a: 1\na: 2\nb: !!int 3\n[c]: 4\n") ==
        "2:1 'a' appears twice in the same map\n"
        "3:4 a type tag has no meaning in a case file\n"
        "4:1 a key must be a word\n");
}

TEST_CASE("a quote left open to the end of the file is noticed") {
  // The parser alone takes the blank end of the text for the closing quote.
  CHECK(faults_of("a: \"b\nc: d\n").find("1:4 the '\"' opened here is not closed") == 0);
  CHECK(faults_of("a: 'b\nc: d\n\n  \n").find("1:4 the ''' opened here is not closed") == 0);
  CHECK(faults_of("a: \"b\n  c\"\n").empty());
}

TEST_CASE("a text within the limits is read, one beyond is refused") {
  std::string deep = "a: ";
  for (std::size_t i = 1; i < quoin::cases::limits::depth; ++i) deep += '[';
  std::string deeper = deep + '[';
  for (std::size_t i = 1; i < quoin::cases::limits::depth; ++i) deep += ']';
  CHECK(faults_of(deep).empty());
  deeper += std::string(quoin::cases::limits::depth, ']');
  CHECK(faults_of(deeper).find("levels inside each other") != std::string::npos);

  const std::string comment = "#" + std::string(quoin::cases::limits::bytes - 10, ' ') + "\na: 1";
  CHECK(faults_of(comment).empty());
  CHECK(faults_of(comment + std::string(20, '\n')).find("too long") != std::string::npos);
}

TEST_CASE("merging replaces values, joins maps, adds keys and removes those set to nothing") {
  Node base = tree("a: {x: 1, y: 2}\nb: [1, 2]\nc: 3\nd: 4\n");
  const std::string text = "a: {y: 5, z: 6}\nb: [7]\nd: ~\ne: 8\n";
  FaultList faults("test", text);
  merge(base, tree(text), faults);
  CHECK(faults.empty());
  const Node& a = base.find("a")->value;
  CHECK(a.find("x")->value.text == "1");
  CHECK(a.find("y")->value.text == "5");
  CHECK(a.find("z")->value.text == "6");
  REQUIRE(base.find("b")->value.items.size() == 1);
  CHECK(base.find("b")->value.items[0].text == "7");
  CHECK(base.find("c")->value.text == "3");
  CHECK(base.find("d") == nullptr);
  CHECK(base.find("e")->value.text == "8");
}
