// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/judged_room.hpp"

#include <algorithm>

#include "materials/moist_air.hpp"

namespace quoin::tools {
namespace {

constexpr double driest = 0.01, dampest = 1.0;

}  // namespace

JudgedRoom::JudgedRoom(const SurfaceField& field, const cases::Household& household,
                       const ChanceQuestion& question)
    : field_(field), household_(household), question_(question) {
  const cases::Variant& variant = *field.section().variant;
  for (const cases::SpaceId id : field.section().airs) {
    stated_.push_back(variant.spaces[id].temperature - variant.spaces[id].cooling);
    kind_.push_back(variant.spaces[id].is);
  }
  const cases::Space& room = variant.spaces[field.rooms()[question.room]];
  inside_ = room.temperature;
  humidity_ = room.humidity.value_or(0.0);
  spread_ = room.humidity_spread.value_or(household.humidity);
  FabricState nominal;
  nominal.materials.assign(field.materials().size(), 0.0);
  nominal.zones.assign(field.section().zoned.varies.size(), 0.0);
  nominal.extents.assign(nominal.zones.size(), ZoneExtent::as_drawn);
  // What the finer grids of the solution know better, as a share of the difference of the airs.
  const double difference = inside_ - question.outside;
  correction_ = difference == 0.0 ? 0.0
                                  : (question.surface_temperature -
                                     field.coldest(field.shares(nominal), question.room, stated_)) /
                                        difference;
}

JudgedRoom::At JudgedRoom::at(const std::vector<double>& shares, const AirState& day) const {
  const double inside = inside_ + day.inside * household_.inside / 2;
  const double outside = question_.outside + day.outside * household_.outside / 2;
  return between(shares, inside, outside,
                 humidity_on(day) * materials::saturation_pressure(inside));
}

JudgedRoom::At JudgedRoom::in_month(const std::vector<double>& shares, const MonthAir& month,
                                    const AirState& day) const {
  const double humidity =
      std::clamp(month.inside_humidity + day.humidity * spread_ / 2, driest, dampest);
  return between(shares, month.inside_temperature, month.outside_temperature,
                 humidity * materials::saturation_pressure(month.inside_temperature));
}

double JudgedRoom::humidity_on(const AirState& day) const {
  return std::clamp(humidity_ + day.humidity * spread_ / 2, driest, dampest);
}

double JudgedRoom::highest_humidity(const At& at) const {
  return materials::highest_pressure(question_.criterion->test, at.surface) /
         materials::saturation_pressure(at.inside);
}

JudgedRoom::At JudgedRoom::between(const std::vector<double>& shares, double inside, double outside,
                                   double pressure) const {
  thread_local std::vector<double> air;  // kept: this is asked by the thousand
  air.assign(stated_.begin(), stated_.end());
  for (std::size_t a = 0; a < air.size(); ++a) {
    const double warmer = inside - inside_, milder = outside - question_.outside;
    air[a] += kind_[a] == cases::SpaceKind::inside    ? warmer
              : kind_[a] == cases::SpaceKind::outside ? milder
                                                      : (warmer + milder) / 2;
  }
  At result;
  result.inside = inside;
  result.surface = field_.coldest(shares, question_.room, air) + correction_ * (inside - outside);
  const double factor = inside == outside ? 1.0 : (result.surface - outside) / (inside - outside);
  result.margin = materials::margin(question_.criterion->test, {result.surface, factor, pressure});
  return result;
}

}  // namespace quoin::tools
