// SPDX-License-Identifier: Apache-2.0
#include "cases/grammar/written_number.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "cases/grammar/quantity.hpp"
#include "cases/grammar/units.hpp"
#include "cases/text/decimal.hpp"

namespace quoin::cases {
namespace {

bool is_digit(char sign) { return sign >= '0' && sign <= '9'; }

/// How many digits a text begins with.
std::size_t digits(std::string_view text) {
  return static_cast<std::size_t>(std::find_if_not(text.begin(), text.end(), is_digit) -
                                  text.begin());
}

/// How many bytes of a text are a decimal number without a sign; 0 for none.
std::size_t number_length(std::string_view text) {
  std::size_t length = digits(text);
  std::size_t significant = length;
  if (length < text.size() && text[length] == '.') {
    const std::size_t fraction = digits(text.substr(length + 1));
    significant += fraction;
    if (significant > 0) length += 1 + fraction;
  }
  if (significant == 0) return 0;
  if (length < text.size() && (text[length] == 'e' || text[length] == 'E')) {
    std::size_t power = length + 1;
    if (power < text.size() && (text[power] == '+' || text[power] == '-')) ++power;
    const std::size_t count = digits(text.substr(power));
    if (count > 0) length = power + count;
  }
  return length;
}

bool is_not_finite(std::string_view text) {
  std::string lower(text);
  std::transform(lower.begin(), lower.end(), lower.begin(), [](unsigned char sign) {
    return static_cast<char>(sign >= 'A' && sign <= 'Z' ? sign + ('a' - 'A') : sign);
  });
  for (const std::string_view word : {".nan", ".inf", "-.inf", "+.inf", "nan", "inf", "-inf"}) {
    if (lower == word) return true;
  }
  return false;
}

/// A number, perhaps with a minus, without the zeros that say nothing: "-007" is "-7".
std::string without_leading_zeros(std::string number) {
  const std::size_t first = number[0] == '-' ? 1 : 0;
  while (number.size() > first + 1 && number[first] == '0' && is_digit(number[first + 1]))
    number.erase(first, 1);
  return number;
}

/// What is wrong with what follows the digits, where it is more than a unit.
std::optional<Complaint> misread(const std::string& before, std::string_view after) {
  const std::string_view blankless = trimmed(after);
  const bool spaced = blankless.size() < after.size();
  if (!spaced && !after.empty() && after[0] == ',' && after.size() > 1 && is_digit(after[1])) {
    const std::string_view fraction = after.substr(1, digits(after.substr(1)));
    return Complaint{"a comma stands inside a number", before + std::string(after),
                     "a point before the decimals, nothing between thousands",
                     fraction.size() == 3 && before != "0" && before != "-0"
                         ? fmt::format("write {0}.{1} or {0}{1}", before, fraction)
                         : fmt::format("write {}.{}", before, fraction)};
  }
  if (!spaced && after.size() > 2 && after[0] == ':' && is_digit(after[1]) && is_digit(after[2]) &&
      before.size() <= 2 && is_digit(before[0])) {
    const double hours = std::stod(before) + std::stod(std::string(after.substr(1, 2))) / 60;
    return Complaint{"a clock time stands for a number", before + std::string(after),
                     "a time of the day in hours", fmt::format("write {:.4g}", hours)};
  }
  const bool per_unit = spaced && blankless.substr(0, 2) == "1/";
  if (!per_unit && !blankless.empty() && (is_digit(blankless[0]) || blankless[0] == '_')) {
    return Complaint{"something stands between the digits of a number", before + std::string(after),
                     "digits without blanks or underscores", ""};
  }
  if (!spaced && (before == "0" || before == "-0") && !after.empty() &&
      (after[0] == 'x' || after[0] == 'o' || after[0] == 'b') && after.size() > 1 &&
      is_digit(after[1])) {
    return Complaint{"numbers are decimal in a case file", before + std::string(after),
                     "a decimal number", ""};
  }
  return std::nullopt;
}

}  // namespace

std::variant<WrittenNumber, Complaint> written_number(std::string_view text) {
  const std::string_view whole = trimmed(text);
  if (is_not_finite(whole))
    return Complaint{"a case holds only finite numbers", std::string(whole), "a number", ""};
  constexpr std::string_view minus = "−";  // U+2212
  std::string number;
  std::string_view rest = whole;
  if (rest.substr(0, minus.size()) == minus) {
    number = "-";
    rest.remove_prefix(minus.size());
  } else if (!rest.empty() && (rest[0] == '-' || rest[0] == '+')) {
    if (rest[0] == '-') number = "-";
    rest.remove_prefix(1);
  }
  const std::size_t length = number_length(rest);
  if (length == 0) return Complaint{"this is not a number", std::string(whole), "", ""};
  number += rest.substr(0, length);
  rest.remove_prefix(length);
  if (auto complaint = misread(number, rest)) return *complaint;

  const std::string decimal = without_leading_zeros(number);
  if (decimal != number) {
    return Complaint{"a number begins with 0, which some programs read as octal", number,
                     "a decimal number without leading zeros", "write " + decimal};
  }
  double value = 0.0;
  const auto [end, error] = from_decimal(number.data(), number.data() + number.size(), value);
  if (error != std::errc() || end != number.data() + number.size() || !std::isfinite(value))
    return Complaint{"this number is beyond what can be computed with", number, "", ""};
  return WrittenNumber{value, number, normal_unit(rest)};
}

}  // namespace quoin::cases
