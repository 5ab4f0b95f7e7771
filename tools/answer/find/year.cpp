// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/find/year.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "cases/grammar/month_names.hpp"
#include "materials/moist_air.hpp"
#include "solver/findings/other_temperatures.hpp"
#include "tools/answer/ask/conditions.hpp"
#include "tools/answer/ask/physics.hpp"
#include "tools/answer/find/colder_in_months.hpp"

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

/// A cold spot through the months, with the temperatures of all spaces in each.
SpotYear spot_year(const SolvedVariant& solved, const solver::Spot& spot,
                   const std::vector<solver::SpaceTemperatures>& spaces,
                   const std::array<MonthAir, 12>& airs) {
  const solver::Field& field = solved.surface.field;
  const solver::SpaceTemperatures stated = temperatures_of(solved.variant);
  const std::vector<double> weights = solver::weights_at(field, spot.place);
  SpotYear year;
  year.spot = spot;
  for (std::size_t month = 0; month < airs.size(); ++month) {
    year.temperature[month] =
        solver::at_other_temperatures(field, weights, spot.temperature, stated, spaces[month])
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
    // Humid air passes a limit in summer, too, where no surface is cold. No factor is asked here.
    if (materials::margin(test, {spot.temperature[month], nan, air.inside_pressure}) < 0.0)
      months.push_back(month);
  }
  return months;
}

/// By the coldest month of each: rooms that have other temperatures by month than as stated may
/// change which spot is the coldest. Spots as cold as each other to rounding stay in their order.
void sort_coldest_first(std::vector<SpotYear>& spots) {
  constexpr double rounding = 1e9;  // by K
  const auto coldest = [](const SpotYear& spot) {
    return std::round(rounding *
                      *std::min_element(spot.temperature.begin(), spot.temperature.end()));
  };
  std::stable_sort(spots.begin(), spots.end(), [&](const SpotYear& one, const SpotYear& other) {
    return coldest(one) < coldest(other);
  });
}

/// The criteria that ask for something else in each month. A threshold of fRsi is the same all
/// year: where there are only such, the limit against mould of ISO 13788, for what the months need
/// is what a threshold is compared with.
std::vector<cases::Criterion> criteria_by_month(const cases::Variant& variant) {
  std::vector<cases::Criterion> criteria;
  for (const cases::Criterion& criterion : variant.criteria) {
    if (materials::needs_humidity(criterion.test)) criteria.push_back(criterion);
  }
  if (criteria.empty()) criteria.push_back({"mould at 80 %", cases::SurfaceHumidityLimit{}});
  return criteria;
}

Year year_of(const SolvedVariant& solved, const solver::AirSurface& surface) {
  const cases::Space& room = solved.variant.spaces[surface.air];
  const cases::Climate& climate = *solved.variant.climate;
  Year year;
  year.air = surface.air;
  std::vector<solver::SpaceTemperatures> spaces;
  for (std::size_t month = 0; month < year.months.size(); ++month) {
    year.months[month] = air_in(climate, room, month);
    spaces.push_back(temperatures_in_month(solved, month));
  }
  for (const solver::Spot& spot : surface.cold_spots) {
    if (solved.surface.physics.is_fabric[spot.region] != 0)
      year.spots.push_back(spot_year(solved, spot, spaces, year.months));
  }
  for (const solver::Spot& spot : colder_in_months(solved, surface, spaces))
    year.spots.push_back(spot_year(solved, spot, spaces, year.months));
  sort_coldest_first(year.spots);
  for (const cases::Criterion& criterion : criteria_by_month(solved.variant)) {
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

double saturation_pressure_needed(const YearOfCriterion& judged, std::size_t month) {
  return materials::saturation_pressure(judged.lowest_temperature[month]);
}

std::string_view month_name(std::size_t month) { return cases::month_names[month]; }

}  // namespace quoin::tools
