// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "cases/grammar/vocabulary.hpp"
#include "cases/model/case.hpp"
#include "cases/text/named.hpp"

namespace quoin::cases {

/// The months as they are written: in lists, or in a table beside the case file.
struct WrittenClimate {
  std::string table, source;
  std::optional<ByMonth> outside_temperature, outside_humidity;
  std::optional<ByMonth> inside_temperature, inside_humidity;
};

template <class Visitor>
void describe(Visitor& visit, WrittenClimate& climate) {
  visit.text("source", climate.source, "where the values come from");
  visit.text(
      "table", climate.table,
      "a CSV file beside the case file with twelve rows and these columns; in any order with a "
      "column `month`, else January first");
  visit.months("outside temperature", climate.outside_temperature, Measure::temperature,
               {-60.0, 50.0}, "monthly means");
  visit.months("outside humidity", climate.outside_humidity, Measure::humidity, {0.05, 1.0},
               "monthly means");
  visit.months("inside temperature", climate.inside_temperature, Measure::temperature,
               {-10.0, 40.0}, "of every space inside; its own all year where not given");
  visit.months("inside humidity", climate.inside_humidity, Measure::humidity, {0.05, 1.0},
               "of every space inside; by its own rule where not given");
}

/// The layer whose thickness is changed.
struct WrittenThickness {
  std::string of;
  double from = 0.001, to = needed;
};

template <class Visitor>
void describe(Visitor& visit, WrittenThickness& thickness) {
  visit.word("of", thickness.of, "the material of a layer of the recipe");
  visit.length("from", thickness.from, 0.0001, 5.0, "the least thickness");
  visit.length("up to", thickness.to, 0.0001, 5.0, "the greatest thickness");
}

/// The material whose moisture is changed.
struct WrittenDryness {
  static constexpr std::string_view alone = "of";
  std::string of;
};

template <class Visitor>
void describe(Visitor& visit, WrittenDryness& dryness) {
  visit.word("of", dryness.of, "the material");
}

/// What is changed until a criterion just holds, as it is written.
struct WrittenEnough {
  std::optional<WrittenThickness> thickness;
  std::optional<WrittenDryness> moisture;
};

template <class Visitor>
void describe(Visitor& visit, WrittenEnough& enough) {
  visit.group("thickness", enough.thickness,
              "of a layer, changed until each criterion just holds: the least that is enough");
  visit.group("moisture", enough.moisture,
              "of a material, changed until each criterion just holds: the most that is allowed");
}

}  // namespace quoin::cases
