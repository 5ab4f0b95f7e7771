// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <fmt/format.h>

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "cases/grammar/units.hpp"
#include "cases/grammar/vocabulary.hpp"
#include "cases/grammar/written.hpp"
#include "cases/text/yaml_words.hpp"

namespace quoin::cases {

/// The map that a described value is written as. Keys that need not be said are left out.
template <class T>
[[nodiscard]] YamlMap map_of(T& value);

/// A number in the unit of bare numbers, the unit spelt out where a bare number would puzzle.
[[nodiscard]] inline std::string with_unit(double value, Measure measure) {
  const bool spelt = measure == Measure::water_volume || measure == Measure::share;
  return bare_number(value, measure) + (spelt ? ' ' + std::string(spoken(measure).unit) : "");
}

/// A visitor that writes what a described value holds.
class Writer : public Vocabulary<Writer> {
 public:
  explicit Writer(YamlMap& map) : map_(map) {}

  void quantity(std::string_view key, double value, Measure measure, Range /*plausible*/,
                std::string_view /*about*/) {
    map_.add(key, with_unit(value, measure));
  }
  void quantity(std::string_view key, const std::optional<double>& value, Measure measure,
                Range plausible, std::string_view about) {
    if (value) quantity(key, *value, measure, plausible, about);
  }
  void sourced(std::string_view key, const std::optional<materials::Sourced>& value,
               Measure measure, Range plausible, std::string_view /*about*/) {
    if (!value) return;
    if (value->source.empty() && value->confidence == materials::Confidence::stated &&
        !value->low && !value->high) {
      map_.add(key, with_unit(value->value, measure));
      return;
    }
    YamlMap inner;
    Writer writer(inner);
    materials::Sourced copy = *value;
    describe_sourced(writer, copy, measure, plausible);
    map_.add(key, inner.text());
  }
  void table(std::string_view key, const std::vector<std::pair<double, double>>& rows,
             std::string_view /*left*/, std::string_view /*right*/, std::string_view /*about*/) {
    std::string text;
    for (const auto& [from, to] : rows)
      text += fmt::format("{}{}: {}", text.empty() ? "" : ", ", from, to);
    map_.add(key, '{' + text + '}');
  }
  void text(std::string_view key, const std::string& value, std::string_view /*about*/) {
    if (!value.empty()) map_.add(key, yaml_word(value));
  }
  void word(std::string_view key, const std::string& value, std::string_view about) {
    text(key, value, about);
  }
  void moisture(std::string_view key, const std::optional<WrittenMoisture>& value,
                std::string_view /*about*/) {
    if (value) map_.add(key, yaml_word(value->text));
  }
  void coat(std::string_view key, const std::optional<materials::Coat>& value,
            std::string_view /*about*/) {
    if (value) map_.add(key, yaml_word(value->name));
  }
  void coats(std::string_view key, const std::vector<materials::Coat>& list,
             std::string_view /*about*/) {
    if (list.empty()) return;
    std::string text;
    for (const materials::Coat& coat : list)
      text += (text.empty() ? "" : ", ") + yaml_word(coat.name);
    map_.add(key, '[' + text + ']');
  }
  template <class T>
  void choice(std::string_view key, const T& value, const Words<Plain<T>>& words,
              std::string_view /*about*/) {
    for (const auto& [word, meaning] : words) {
      if (value == meaning) map_.add(key, std::string(word));
    }
  }
  template <class T>
  void group(std::string_view key, std::optional<T>& value, std::string_view /*about*/) {
    if (!value) return;
    if (const YamlMap inner = map_of(*value); !inner.empty()) map_.add(key, inner.text());
  }
  template <class... T>
  void alternatives(std::optional<std::variant<T...>>& value) {
    if (value) std::visit([&](auto& kind) { map_.add(kind.name, map_of(kind).text()); }, *value);
  }
  void amounts(std::string_view key, const std::vector<Named<double>>& list, Measure measure,
               Range /*plausible*/, std::string_view /*about*/) {
    if (list.empty()) return;
    YamlMap inner;
    for (const Named<double>& one : list) inner.add(one.name, with_unit(one.value, measure));
    map_.add(key, inner.text());
  }
  void months(std::string_view key, const std::optional<ByMonth>& values, Measure measure,
              Range /*plausible*/, std::string_view /*about*/) {
    if (!values) return;
    std::string text;
    for (const double value : *values)
      text += (text.empty() ? "" : ", ") + bare_number(value, measure);
    map_.add(key, '[' + text + ']');
  }
  template <class... T>
  void one_of(std::string_view key, std::optional<std::variant<T...>>& value,
              std::string_view /*about*/) {
    if (!value) return;
    std::visit(
        [&](auto& kind) {
          YamlMap outer;
          outer.add(kind.name, map_of(kind).text());
          map_.add(key, outer.text());
        },
        *value);
  }

 private:
  YamlMap& map_;
};

template <class T>
YamlMap map_of(T& value) {
  YamlMap map;
  Writer writer(map);
  describe(writer, value);
  return map;
}

}  // namespace quoin::cases
