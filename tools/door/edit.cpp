// SPDX-License-Identifier: Apache-2.0
#include "tools/door/edit.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <functional>
#include <optional>
#include <vector>

#include "cases/text/faults.hpp"
#include "cases/text/yaml_words.hpp"
#include "tools/door/written.hpp"

namespace quoin::door {
namespace {

using cases::Node;
using Kind = Node::Kind;

[[noreturn]] void refuse(std::string what, std::string_view path, std::string expected,
                         std::string remedy) {
  cases::Fault fault;
  fault.what = std::move(what);
  fault.found = path;
  fault.expected = std::move(expected);
  fault.remedy = std::move(remedy);
  throw cases::InputError({fault});
}

[[noreturn]] void refuse_place(std::string_view path) {
  refuse("the case has no value at this path", path, "a path as `values` lists it", "");
}

/// Whether two values say the same, however they are spelt.
bool same(const Node& a, const Node& b) {
  return a.kind == b.kind && a.text == b.text &&
         std::equal(a.items.begin(), a.items.end(), b.items.begin(), b.items.end(), same) &&
         std::equal(a.entries.begin(), a.entries.end(), b.entries.begin(), b.entries.end(),
                    [](const cases::Entry& one, const cases::Entry& other) {
                      return one.key == other.key && same(one.value, other.value);
                    });
}

/// Changes a value and every copy of it that an alias made.
void change(Node& tree, const Node& like, const std::function<void(Node&)>& how) {
  if (tree.kind == like.kind && tree.written().line == like.written().line &&
      tree.written().byte == like.written().byte) {
    how(tree);
    return;
  }
  for (Node& item : tree.items) change(item, like, how);
  for (cases::Entry& entry : tree.entries) change(entry.value, like, how);
}

/// A text with another piece between two bytes.
std::string spliced(std::string_view text, std::size_t begin, std::size_t end,
                    std::string_view piece) {
  std::string result(text.substr(0, begin));
  result += piece;
  result += text.substr(end);
  return result;
}

/// The first of some texts that reads as `wanted`.
std::optional<std::string> first_that_says(const Node& wanted,
                                           const std::vector<std::string>& texts) {
  for (const std::string& text : texts) {
    try {
      if (same(tree_in(text), wanted)) return text;
    } catch (const cases::InputError&) {
      // another spelling may do
    }
  }
  return std::nullopt;
}

std::string checked(const Node& wanted, const std::vector<std::string>& texts,
                    std::string_view path) {
  if (std::optional<std::string> text = first_that_says(wanted, texts)) return *std::move(text);
  refuse("the text cannot be changed in place here", path, "",
         "change it in the text itself, or write the list or map in brackets");
}

std::string in_double_quotes(std::string_view value) {
  const std::string word = cases::yaml_word(value);
  return word.front() == '"' ? word : '"' + word + '"';
}

std::string in_single_quotes(std::string_view value) {
  std::string quoted = "'";
  for (const char sign : value) {
    quoted += sign;
    if (sign == '\'') quoted += sign;
  }
  return quoted + '\'';
}

/// The spellings of a value, that of the author first.
std::vector<std::string> spellings(std::string_view value, char author) {
  std::vector<std::string> all{std::string(value), in_double_quotes(value)};
  if (author == '"') std::swap(all[0], all[1]);
  if (author == '\'') all.insert(all.begin(), in_single_quotes(value));
  return all;
}

/// The place of a collection that something is put into or taken from, where it is written.
const Place& collection(const Written& written, const std::string& path) {
  const Place* place = written.find(path);
  if (place != nullptr && (place->is_alias || place->behind_alias))
    place = written.written(*place->node);
  if (place == nullptr) refuse_place(path);
  return *place;
}

/// The places directly in a collection, in the order of the text.
std::vector<const Place*> children(const Written& written, const Place& of) {
  std::vector<const Place*> inner;
  for (const Place& place : written.places()) {
    const std::optional<LastStep> last = last_step(place.path);
    if (last && last->path == of.path && (of.behind_alias || !place.behind_alias))
      inner.push_back(&place);
  }
  return inner;
}

bool is_bracketed(const Written& written, const Place& place) {
  const char sign = place.begin < written.text().size() ? written.text()[place.begin] : '\0';
  return sign == '[' || sign == '{';
}

/// Puts an entry into a collection before one of its children, or behind the last.
std::string with_entry(const Written& written, const Place& into, std::size_t before,
                       const std::string& entry) {
  const std::string& text = written.text();
  const std::vector<const Place*> inner = children(written, into);
  if (is_bracketed(written, into)) {
    if (inner.empty()) return spliced(text, into.begin + 1, into.begin + 1, entry);
    if (before < inner.size())
      return spliced(text, inner[before]->start, inner[before]->start, entry + ", ");
    return spliced(text, inner.back()->end, inner.back()->end, ", " + entry);
  }
  if (inner.empty()) refuse_place(into.path);
  const std::size_t first = inner.front()->start;
  const std::string indent(first - written.line_start(first), ' ');
  const std::string dashed = into.node->kind == Kind::sequence ? "- " + entry : entry;
  if (before < inner.size()) {
    return spliced(text, inner[before]->start, inner[before]->start, dashed + "\n" + indent);
  }
  const std::size_t last = inner.back()->end;
  const std::size_t end = written.line_end(last == 0 ? 0 : last - 1);
  const bool is_ended = end > 0 && (text[end - 1] == '\n' || text[end - 1] == '\r');
  return spliced(text, end, end, (is_ended ? "" : "\n") + indent + dashed + "\n");
}

/// A key and its value as an entry.
std::string entry_of(std::string_view key, std::string_view yaml) {
  return cases::yaml_entry(key, yaml, " ");
}

std::optional<std::size_t> position_in(std::string_view step) {
  std::size_t value = 0;
  const auto [end, error] = std::from_chars(step.data(), step.data() + step.size(), value);
  if (error != std::errc() || end != step.data() + step.size()) return std::nullopt;
  return value;
}

/// What stands at a path that is there, replaced.
std::string with_replaced(const Written& written, const Place& place, const std::string& yaml,
                          const Node& value) {
  Node wanted = written.root();
  change(wanted, *place.node, [&](Node& node) { node = value; });
  const std::string& text = written.text();
  std::vector<std::string> texts{spliced(text, place.begin, place.end, yaml),
                                 spliced(text, place.begin, place.end, " " + yaml)};
  // Lines under a key or a dash become one behind it.
  const std::size_t head = text.find_last_not_of(" \t\r\n", place.begin == 0 ? 0 : place.begin - 1);
  if (head != std::string::npos && head < place.begin)
    texts.push_back(spliced(text, head + 1, place.end, " " + yaml));
  return checked(wanted, texts, place.path);
}

}  // namespace

std::string edited_text(std::string_view text, std::string_view path, std::string_view value) {
  const Written written(text);
  const Place& place = collection(written, std::string(path));
  if (place.node->kind != Kind::scalar) {
    refuse("what stands at this path is no single value", path, "a path as `values` lists it", "");
  }
  if (place.node->text == value) return std::string(text);
  Node wanted = written.root();
  change(wanted, *place.node, [&](Node& node) { node.text = value; });
  std::vector<std::string> texts;
  for (const std::string& spelling : spellings(value, text[place.begin]))
    texts.push_back(spliced(text, place.begin, place.end, spelling));
  return checked(wanted, texts, path);
}

std::string placed_text(std::string_view text, std::string_view path, std::string_view yaml) {
  const Written written(text);
  const Node value = tree_in(yaml);
  std::string piece(yaml);
  std::optional<LastStep> last = last_step(path);
  if (!last) refuse_place(path);
  if (const Place* there = written.find(path)) {
    if (!there->is_alias)
      return with_replaced(written, collection(written, there->path), piece, value);
    Node wanted = written.root();  // another value for this use only
    Node* node = &wanted;
    for (const std::string& step : steps_of(path)) {
      node = node->kind == Kind::map ? &node->find(step)->value
                                     : &node->items[position_in(step).value_or(0)];
    }
    *node = value;
    return checked(wanted, {spliced(text, there->begin, there->end, piece)}, path);
  }
  Node inner = value;
  while (written.find(last->path) == nullptr) {
    Node map;
    map.kind = Kind::map;
    map.entries.push_back({last->step, {}, inner});
    inner = std::move(map);
    piece = "{" + entry_of(last->step, piece) + "}";
    const std::optional<LastStep> above = last_step(last->path);
    if (!above) refuse_place(path);
    last = above;
  }
  const Place& into = collection(written, last->path);
  if (into.node->kind == Kind::nothing) {
    Node map;
    map.kind = Kind::map;
    map.entries.push_back({last->step, {}, inner});
    return with_replaced(written, into, "{" + entry_of(last->step, piece) + "}", map);
  }
  if (into.node->kind != Kind::map) refuse_place(path);
  Node wanted = written.root();
  change(wanted, *into.node, [&](Node& node) { node.entries.push_back({last->step, {}, inner}); });
  const std::size_t count = into.node->entries.size();
  return checked(wanted, {with_entry(written, into, count, entry_of(last->step, piece))}, path);
}

std::string inserted_text(std::string_view text, std::string_view path, std::string_view yaml) {
  const Written written(text);
  const std::optional<LastStep> last = last_step(path);
  if (!last) refuse_place(path);
  const Place& into = collection(written, last->path);
  const std::optional<std::size_t> at = position_in(last->step);
  if (into.node->kind != Kind::sequence || !at || *at > into.node->items.size()) {
    refuse("there is no such place in a list", path, "a list and a position in it", "");
  }
  const Node value = tree_in(yaml);
  Node wanted = written.root();
  change(wanted, *into.node, [&](Node& node) {
    node.items.insert(node.items.begin() + static_cast<std::ptrdiff_t>(*at), value);
  });
  return checked(wanted, {with_entry(written, into, *at, std::string(yaml))}, path);
}

std::string removed_text(std::string_view text, std::string_view path) {
  const Written written(text);
  const std::optional<LastStep> last = last_step(path);
  if (!last || written.find(path) == nullptr) refuse_place(path);
  const Place& from = collection(written, last->path);
  const std::vector<const Place*> inner = children(written, from);
  const auto found = std::find_if(inner.begin(), inner.end(), [&](const Place* place) {
    return last_step(place->path)->step == last->step;
  });
  if (found == inner.end()) refuse_place(path);
  const auto k = static_cast<std::size_t>(found - inner.begin());
  Node wanted = written.root();
  change(wanted, *from.node, [&](Node& node) {
    const auto at = static_cast<std::ptrdiff_t>(k);
    if (node.kind == Kind::map) node.entries.erase(node.entries.begin() + at);
    if (node.kind == Kind::sequence) node.items.erase(node.items.begin() + at);
  });
  const Place& gone = *inner[k];
  const std::string_view all = written.text();
  std::vector<std::string> texts;
  if (is_bracketed(written, from)) {
    const bool is_last = k + 1 == inner.size();
    texts.push_back(is_last && k > 0
                        ? spliced(all, inner[k - 1]->end, gone.end, "")
                        : spliced(all, gone.start, is_last ? gone.end : inner[k + 1]->start, ""));
  } else if (inner.size() == 1) {
    const std::string empty = from.node->kind == Kind::map ? "{}" : "[]";
    texts.push_back(spliced(all, from.begin, gone.end, empty));
    if (from.path.empty()) refuse_place(path);
  } else {
    const std::size_t end = written.line_end(gone.end == 0 ? 0 : gone.end - 1);
    texts.push_back(spliced(all, written.line_start(gone.start), end, ""));
    if (k + 1 < inner.size()) texts.push_back(spliced(all, gone.start, inner[k + 1]->start, ""));
  }
  return checked(wanted, texts, path);
}

}  // namespace quoin::door
