// SPDX-License-Identifier: Apache-2.0
#include "tools/year.hpp"

#include <algorithm>
#include <limits>

#include "materials/moist_air.hpp"
#include "solver/other_temperatures.hpp"
#include "tools/conditions.hpp"
#include "tools/physics.hpp"

namespace quoin::tools {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

MonthAir air_in(const cases::Climate& climate, const cases::Space& room, std::size_t month) {
  MonthAir air;
  air.outside_temperature = climate.outside_temperature[month];
  air.outside_humidity = climate.outside_humidity[month];
  air.outside_pressure =
      air.outside_humidity * materials::saturation_pressure(air.outside_temperature);
  air.inside_temperature =
      climate.inside_temperature ? (*climate.inside_temperature)[month] : room.temperature;
  air.inside_pressure = climate.inside_humidity
                            ? (*climate.inside_humidity)[month] *
                                  materials::saturation_pressure(air.inside_temperature)
                            : vapour_pressure_in(room, air.inside_temperature,
                                                 air.outside_temperature, air.outside_humidity);
  air.inside_humidity =
      air.inside_pressure / materials::saturation_pressure(air.inside_temperature);
  return air;
}

/// What a surface needs in each month to pass a test.
void add_needs(const materials::Test& test, const std::array<MonthAir, 12>& airs,
               YearOfCriterion& year) {
  year.factor_needed = nan;
  for (std::size_t month = 0; month < airs.size(); ++month) {
    const MonthAir& air = airs[month];
    const double lowest = materials::lowest_temperature(
        test, air.inside_pressure, {air.inside_temperature, air.outside_temperature});
    const bool heated = air.inside_temperature > air.outside_temperature;
    const double factor = heated ? materials::temperature_factor(lowest, air.inside_temperature,
                                                                 air.outside_temperature)
                                 : nan;
    year.lowest_temperature[month] = lowest;
    year.monthly_factor_needed[month] = factor;
    if (heated && !(factor <= year.factor_needed)) {
      year.factor_needed = factor;
      year.critical_month = month;
    }
  }
}

/// A cold spot through the months.
SpotYear spot_year(const SolvedVariant& solved, SpaceId room, const solver::Spot& spot,
                   const std::array<MonthAir, 12>& airs) {
  const solver::Field& field = solved.surface.field;
  const solver::SpaceTemperatures stated = temperatures_of(solved.variant);
  const std::vector<double> weights = solver::weights_at(field, spot.place);
  SpotYear year;
  year.spot = spot;
  for (std::size_t month = 0; month < airs.size(); ++month) {
    year.temperature[month] = solver::at_other_temperatures(
                                  field, weights, spot.temperature, stated,
                                  temperatures_with(solved, room, airs[month].inside_temperature,
                                                    airs[month].outside_temperature))
                                  .value;
    year.humidity[month] =
        airs[month].inside_pressure / materials::saturation_pressure(year.temperature[month]);
  }
  return year;
}

/// The months in which a spot breaks a test.
std::vector<std::size_t> months_at_risk(const materials::Test& test, const SpotYear& spot,
                                        const std::array<MonthAir, 12>& airs) {
  std::vector<std::size_t> months;
  for (std::size_t month = 0; month < airs.size(); ++month) {
    const MonthAir& air = airs[month];
    if (air.inside_temperature <= air.outside_temperature) continue;  // nothing is cold
    const double factor = materials::temperature_factor(
        spot.temperature[month], air.inside_temperature, air.outside_temperature);
    if (materials::margin(test, {spot.temperature[month], factor, air.inside_pressure}) < 0.0)
      months.push_back(month);
  }
  return months;
}

Year year_of(const SolvedVariant& solved, const solver::AirSurface& surface) {
  const cases::Space& room = solved.variant.spaces[surface.air];
  const cases::Climate& climate = *solved.variant.climate;
  Year year;
  year.air = surface.air;
  for (std::size_t month = 0; month < year.months.size(); ++month)
    year.months[month] = air_in(climate, room, month);
  for (const solver::Spot& spot : surface.cold_spots) {
    if (solved.surface.physics.is_fabric[spot.region] != 0)
      year.spots.push_back(spot_year(solved, surface.air, spot, year.months));
  }
  for (const cases::Criterion& criterion : solved.variant.criteria) {
    if (!materials::needs_humidity(criterion.test)) continue;  // the same all year
    YearOfCriterion judged;
    judged.criterion = criterion.name;
    add_needs(criterion.test, year.months, judged);
    for (const SpotYear& spot : year.spots)
      judged.months_at_risk.push_back(months_at_risk(criterion.test, spot, year.months));
    year.criteria.push_back(std::move(judged));
  }
  return year;
}

}  // namespace

std::vector<Year> years_of(const SolvedVariant& solved) {
  std::vector<Year> years;
  if (!solved.variant.climate) return years;
  for (const solver::AirSurface& surface : solved.surface.airs) {
    const cases::Space& room = solved.variant.spaces[surface.air];
    if (room.is != cases::SpaceKind::inside) continue;
    if (room.humidity || solved.variant.climate->inside_humidity)
      years.push_back(year_of(solved, surface));
  }
  return years;
}

std::string_view month_name(std::size_t month) {
  constexpr std::array<std::string_view, 12> names{"January",   "February", "March",    "April",
                                                   "May",       "June",     "July",     "August",
                                                   "September", "October",  "November", "December"};
  return names[month];
}

}  // namespace quoin::tools
