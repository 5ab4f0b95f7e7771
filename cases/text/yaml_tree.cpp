// SPDX-License-Identifier: Apache-2.0
#include "cases/text/yaml_tree.hpp"

#include <fmt/format.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/mark.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <map>
#include <sstream>
#include <unordered_map>
#include <utility>

#include "cases/text/plain_text.hpp"
#include "cases/text/words.hpp"
#include "cases/text/yaml_slips.hpp"

namespace quoin::cases {
namespace {

/// yaml-cpp counts from 0.
Mark mark_of(const YAML::Mark& mark) {
  if (mark.is_null()) return {};
  return {static_cast<std::size_t>(mark.line) + 1, static_cast<std::size_t>(mark.column) + 1};
}

/// Thrown by the builder to leave the parser once the fault is in the list.
struct Abandon {};

/// Builds the tree from the parser's events.
class Builder : public YAML::EventHandler {
 public:
  explicit Builder(FaultList& faults) : faults_(faults) {}

  /// The tree; absent where a part is missing, so that its meaning would be misread.
  [[nodiscard]] std::optional<Node> take() {
    return complete_ ? std::optional(std::move(root_)) : std::nullopt;
  }

  void OnDocumentStart(const YAML::Mark&) override {}
  void OnDocumentEnd() override {}

  void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override {
    Node node;
    node.mark = mark_of(mark);
    add(std::move(node), anchor);
  }

  void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                const std::string& value) override {
    // The parser tags scalars in quotes "!" and plain ones "?".
    if (tag != "!") refuse_tag(mark, tag);
    Node node;
    node.kind = Node::Kind::scalar;
    node.mark = mark_of(mark);
    node.text = value;
    node.quoted = tag == "!";
    add(std::move(node), anchor);
  }

  void OnAlias(const YAML::Mark& mark, YAML::anchor_t anchor) override {
    const auto known = anchors_.find(anchor);
    if (known == anchors_.end()) {
      abandon(mark_of(mark), {"this alias stands for something that contains the alias itself", "",
                              "an anchor that is complete before it is used",
                              "write the values out in place of the alias"});
    }
    count_ += known->second.nodes;
    check_count(mark_of(mark));
    // What is wrong with it where it is used is wrong there, not where it was written first.
    Node node = known->second.node;
    node.first = std::exchange(node.mark, mark_of(mark));
    add(std::move(node), 0);
  }

  void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                       YAML::EmitterStyle::value) override {
    refuse_tag(mark, tag);
    open(Node::Kind::sequence, mark, anchor);
  }
  void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  YAML::EmitterStyle::value) override {
    refuse_tag(mark, tag);
    open(Node::Kind::map, mark, anchor);
  }
  void OnSequenceEnd() override { close(); }
  void OnMapEnd() override { close(); }

 private:
  /// A sequence or map whose end is not yet read.
  struct Open {
    Node node;
    YAML::anchor_t anchor;
    std::size_t count;  ///< nodes read before it
    std::optional<Node> key;
    std::unordered_map<std::string, std::size_t> lines;  ///< of the keys of a map so far
  };
  struct Anchored {
    Node node;
    std::size_t nodes;
  };

  [[noreturn]] void abandon(Mark mark, Complaint complaint) {
    faults_.add(mark, std::move(complaint));
    throw Abandon{};
  }

  void check_count(Mark mark) {
    if (count_ > limits::nodes) {
      abandon(mark, {fmt::format("the file stands for more than {} values", limits::nodes), "",
                     "a case that a person could write", "use fewer aliases, or none"});
    }
  }

  void refuse_tag(const YAML::Mark& mark, const std::string& tag) {
    if (tag.empty() || tag == "?") return;
    faults_.add(mark_of(mark), {"a type tag has no meaning in a case file", tag, "a plain value",
                                "remove the word that begins with '!'"});
  }

  void open(Node::Kind kind, const YAML::Mark& mark, YAML::anchor_t anchor) {
    if (open_.size() >= limits::depth) {
      abandon(mark_of(mark), {fmt::format("more than {} levels inside each other", limits::depth),
                              "", "", "check the brackets: one may be missing its end"});
    }
    Open opened{{}, anchor, count_, {}, {}};
    opened.node.kind = kind;
    opened.node.mark = mark_of(mark);
    open_.push_back(std::move(opened));
  }

  void close() {
    Open closed = std::move(open_.back());
    open_.pop_back();
    add(std::move(closed.node), closed.anchor, closed.count);
  }

  void add(Node node, YAML::anchor_t anchor) { add(std::move(node), anchor, count_); }

  /// Puts a complete node into the innermost open one. `before`: nodes read before it.
  void add(Node node, YAML::anchor_t anchor, std::size_t before) {
    ++count_;
    check_count(node.mark);
    if (anchor != 0) anchors_[anchor] = {node, count_ - before};
    if (open_.empty()) {
      root_ = std::move(node);
    } else if (open_.back().node.kind == Node::Kind::sequence) {
      open_.back().node.items.push_back(std::move(node));
    } else if (!open_.back().key) {
      open_.back().key = std::move(node);
    } else {
      add_entry(open_.back(), std::move(node));
    }
  }

  void add_entry(Open& map, Node value) {
    const Node key = *std::exchange(map.key, std::nullopt);
    if (key.kind != Node::Kind::scalar || key.text.empty()) {
      faults_.add(key.mark, {"a key must be a word", words_of(key), "a plain name before the colon",
                             "put a name that begins like this in quotes"});
    } else if (key.text == "<<" && !key.quoted) {
      complete_ = false;
      faults_.add(key.mark, {"merge keys are not part of a case file", "<<", "",
                             "write the keys out, or use `like:` or a variant"});
    } else if (const auto [former, fresh] = map.lines.emplace(key.text, key.mark.line); !fresh) {
      faults_.add(key.mark,
                  {fmt::format("'{}' appears twice in the same map", key.text), key.text,
                   fmt::format("one '{}'; the first is in line {}", key.text, former->second),
                   "remove one of them, or rename it"});
    } else {
      map.node.entries.push_back({key.text, key.mark, std::move(value)});
    }
  }

  FaultList& faults_;
  Node root_;
  bool complete_ = true;
  std::vector<Open> open_;
  std::map<YAML::anchor_t, Anchored> anchors_;
  std::size_t count_ = 0;
};

/// Takes note of the first event and ignores the rest.
class Watcher : public YAML::EventHandler {
 public:
  std::optional<Mark> first;

  void OnDocumentStart(const YAML::Mark& mark) override {
    if (!first) first = mark_of(mark);
  }
  void OnDocumentEnd() override {}
  void OnNull(const YAML::Mark&, YAML::anchor_t) override {}
  void OnAlias(const YAML::Mark&, YAML::anchor_t) override {}
  void OnScalar(const YAML::Mark&, const std::string&, YAML::anchor_t,
                const std::string&) override {}
  void OnSequenceStart(const YAML::Mark&, const std::string&, YAML::anchor_t,
                       YAML::EmitterStyle::value) override {}
  void OnSequenceEnd() override {}
  void OnMapStart(const YAML::Mark&, const std::string&, YAML::anchor_t,
                  YAML::EmitterStyle::value) override {}
  void OnMapEnd() override {}
};

void refuse_further_documents(YAML::Parser& parser, FaultList& faults) {
  Watcher watcher;
  try {
    parser.HandleNextDocument(watcher);
  } catch (const YAML::Exception&) {
    // Whatever it is, it stands where nothing should.
  }
  if (watcher.first) {
    faults.add(*watcher.first, {"the file holds more than one document", "", "one case in a file",
                                "put the second case in a file of its own, or make it a variant"});
  }
}

}  // namespace

const Entry* Node::find(std::string_view key) const {
  const auto found = std::find_if(entries.begin(), entries.end(),
                                  [&](const Entry& entry) { return entry.key == key; });
  return found == entries.end() ? nullptr : &*found;
}

Entry* Node::find(std::string_view key) {
  return const_cast<Entry*>(std::as_const(*this).find(key));
}

bool has_mistyped(const Node& map, std::string_view key) {
  return std::any_of(map.entries.begin(), map.entries.end(), [&](const Entry& entry) {
    const std::string start = entry.key.substr(0, entry.key.find(':'));
    return entry.key != key && !nearest(start, {std::string(key)}).empty();
  });
}

std::optional<Node> tree_of(std::string_view text, FaultList& faults) {
  const std::optional<std::string> plain = plain_text_of(text, faults);
  if (!plain) return std::nullopt;
  std::istringstream stream(*plain);
  Builder builder(faults);
  try {
    YAML::Parser parser(stream);
    if (!parser.HandleNextDocument(builder)) {
      faults.add({}, {"the file is empty", "", "a case", "`quoin new corner` prints one"});
      return std::nullopt;
    }
    refuse_further_documents(parser, faults);
    return builder.take();
  } catch (const YAML::Exception& error) {
    const SyntaxError syntax = syntax_error(error.msg, mark_of(error.mark), lines_of(*plain));
    faults.add(syntax.mark, syntax.complaint);
  } catch (const Abandon&) {
  }
  return std::nullopt;
}

std::string words_of(const Node& node) {
  switch (node.kind) {
    case Node::Kind::nothing:
      return "nothing";
    case Node::Kind::scalar:
      return node.text.empty() ? "an empty text" : node.text;
    case Node::Kind::sequence:
      return fmt::format("a list of {}", node.items.size());
    case Node::Kind::map:
      return node.entries.empty() ? "an empty map"
                                  : fmt::format("a map beginning with '{}'", node.entries[0].key);
  }
  return {};
}

}  // namespace quoin::cases
