// SPDX-License-Identifier: Apache-2.0
#include "cases/text/yaml_path.hpp"

#include <charconv>

namespace quoin::cases {
namespace {

std::string escaped(std::string_view key) {
  std::string step;
  for (const char sign : key) {
    if (sign == '~') {
      step += "~0";
    } else if (sign == '/') {
      step += "~1";
    } else {
      step += sign;
    }
  }
  return step;
}

std::string unescaped(std::string_view step) {
  std::string key;
  for (std::size_t k = 0; k < step.size(); ++k) {
    const char next = k + 1 < step.size() ? step[k + 1] : '\0';
    const bool spelt = step[k] == '~' && (next == '0' || next == '1');
    key += !spelt ? step[k] : next == '0' ? '~' : '/';
    if (spelt) ++k;
  }
  return key;
}

Node* inner_value(Node& of, const std::string& step) {
  if (of.kind == Node::Kind::map) {
    Entry* entry = of.find(step);
    return entry == nullptr ? nullptr : &entry->value;
  }
  std::size_t position = 0;
  const auto [end, error] = std::from_chars(step.data(), step.data() + step.size(), position);
  const bool is_position = error == std::errc() && end == step.data() + step.size();
  if (of.kind != Node::Kind::sequence || !is_position || position >= of.items.size()) {
    return nullptr;
  }
  return &of.items[position];
}

void add_paths(const Node& tree, const std::string& before, std::vector<std::string>& paths) {
  const auto add = [&](const std::string& step, const Node& value) {
    paths.push_back(before + step);
    add_paths(value, paths.back() + '/', paths);
  };
  for (const Entry& entry : tree.entries) add(escaped(entry.key), entry.value);
  for (std::size_t k = 0; k < tree.items.size(); ++k) add(std::to_string(k), tree.items[k]);
}

}  // namespace

std::vector<std::string> steps_of(std::string_view path) {
  std::vector<std::string> steps;
  for (;;) {
    const std::size_t slash = path.find('/');
    steps.push_back(unescaped(path.substr(0, slash)));
    if (slash == std::string_view::npos) return steps;
    path.remove_prefix(slash + 1);
  }
}

Node* value_at(Node& tree, const std::vector<std::string>& steps) {
  Node* at = &tree;
  for (const std::string& step : steps) {
    if (at == nullptr) return nullptr;
    at = inner_value(*at, step);
  }
  return at;
}

std::vector<std::string> paths_of(const Node& tree) {
  std::vector<std::string> paths;
  add_paths(tree, "", paths);
  return paths;
}

}  // namespace quoin::cases
