// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace quoin::cases {

/// A text as YAML shows it: bare where that is safe, else in double quotes.
[[nodiscard]] std::string yaml_word(std::string_view text);

/// `key: value`; where the key is longer than YAML takes it, `? key`, what stands between, `:
/// value`.
[[nodiscard]] std::string yaml_entry(std::string_view key, std::string_view value,
                                     std::string_view between);

/// `{key: value, key: value}`, built key by key.
class YamlMap {
 public:
  /// The value is already YAML.
  void add(std::string_view key, std::string value);
  [[nodiscard]] bool empty() const { return entries_.empty(); }
  [[nodiscard]] std::string text() const;

 private:
  std::vector<std::string> entries_;
};

}  // namespace quoin::cases
