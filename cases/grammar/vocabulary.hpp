// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <initializer_list>
#include <optional>
#include <string_view>
#include <utility>

#include "cases/grammar/quantity.hpp"
#include "cases/grammar/units.hpp"

namespace quoin::cases {

/// The words a `describe(visitor, value)` may use for numbers, put down to one method of the
/// visitor: quantity(key, value, measure, plausible range, about). The range is in inside units.
/// A plain double is an input with the default it has, or a needed one if that is NaN; an
/// optional one may be absent.
template <class Visitor>
class Vocabulary {
 public:
  template <class T>
  void length(std::string_view key, T& value, double low, double high, std::string_view about,
              std::optional<double> example = {}) {
    static_cast<Visitor&>(*this).quantity(key, value, Measure::length, Range{low, high, example},
                                          about);
  }
  template <class T>
  void temperature(std::string_view key, T& value, double low, double high,
                   std::string_view about) {
    tell(key, value, Measure::temperature, low, high, about);
  }
  template <class T>
  void difference(std::string_view key, T& value, double low, double high, std::string_view about) {
    tell(key, value, Measure::difference, low, high, about);
  }
  template <class T>
  void humidity(std::string_view key, T& value, double low, double high, std::string_view about) {
    tell(key, value, Measure::humidity, low, high, about);
  }
  /// A humidity that may tell how far it is known. Visitors that write or read it have their own.
  template <class T>
  void humidity_give_or_take(std::string_view key, T& value, T& /*spread*/, double low, double high,
                             std::string_view about) {
    tell(key, value, Measure::humidity, low, high, about);
  }
  template <class T>
  void conductivity(std::string_view key, T& value, double low, double high,
                    std::string_view about) {
    tell(key, value, Measure::conductivity, low, high, about);
  }
  template <class T>
  void resistance(std::string_view key, T& value, double low, double high, std::string_view about) {
    tell(key, value, Measure::resistance, low, high, about);
  }
  template <class T>
  void density(std::string_view key, T& value, double low, double high, std::string_view about) {
    tell(key, value, Measure::density, low, high, about);
  }
  template <class T>
  void speed(std::string_view key, T& value, double low, double high, std::string_view about) {
    tell(key, value, Measure::speed, low, high, about);
  }
  template <class T>
  void volume_fraction(std::string_view key, T& value, double low, double high,
                       std::string_view about) {
    tell(key, value, Measure::water_volume, low, high, about);
  }
  template <class T>
  void moisture_rate(std::string_view key, T& value, double low, double high,
                     std::string_view about) {
    tell(key, value, Measure::moisture_rate, low, high, about);
  }
  template <class T>
  void volume(std::string_view key, T& value, double low, double high, std::string_view about) {
    tell(key, value, Measure::volume, low, high, about);
  }
  template <class T>
  void air_change(std::string_view key, T& value, double low, double high, std::string_view about) {
    tell(key, value, Measure::air_change, low, high, about);
  }
  template <class T>
  void evaporation(std::string_view key, T& value, double low, double high,
                   std::string_view about) {
    tell(key, value, Measure::evaporation, low, high, about);
  }
  template <class T>
  void pressure(std::string_view key, T& value, double low, double high, std::string_view about) {
    tell(key, value, Measure::pressure, low, high, about);
  }
  template <class T>
  void openings(std::string_view key, T& value, double low, double high, std::string_view about) {
    tell(key, value, Measure::openings, low, high, about);
  }
  template <class T>
  void duration(std::string_view key, T& value, double low, double high, std::string_view about) {
    tell(key, value, Measure::duration, low, high, about);
  }
  template <class T>
  void share(std::string_view key, T& value, double low, double high, std::string_view about) {
    tell(key, value, Measure::share, low, high, about);
  }
  template <class T>
  void number(std::string_view key, T& value, double low, double high, std::string_view about) {
    tell(key, value, Measure::number, low, high, about);
  }

 private:
  template <class T>
  void tell(std::string_view key, T& value, Measure measure, double low, double high,
            std::string_view about) {
    static_cast<Visitor&>(*this).quantity(key, value, measure, Range{low, high}, about);
  }
};

/// The words of a choice and what each stands for.
template <class T>
using Words = std::initializer_list<std::pair<std::string_view, T>>;

/// The type of a value that may be absent, or of one that may not.
template <class T>
struct PlainType {
  using type = T;
};
template <class T>
struct PlainType<std::optional<T>> {
  using type = T;
};
template <class T>
using Plain = typename PlainType<T>::type;

}  // namespace quoin::cases
