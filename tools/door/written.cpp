// SPDX-License-Identifier: Apache-2.0
#include "tools/door/written.hpp"

#include <algorithm>
#include <map>
#include <utility>

#include "cases/text/faults.hpp"
#include "cases/text/plain_text.hpp"
#include "cases/text/utf8.hpp"

namespace quoin::door {
namespace {

using cases::Node;
using Kind = Node::Kind;

/// The text is read, yet a value is not where its tree says.
struct Lost {};

bool is_blank(char sign) { return sign == ' ' || sign == '\t'; }
bool is_break(char sign) { return sign == '\n' || sign == '\r'; }

/// Walks through a text along its tree and takes down where each value stands.
class Walker {
 public:
  Walker(std::string_view text, std::vector<Place>& places) : text_(text), places_(places) {}

  void document(const Node& root) {
    std::size_t at = text_.size() - cases::without_byte_order_mark(text_).size();
    for (at = solid(at); sign(at) == '%'; at = solid(at))
      at = std::min(text_.find_first_of("\r\n", at), text_.size());
    if (text_.substr(at, 3) == "---") at += 3;
    value(root, Place{}, at);
  }

 private:
  [[nodiscard]] char sign(std::size_t at) const { return at < text_.size() ? text_[at] : '\0'; }

  /// The next sign that is neither blank nor in a comment.
  [[nodiscard]] std::size_t solid(std::size_t at) const {
    for (; at < text_.size(); ++at) {
      if (text_[at] == '#') {
        at = std::min(text_.find_first_of("\r\n", at), text_.size());
      } else if (!is_blank(text_[at]) && !is_break(text_[at])) {
        break;
      }
    }
    return at;
  }

  /// Behind the word, of an anchor or an alias, that begins at a sign.
  [[nodiscard]] std::size_t behind_word(std::size_t at) const {
    return std::min(text_.find_first_of(" \t\r\n,[]{}", at), text_.size());
  }

  /// Behind a value without an anchor of its own; `from`: behind what announces it.
  std::size_t value(const Node& node, Place place, std::size_t from) {
    place.node = &node;
    if (place.path.empty()) place.start = solid(from);
    if (node.kind == Kind::nothing) return nothing(std::move(place), from);
    place.marked = place.begin = solid(from);
    if (sign(place.begin) == '*') return alias(node, std::move(place));
    while (sign(place.begin) == '&') {
      const std::size_t behind = behind_word(place.begin);
      anchors_[text_.substr(place.begin + 1, behind - place.begin - 1)] = place.begin;
      place.begin = solid(behind);
    }
    return content(node, std::move(place));
  }

  std::size_t nothing(Place place, std::size_t from) {
    std::size_t at = from;
    while (is_blank(sign(at))) ++at;
    if (sign(at) == '&') at = behind_word(at);
    place.begin = place.end = from;
    for (const std::string_view word : {"~", "null", "Null", "NULL", "*"}) {
      if (text_.substr(at, word.size()) != word) continue;
      place.begin = at;
      place.end = behind_word(at);
      break;
    }
    place.marked = place.begin;
    places_.push_back(std::move(place));
    return places_.back().end;
  }

  std::size_t alias(const Node& node, Place place) {
    const std::size_t behind = behind_word(place.begin);
    const auto anchor = anchors_.find(text_.substr(place.begin + 1, behind - place.begin - 1));
    if (anchor == anchors_.end()) throw Lost{};
    place.is_alias = true;
    place.end = behind;
    const std::size_t index = places_.size();
    value(node, Place{place.path, &node, anchor->second, 0, 0, 0, false, true, false},
          anchor->second);
    if (!place.behind_alias) places_[index] = place;  // what it holds stays behind the alias
    return behind;
  }

  std::size_t content(const Node& node, Place place) {
    const std::size_t index = places_.size();
    places_.push_back(place);
    const std::size_t end = node.kind == Kind::scalar     ? scalar(node.text, place.begin)
                            : node.kind == Kind::sequence ? items(node, place)
                                                          : entries(node, place);
    places_[index].end = end;
    return end;
  }

  [[nodiscard]] Place within(const Place& outer, std::string_view step, bool in_brackets) const {
    Place place;
    place.path = pointed(outer.path, step);
    place.in_brackets = in_brackets || outer.in_brackets;
    place.behind_alias = outer.behind_alias;
    return place;
  }

  std::size_t items(const Node& list, const Place& place) {
    const bool brackets = sign(place.begin) == '[';
    std::size_t at = place.begin + (brackets ? 1 : 0);
    for (std::size_t k = 0; k < list.items.size(); ++k) {
      Place item = within(place, std::to_string(k), brackets);
      for (at = solid(at); brackets && sign(at) == ','; at = solid(at)) ++at;
      item.start = at;
      if (!brackets && sign(at++) != '-') throw Lost{};
      at = value(list.items[k], std::move(item), at);
    }
    return brackets ? closed(at, ']') : at;
  }

  std::size_t entries(const Node& map, const Place& place) {
    const bool brackets = sign(place.begin) == '{';
    std::size_t at = place.begin + (brackets ? 1 : 0);
    for (const cases::Entry& entry : map.entries) {
      Place inner = within(place, entry.key, brackets);
      for (at = solid(at); brackets && sign(at) == ','; at = solid(at)) ++at;
      inner.start = at;
      if (sign(at) == '?' && (is_blank(sign(at + 1)) || is_break(sign(at + 1)))) at = solid(at + 1);
      while (sign(at) == '&') at = solid(behind_word(at));
      at = sign(at) == '*' ? behind_word(at) : scalar(entry.key, at);
      const std::size_t colon = solid(at);
      if (sign(colon) == ':') {
        at = colon + 1;
      } else if (entry.value.kind != Kind::nothing) {
        throw Lost{};
      }
      at = value(entry.value, std::move(inner), at);
    }
    return brackets ? closed(at, '}') : at;
  }

  [[nodiscard]] std::size_t closed(std::size_t at, char bracket) const {
    for (at = solid(at); sign(at) == ',' || sign(at) == ':'; at = solid(at)) ++at;
    if (sign(at) != bracket) throw Lost{};
    return at + 1;
  }

  /// Behind a scalar that reads as `means`.
  [[nodiscard]] std::size_t scalar(std::string_view means, std::size_t at) const {
    switch (sign(at)) {
      case '"':
        for (++at; sign(at) != '"'; ++at) {
          if (sign(at) == '\\') ++at;
          if (at >= text_.size()) throw Lost{};
        }
        return at + 1;
      case '\'':
        for (++at;; ++at) {
          if (at >= text_.size()) throw Lost{};
          if (text_[at] == '\'' && sign(at + 1) != '\'') return at + 1;
          if (text_[at] == '\'') ++at;
        }
      case '|':
      case '>':
        return block(at);
      default:
        return plain(means, at);
    }
  }

  /// Behind the last line of a text that stands indented below its sign.
  [[nodiscard]] std::size_t block(std::size_t at) const {
    std::size_t end = std::min(text_.find_first_of("\r\n", at), text_.size());
    std::size_t indent = 0;
    for (std::size_t line = end; line < text_.size();) {
      line += text_.substr(line, 2) == "\r\n" ? 2 : 1;
      const std::size_t first = std::min(text_.find_first_not_of(' ', line), text_.size());
      const std::size_t stop = std::min(text_.find_first_of("\r\n", line), text_.size());
      if (first < stop) {
        if (indent == 0) indent = first - line;
        if (first - line < indent || indent == 0) break;
        end = stop;
      }
      line = stop;
    }
    return end;
  }

  /// Its signs stand in the text as they are, but for breaks of lines, which read as blanks.
  [[nodiscard]] std::size_t plain(std::string_view means, std::size_t at) const {
    for (std::size_t k = 0; k < means.size(); ++k) {
      const bool folded = is_blank(means[k]) || means[k] == '\n';
      if (sign(at) == means[k] && !is_break(means[k])) {
        ++at;
      } else if (!folded) {
        throw Lost{};
      }
      if (!folded) continue;
      std::size_t beyond = at;  // a line ends here
      while (is_blank(sign(beyond))) ++beyond;
      if (!is_break(sign(beyond))) continue;
      while (k + 1 < means.size() && means[k + 1] == '\n') ++k;
      at = std::min(text_.find_first_not_of(" \t\r\n", beyond), text_.size());
    }
    return at;
  }

  std::string_view text_;
  std::vector<Place>& places_;
  std::map<std::string_view, std::size_t> anchors_;
};

}  // namespace

cases::Node tree_in(std::string_view text) {
  cases::FaultList faults("", text);
  std::optional<Node> tree = cases::tree_of(text, faults);
  if (!tree || !faults.empty()) throw cases::InputError(faults.sorted());
  return *std::move(tree);
}

Written::Written(std::string_view text) : text_(text), root_(tree_in(text)) {
  const char* const base = text_.data();
  for (const std::string_view line : cases::lines_of(cases::without_byte_order_mark(text_)))
    lines_.push_back(static_cast<std::size_t>(line.data() - base));
  try {
    Walker(text_, places_).document(root_);
  } catch (const Lost&) {
    cases::FaultList faults("", text_);
    faults.add({}, {"this text is read, but cannot be changed in place", "", "",
                    "change it in the text itself"});
    throw cases::InputError(faults.sorted());
  }
}

const Place* Written::find(std::string_view path) const {
  const auto found = std::find_if(places_.begin(), places_.end(),
                                  [&](const Place& place) { return place.path == path; });
  return found == places_.end() ? nullptr : &*found;
}

std::size_t Written::offset(const cases::Mark& mark) const {
  if (mark.line == 0 || mark.line > lines_.size()) return text_.size();
  return lines_[mark.line - 1] + mark.byte - 1;
}

const Place* Written::written(const cases::Node& node) const {
  const std::size_t at = offset(node.written());
  const auto found = std::find_if(places_.begin(), places_.end(), [&](const Place& place) {
    return !place.is_alias && place.node->kind == node.kind &&
           (place.marked == at || place.begin == at);
  });
  return found == places_.end() ? nullptr : &*found;
}

std::size_t Written::line_start(std::size_t at) const {
  const auto after = std::upper_bound(lines_.begin(), lines_.end(), at);
  return after == lines_.begin() ? 0 : *std::prev(after);
}

std::size_t Written::line_end(std::size_t at) const {
  const auto after = std::upper_bound(lines_.begin(), lines_.end(), at);
  return after == lines_.end() ? text_.size() : *after;
}

cases::Mark Written::mark_of(std::size_t at) const {
  const auto after = std::upper_bound(lines_.begin(), lines_.end(), at);
  const std::size_t start = line_start(at);
  return {static_cast<std::size_t>(after - lines_.begin()),
          cases::characters(std::string_view(text_).substr(start, at - start)) + 1};
}

std::string pointed(std::string_view path, std::string_view step) {
  std::string joined(path);
  if (!path.empty()) joined += '/';
  for (const char sign : step) {
    if (sign == '~' || sign == '/') {
      joined += sign == '~' ? "~0" : "~1";
    } else {
      joined += sign;
    }
  }
  return joined;
}

std::optional<LastStep> last_step(std::string_view path) {
  if (path.empty()) return std::nullopt;
  const std::size_t slash = path.rfind('/');
  LastStep last;
  if (slash != std::string_view::npos) last.path = path.substr(0, slash);
  const std::string_view step = slash == std::string_view::npos ? path : path.substr(slash + 1);
  for (std::size_t k = 0; k < step.size(); ++k) {
    const bool escaped = step[k] == '~' && k + 1 < step.size();
    last.step += escaped ? (step[++k] == '0' ? '~' : '/') : step[k];
  }
  return last;
}

std::vector<std::string> steps_of(std::string_view path) {
  std::vector<std::string> steps;
  for (std::optional<LastStep> last = last_step(path); last; last = last_step(last->path))
    steps.push_back(last->step);
  std::reverse(steps.begin(), steps.end());
  return steps;
}

}  // namespace quoin::door
