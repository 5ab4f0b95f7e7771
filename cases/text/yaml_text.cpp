// SPDX-License-Identifier: Apache-2.0
#include "cases/text/yaml_text.hpp"

#include <algorithm>
#include <cctype>

#include "cases/text/yaml_words.hpp"

namespace quoin::cases {
namespace {

/// Whether a scalar is nothing but digits, a point and a sign before them: bare it reads the same.
bool is_plain_number(const std::string& text) {
  const std::size_t digits = !text.empty() && text.front() == '-' ? 1 : 0;
  return digits < text.size() && text.back() != '.' &&
         std::isdigit(static_cast<unsigned char>(text[digits])) != 0 &&
         std::all_of(text.begin() + static_cast<std::ptrdiff_t>(digits), text.end(), [](char sign) {
           return std::isdigit(static_cast<unsigned char>(sign)) != 0 || sign == '.';
         });
}

void write(const Node& value, std::string& text) {
  auto separate = [&text, first = true]() mutable {
    if (!first) text += ", ";
    first = false;
  };
  switch (value.kind) {
    case Node::Kind::nothing:
      text += '~';
      return;
    case Node::Kind::scalar:
      text += is_plain_number(value.text) ? value.text : yaml_word(value.text);
      return;
    case Node::Kind::sequence:
      text += '[';
      for (const Node& item : value.items) {
        separate();
        write(item, text);
      }
      text += ']';
      return;
    case Node::Kind::map:
      text += '{';
      for (const Entry& entry : value.entries) {
        separate();
        text += yaml_entry(entry.key, yaml_line(entry.value), " ");
      }
      text += '}';
      return;
  }
}

}  // namespace

std::string yaml_line(const Node& value) {
  std::string text;
  write(value, text);
  return text;
}

std::string yaml_text(const Node& tree) {
  if (tree.kind != Node::Kind::map || tree.entries.empty()) return yaml_line(tree) + '\n';
  std::string text;
  for (const Entry& entry : tree.entries)
    text += yaml_entry(entry.key, yaml_line(entry.value), "\n") + '\n';
  return text;
}

}  // namespace quoin::cases
