// SPDX-License-Identifier: Apache-2.0
#include "cases/text/json.hpp"

#include <fmt/format.h>

namespace quoin::cases {
namespace {

std::string quoted(std::string_view text) {
  std::string result = "\"";
  for (const char sign : text) {
    if (sign == '"' || sign == '\\') {
      result += '\\';
      result += sign;
    } else if (static_cast<unsigned char>(sign) < 0x20) {
      result += fmt::format("\\u{:04x}", static_cast<unsigned>(sign));
    } else {
      result += sign;
    }
  }
  return result + '"';
}

}  // namespace

Json Json::text(std::string_view value) {
  Json json;
  json.scalar_ = quoted(value);
  return json;
}

Json Json::number(double value) { return number_text(fmt::format("{:.15g}", value)); }

Json Json::number_text(std::string digits) {
  Json json;
  json.scalar_ = std::move(digits);
  return json;
}

Json Json::boolean(bool value) {
  Json json;
  json.scalar_ = value ? "true" : "false";
  return json;
}

Json Json::list(std::vector<Json> items) {
  Json json;
  json.kind_ = Kind::list;
  json.items_ = std::move(items);
  return json;
}

Json Json::texts(const std::vector<std::string>& items) {
  Json json = list();
  for (const std::string& item : items) json.add(text(item));
  return json;
}

Json Json::object() {
  Json json;
  json.kind_ = Kind::object;
  return json;
}

Json& Json::set(std::string key, Json value) {
  members_.emplace_back(std::move(key), std::move(value));
  return *this;
}

std::string Json::written(std::size_t indent) const {
  if (kind_ == Kind::scalar) return scalar_;
  const bool is_list = kind_ == Kind::list;
  if (empty()) return is_list ? "[]" : "{}";
  const std::string margin(indent + 2, ' ');
  std::string result;
  for (const Json& item : items_)
    result += fmt::format("{}\n{}{}", result.empty() ? "" : ",", margin, item.written(indent + 2));
  for (const auto& [key, value] : members_) {
    result += fmt::format("{}\n{}{}: {}", result.empty() ? "" : ",", margin, quoted(key),
                          value.written(indent + 2));
  }
  return fmt::format("{}{}\n{}{}", is_list ? '[' : '{', result, std::string(indent, ' '),
                     is_list ? ']' : '}');
}

}  // namespace quoin::cases
