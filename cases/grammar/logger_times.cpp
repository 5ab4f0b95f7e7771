// SPDX-License-Identifier: Apache-2.0
#include "cases/grammar/logger_times.hpp"

#include <cctype>
#include <charconv>
#include <chrono>
#include <string>

namespace quoin::cases {
namespace {

/// A text read from its front.
class Front {
 public:
  explicit Front(std::string_view text) : text_(text) {}

  [[nodiscard]] bool empty() const { return text_.empty(); }
  void skip_blanks() {
    while (!text_.empty() && text_.front() == ' ') text_.remove_prefix(1);
  }
  bool take(char c) {
    if (text_.empty() || text_.front() != c) return false;
    text_.remove_prefix(1);
    return true;
  }
  bool take_any(std::string_view of) {
    for (const char c : of) {
      if (take(c)) return true;
    }
    return false;
  }
  /// A whole number and how many digits it has; none: no digits.
  std::size_t number(int& value) {
    const auto read = std::from_chars(text_.data(), text_.data() + text_.size(), value);
    if (text_.empty() || text_.front() == '-' || read.ec != std::errc()) return 0;
    const auto digits = static_cast<std::size_t>(read.ptr - text_.data());
    text_.remove_prefix(digits);
    return digits;
  }
  bool take_word(std::string_view word) {
    if (text_.size() < word.size()) return false;
    for (std::size_t i = 0; i < word.size(); ++i) {
      if (std::tolower(static_cast<unsigned char>(text_[i])) != word[i]) return false;
    }
    text_.remove_prefix(word.size());
    return true;
  }
  [[nodiscard]] std::string_view rest() const { return text_; }

 private:
  std::string_view text_;
};

bool take_zone(Front& front) {
  if (front.empty() || front.take_word("z") || front.take_word("utc") || front.take_word("gmt"))
    return front.empty();
  if (!front.take_any("+-")) return false;
  int hours = 0, minutes = 0;
  if (front.number(hours) == 0) return false;
  if (front.take(':') && front.number(minutes) == 0) return false;
  return front.empty();
}

bool take_clock(Front& front, double& hours) {
  int hour = 0, minute = 0, second = 0;
  if (front.number(hour) == 0 || !front.take(':') || front.number(minute) != 2) return false;
  if (front.take(':')) {
    if (front.number(second) != 2) return false;
    int fraction = 0;
    if (front.take_any(".,") && front.number(fraction) == 0) return false;
  }
  front.skip_blanks();
  const bool morning = front.take_word("am"), evening = !morning && front.take_word("pm");
  if ((morning || evening) && (hour < 1 || hour > 12)) return false;
  if (morning || evening) hour = hour % 12 + (evening ? 12 : 0);
  if (hour > 24 || minute > 59 || second > 60) return false;
  hours = hour + minute / 60.0 + second / 3600.0;
  return true;
}

}  // namespace

std::optional<WrittenTime> written_time_of(std::string_view text) {
  Front front(text);
  WrittenTime time;
  const std::size_t digits = front.number(time.first);
  if (digits == 0 || !front.take_any("-/.")) return std::nullopt;
  time.year_first = digits == 4;
  if (front.number(time.second) == 0 || !front.take_any("-/.")) return std::nullopt;
  if (front.number(time.third) == 0) return std::nullopt;
  front.take_any("T,");
  front.skip_blanks();
  if (front.empty()) return time;
  if (!take_clock(front, time.hours)) return std::nullopt;
  front.skip_blanks();
  if (!take_zone(front)) return std::nullopt;
  return time;
}

std::optional<double> hours_of(const WrittenTime& time, DateOrder order) {
  int year = time.third, month = time.second, day = time.first;
  if (order == DateOrder::year_first) std::swap(year, day);
  if (order == DateOrder::month_first) std::swap(month, day);
  if (year < 100) year += 2000;
  const std::chrono::year_month_day date{std::chrono::year(year),
                                         std::chrono::month(static_cast<unsigned>(month)),
                                         std::chrono::day(static_cast<unsigned>(day))};
  if (!date.ok()) return std::nullopt;
  const auto days = std::chrono::sys_days(date).time_since_epoch().count();
  return 24.0 * static_cast<double>(days) + time.hours;
}

}  // namespace quoin::cases
