// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cases/text/fault_list.hpp"

namespace quoin::cases {

struct Entry;

/// One value of a YAML document and where it stands.
struct Node {
  enum class Kind : std::uint8_t { nothing, scalar, sequence, map };

  Kind kind = Kind::nothing;
  Mark mark;
  std::optional<Mark> first;   ///< of an alias, where what it stands for was written first
  std::string text;            ///< of a scalar
  bool quoted = false;         ///< the scalar was in quotes: never a null
  std::vector<Node> items;     ///< of a sequence
  std::vector<Entry> entries;  ///< of a map, in the order of the text; keys differ

  /// Where its text stands: that of an alias where it was written first.
  [[nodiscard]] const Mark& written() const { return first ? *first : mark; }

  /// The entry of a key; null when the map has none.
  [[nodiscard]] const Entry* find(std::string_view key) const;
  [[nodiscard]] Entry* find(std::string_view key);
};

/// Whether a map has a key that looks like another, mistyped: "temprature", or "temperature:18".
[[nodiscard]] bool has_mistyped(const Node& map, std::string_view key);

/// One key of a map with its value.
struct Entry {
  std::string key;
  Mark mark;  ///< of the key
  Node value;
};

/// What a text may cost to read.
namespace limits {
inline constexpr std::size_t bytes = std::size_t{4} << 20;
inline constexpr std::size_t nodes = 200'000;  ///< after aliases are followed
inline constexpr std::size_t depth = 32;
}  // namespace limits

/// The document a text holds. Aliases are replaced by what they stand for. Whatever YAML allows but
/// a case file does not is a fault: tags, merge keys, keys that are no plain words, duplicate keys,
/// several documents, aliases to themselves, control characters, anything beyond the limits.
/// Returns nothing where the text is too broken to be read further.
[[nodiscard]] std::optional<Node> tree_of(std::string_view text, FaultList& faults);

/// What a value is, in words for a person: "a map", "a list", "nothing", or the scalar itself.
[[nodiscard]] std::string words_of(const Node& node);

}  // namespace quoin::cases
