// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace quoin::cases {

/// A JSON value, just enough to write a schema.
class Json {
 public:
  [[nodiscard]] static Json text(std::string_view value);
  [[nodiscard]] static Json number(double value);
  [[nodiscard]] static Json number_text(std::string digits);
  [[nodiscard]] static Json boolean(bool value);
  [[nodiscard]] static Json list(std::vector<Json> items = {});
  [[nodiscard]] static Json texts(const std::vector<std::string>& items);
  [[nodiscard]] static Json object();

  /// Adds a member to an object; returns the object.
  Json& set(std::string key, Json value);
  void add(Json item) { items_.push_back(std::move(item)); }
  [[nodiscard]] bool empty() const { return items_.empty() && members_.empty(); }

  /// Indented by two spaces a level, without a newline at the end.
  [[nodiscard]] std::string written(std::size_t indent = 0) const;

 private:
  enum class Kind { scalar, list, object };
  Kind kind_ = Kind::scalar;
  std::string scalar_;  ///< as JSON
  std::vector<Json> items_;
  std::vector<std::pair<std::string, Json>> members_;
};

}  // namespace quoin::cases
