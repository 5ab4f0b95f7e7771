// SPDX-License-Identifier: Apache-2.0
#include "cases/text/yaml_slips.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace quoin::cases {
namespace {

constexpr std::string_view what = "this is not valid YAML";

/// The byte of the first tab among the blanks a line begins with.
std::optional<std::size_t> leading_tab(std::string_view line) {
  const std::size_t text = std::min(line.find_first_not_of(" \t"), line.size());
  const std::size_t tab = line.substr(0, text).find('\t');
  return tab == std::string_view::npos ? std::nullopt : std::optional(tab);
}

/// The byte of a colon that ends a key but is not followed by a blank: `humidity:62`.
std::optional<std::size_t> tight_colon(std::string_view line) {
  const std::size_t start = line.find_first_not_of(" -");
  if (start == std::string_view::npos || line[start] == '#' || line[start] == '"' ||
      line[start] == '\'')
    return std::nullopt;
  const std::size_t colon = line.find(':', start);
  if (colon == std::string_view::npos || colon + 1 >= line.size() || line[colon + 1] == ' ')
    return std::nullopt;
  return colon;
}

/// The byte of a dash that begins an item but is not followed by a blank: `-{material: ...}`.
std::optional<std::size_t> tight_dash(std::string_view line) {
  const std::size_t dash = line.find_first_not_of(' ');
  if (dash == std::string_view::npos || line[dash] != '-' || dash + 1 >= line.size())
    return std::nullopt;
  constexpr std::string_view begins_an_item = "{[\"'";
  const char next = line[dash + 1];
  return begins_an_item.find(next) == std::string_view::npos ? std::nullopt : std::optional(dash);
}

/// A bracket or quote that is still open at the end of the text, or one too many.
struct Unbalanced {
  Mark mark;
  char sign;
};

/// Follows brackets and quotes through the text, leaving out comments.
std::optional<Unbalanced> unbalanced(const std::vector<std::string_view>& lines) {
  std::vector<Unbalanced> open;
  for (std::size_t number = 1; number <= lines.size(); ++number) {
    const std::string_view line = lines[number - 1];
    for (std::size_t i = 0; i < line.size(); ++i) {
      const char sign = line[i];
      const bool quoting = !open.empty() && (open.back().sign == '"' || open.back().sign == '\'');
      const bool after_blank = i == 0 || line[i - 1] == ' ';
      const bool begins_value = after_blank || line[i - 1] == '[' || line[i - 1] == '{' ||
                                line[i - 1] == ',' || line[i - 1] == ':';
      if (quoting) {
        if (sign == '\\' && open.back().sign == '"') {
          ++i;
        } else if (sign == open.back().sign) {
          open.pop_back();
        }
      } else if (sign == '#' && after_blank) {
        break;
      } else if ((sign == '"' || sign == '\'') && begins_value) {
        open.push_back({{number, i + 1}, sign});
      } else if (sign == '[' || sign == '{') {
        if (!open.empty() || begins_value) open.push_back({{number, i + 1}, sign});
      } else if (sign == ']' || sign == '}') {
        if (open.empty()) return std::nullopt;
        if (open.back().sign != (sign == ']' ? '[' : '{')) return open.back();
        open.pop_back();
      }
    }
  }
  return open.empty() ? std::nullopt : std::optional(open.front());
}

std::string_view counterpart(char sign) {
  switch (sign) {
    case '[':
      return "]";
    case '{':
      return "}";
    case '"':
      return "\"";
    default:
      return "'";
  }
}

/// A parser's message in plain words.
std::string_view in_plain_words(const std::string& message) {
  struct Words {
    std::string_view theirs, ours;
  };
  constexpr Words list[] = {
      {"end of map not found", "keys of one map must begin in the same column"},
      {"end of sequence not found", "the dashes of one list must stand in the same column"},
      {"end of map flow not found", "a map in braces: {key: value, key: value}"},
      {"end of sequence flow not found", "a list in brackets: [value, value]"},
      {"illegal map value", "one `key: value` in a line; a value with a colon goes in quotes"},
      {"illegal map key", "a key at the beginning of its line"},
      {"illegal block entry", "a dash only where a list may stand, in a line of its own"},
      {"illegal flow end", "no closing bracket without its opening one"},
      {"illegal EOF in scalar", "a closing quote"},
      {"the referenced anchor is not defined", "an anchor (&name) before its alias (*name)"},
      {"unknown escape character", "a known escape: a backslash in double quotes is special"},
      {"unknown token", "a text that begins with @, ` or % goes in quotes"},
  };
  for (const Words& words : list) {
    if (message.substr(0, words.theirs.size()) == words.theirs) return words.ours;
  }
  return "YAML: `key: value` lines, indented with spaces";
}

std::string trimmed(std::string_view line) {
  const std::size_t start = line.find_first_not_of(" \t");
  return start == std::string_view::npos ? std::string() : std::string(line.substr(start));
}

}  // namespace

SyntaxError syntax_error(const std::string& message, Mark mark,
                         const std::vector<std::string_view>& lines) {
  const auto line = [&](std::size_t number) {
    return number >= 1 && number <= lines.size() ? lines[number - 1] : std::string_view();
  };
  // The parser notices a slip where it can make no more sense of the text: there or a line later.
  std::size_t previous = mark.line > 0 ? mark.line - 1 : 0;
  while (previous > 0 && line(previous).find_first_not_of(" \t") == std::string_view::npos)
    --previous;
  for (const std::size_t number : {mark.line, previous}) {
    if (const auto tab = leading_tab(line(number))) {
      return {{number, *tab + 1},
              {"a tab stands in the indentation", "a tab", "spaces",
               "replace the tab by spaces; YAML does not allow tabs there"}};
    }
  }
  for (const std::size_t number : {mark.line, previous}) {
    if (const auto dash = tight_dash(line(number))) {
      return {{number, *dash + 1},
              {"a space is missing after the dash", trimmed(line(number)), "- item",
               "put a space after the dash"}};
    }
  }
  for (const std::size_t number : {previous, mark.line}) {
    if (const auto colon = tight_colon(line(number))) {
      return {{number, *colon + 1},
              {"a space is missing after the colon", trimmed(line(number)), "key: value",
               "put a space after the colon"}};
    }
  }
  if (const auto open = unbalanced(lines)) {
    return {open->mark,
            {fmt::format("the '{}' opened here is not closed", open->sign),
             trimmed(line(open->mark.line)), fmt::format("a '{}'", counterpart(open->sign)),
             "close it, or put a text that contains such a sign in quotes"}};
  }
  return {mark,
          {std::string(what), trimmed(line(mark.line)), std::string(in_plain_words(message)),
           "look at this line and the one before it"}};
}

}  // namespace quoin::cases
