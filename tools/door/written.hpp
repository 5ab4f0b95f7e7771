// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cases/text/yaml_tree.hpp"

namespace quoin::door {

/// One value of a case file and where it stands in its author's text, in bytes from 0.
struct Place {
  std::string path;           ///< keys and list positions, as pointed() joins them
  const cases::Node* node{};  ///< never null
  std::size_t start = 0;      ///< of the entry: of its key, its dash, or the value
  std::size_t marked = 0;     ///< of the value with its anchor
  std::size_t begin = 0;      ///< of the value itself
  std::size_t end = 0;        ///< just behind it
  bool in_brackets = false;   ///< stands between brackets
  bool behind_alias = false;  ///< the path leads through an alias to what is written elsewhere
  bool is_alias = false;      ///< is itself an alias, from `begin` to `end`
};

/// A case file as its author wrote it, every value with its place.
class Written {
 public:
  /// Throws: InputError where the text holds no tree of values.
  explicit Written(std::string_view text);
  Written(const Written&) = delete;
  Written& operator=(const Written&) = delete;

  [[nodiscard]] const std::string& text() const { return text_; }
  [[nodiscard]] const cases::Node& root() const { return root_; }
  /// A collection before what it holds, the whole document first.
  [[nodiscard]] const std::vector<Place>& places() const { return places_; }
  /// The place of a path; null where there is none.
  [[nodiscard]] const Place* find(std::string_view path) const;
  /// Where a value of the tree, or a copy of it made by an alias, is written; null where unknown.
  [[nodiscard]] const Place* written(const cases::Node& node) const;
  /// The beginning of the line that a byte is in.
  [[nodiscard]] std::size_t line_start(std::size_t at) const;
  /// Behind the end of that line, or of the text.
  [[nodiscard]] std::size_t line_end(std::size_t at) const;
  /// The line and the character in it, each from 1.
  [[nodiscard]] cases::Mark mark_of(std::size_t at) const;

 private:
  [[nodiscard]] std::size_t offset(const cases::Mark& mark) const;

  std::string text_;
  std::vector<std::size_t> lines_;  ///< where each begins
  cases::Node root_;
  std::vector<Place> places_;
};

/// The tree of a text. Throws: InputError.
[[nodiscard]] cases::Node tree_in(std::string_view text);

/// A path and one step more: steps are joined by '/', a '~' or '/' in one is written ~0 or ~1.
[[nodiscard]] std::string pointed(std::string_view path, std::string_view step);
/// The path without its last step, and that step; nothing for the whole document.
struct LastStep {
  std::string path;
  std::string step;
};
[[nodiscard]] std::optional<LastStep> last_step(std::string_view path);
[[nodiscard]] std::vector<std::string> steps_of(std::string_view path);

}  // namespace quoin::door
