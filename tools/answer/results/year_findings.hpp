// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "solver/findings/findings.hpp"

namespace quoin::tools {

using geometry::SpaceId;

/// The air on both sides in one month.
struct MonthAir {
  double outside_temperature = 0.0;  ///< degC
  double outside_humidity = 0.0;     ///< relative
  double outside_pressure = 0.0;     ///< of vapour, Pa
  double inside_temperature = 0.0;   ///< degC
  double inside_humidity = 0.0;      ///< relative
  double inside_pressure = 0.0;      ///< of vapour, Pa
};

/// A cold spot through the months.
struct SpotYear {
  solver::Spot spot;
  std::array<double, 12> temperature{};  ///< degC
  std::array<double, 12> humidity{};     ///< at the surface, relative; above 1 it condenses
};

/// What one criterion asks for through the months.
struct YearOfCriterion {
  std::string criterion;
  std::array<double, 12> lowest_temperature{};           ///< of a surface that just passes, degC
  std::array<double, 12> monthly_factor_needed{};        ///< NaN where it is no warmer inside
  std::size_t critical_month = 0;                        ///< that which needs the highest factor
  double factor_needed = 0.0;                            ///< in that month; NaN where there is none
  std::vector<std::vector<std::size_t>> months_at_risk;  ///< Shape: spots of the year
};

/// The year of one inside air.
struct Year {
  SpaceId air;
  std::array<MonthAir, 12> months{};
  std::vector<SpotYear> spots;            ///< of the fabric, coldest first
  std::vector<YearOfCriterion> criteria;  ///< those that look at the humidity
};

/// Where a changed value just lets a criterion hold.
struct Threshold {
  enum class Kind {
    found,         ///< from the value on, as far as was tried
    holds_always,  ///< at both ends of what was tried, and between
    holds_never,
    up_to,       ///< of thickness: from the first tried to `until`; more does harm
    between,     ///< of thickness: from the value to `until`; more does harm
    up_to_damp,  ///< holds as wet as insulated masonry may be: no wetter than damp
    dry_first,   ///< withheld: insulation would shut in masonry wetter than damp
  };
  /// What more of it does where no value lets the criterion hold.
  enum class More { helps, nothing, harm };
  Kind kind = Kind::found;
  double value = 0.0;  ///< the last one that holds; of holds_never the best one tried
  double until = 0.0;  ///< of a thickness: the greatest that holds
  More more = More::helps;
};

/// What would be enough for one criterion at the coldest spot of one air.
struct EnoughFor {
  std::string criterion;
  SpaceId space;
  std::optional<double> highest_humidity;    ///< of the room, relative; 1: any
  std::optional<double> lowest_temperature;  ///< of the room with the same moisture, degC
  std::optional<Threshold> thickness;        ///< of the layer the case names, m
  std::optional<Threshold> moisture;         ///< of the material the case names, m3/m3
};

}  // namespace quoin::tools
