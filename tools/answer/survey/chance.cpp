// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/chance.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "materials/moist_air.hpp"
#include "solver/survey/posterior.hpp"
#include "solver/survey/quasi_random.hpp"
#include "solver/survey/shuffled.hpp"
#include "solver/survey/variance_shares.hpp"
#include "tools/answer/survey/chance_words.hpp"

namespace quoin::tools {
namespace {

constexpr double five = 1.6448536269514722;  ///< sd from the median to 5 and 95 of 100
constexpr double driest = 0.01, dampest = 1.0;

/// How the air of a day differs from what is stated, in sd of the household.
struct AirState {
  double humidity = 0.0;
  double inside = 0.0;
  double outside = 0.0;
};

/// One room and criterion, for any fabric and air.
class Room {
 public:
  Room(const SurfaceField& field, const cases::Household& household, const ChanceQuestion& question)
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
    correction_ = difference == 0.0
                      ? 0.0
                      : (question.surface_temperature -
                         field.coldest(field.shares(nominal), question.room, stated_)) /
                            difference;
  }

  struct At {
    double margin = 0.0;
    double surface = 0.0;  ///< degC
    double inside = 0.0;   ///< degC
  };

  [[nodiscard]] At at(const std::vector<double>& shares, const AirState& day) const {
    const double inside = inside_ + day.inside * household_.inside / 2;
    const double outside = question_.outside + day.outside * household_.outside / 2;
    return between(shares, inside, outside,
                   humidity_on(day) * materials::saturation_pressure(inside));
  }

  /// In a month of the climate, while the humidity is as far from what it is in the month as it is
  /// on the day from what is stated.
  [[nodiscard]] At in_month(const std::vector<double>& shares, const MonthAir& month,
                            const AirState& day) const {
    const double humidity =
        std::clamp(month.inside_humidity + day.humidity * spread_ / 2, driest, dampest);
    return between(shares, month.inside_temperature, month.outside_temperature,
                   humidity * materials::saturation_pressure(month.inside_temperature));
  }

  /// The humidity of the room on a day, relative.
  [[nodiscard]] double humidity_on(const AirState& day) const {
    return std::clamp(humidity_ + day.humidity * spread_ / 2, driest, dampest);
  }

  /// The humidity up to which the criterion holds, relative.
  [[nodiscard]] double highest_humidity(const At& at) const {
    return materials::highest_pressure(question_.criterion->test, at.surface) /
           materials::saturation_pressure(at.inside);
  }

  [[nodiscard]] std::vector<double> shares(const FabricState& fabric) const {
    return field_.shares(fabric);
  }

  [[nodiscard]] double humidity() const { return humidity_; }
  [[nodiscard]] double spread() const { return spread_; }

 private:
  /// With the airs inside and outside at some temperatures, degC, and a vapour pressure inside, Pa.
  [[nodiscard]] At between(const std::vector<double>& shares, double inside, double outside,
                           double pressure) const {
    std::vector<double> air = stated_;
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
    result.margin =
        materials::margin(question_.criterion->test, {result.surface, factor, pressure});
    return result;
  }

  const SurfaceField& field_;
  const cases::Household& household_;
  const ChanceQuestion& question_;
  std::vector<double> stated_;
  std::vector<cases::SpaceKind> kind_;
  double inside_ = 0.0;
  double humidity_ = 0.0;
  double spread_ = 0.0;
  double correction_ = 0.0;
};

/// Median and ends of one coordinate of the fabric.
struct Ends {
  double low = 0.0, median = 0.0, high = 0.0, sd = 0.0;
};

Ends ends_of(std::vector<double> values) {
  constexpr std::array<double, 3> at{0.05, 0.5, 0.95};
  const std::vector<double> weights(values.size(), 1.0 / static_cast<double>(values.size()));
  const auto quantiles = solver::weighted_quantiles(values, weights, at);
  return {quantiles[0], quantiles[1], quantiles[2], (quantiles[2] - quantiles[0]) / (2 * five)};
}

/// One uncertain input: how the margin moves with it.
struct Input {
  std::string name;
  double low = 0.0;       ///< margin at its 5 of 100
  double high = 0.0;      ///< at its 95 of 100
  double variance = 0.0;  ///< of the margin, by the slope at the medians
};

std::vector<Input> inputs_of(const Room& room, const SurfaceField& field, const FabricDraws& fabric,
                             FabricState median, const cases::Criterion& criterion) {
  std::vector<Input> inputs;
  const auto with_fabric = [&](const std::string& name, double& coordinate, const Ends& ends) {
    if (ends.sd == 0.0) return;
    const auto margin = [&](double value) {
      const double before = coordinate;
      coordinate = value;
      const double result = room.at(room.shares(median), {}).margin;
      coordinate = before;
      return result;
    };
    const double step = 0.1 * ends.sd;
    const double slope = (margin(ends.median + step) - margin(ends.median - step)) / (2 * step);
    inputs.push_back({name, margin(ends.low), margin(ends.high), std::pow(slope * ends.sd, 2)});
  };
  const auto column = [&](auto member, std::size_t k) {
    std::vector<double> values;
    for (const FabricState& state : fabric.states) values.push_back((state.*member)[k]);
    return ends_of(std::move(values));
  };
  for (std::size_t m = 0; m < field.materials().size(); ++m)
    with_fabric("conductivity of " + field.materials()[m].name, median.materials[m],
                column(&FabricState::materials, m));
  for (std::size_t z = 0; z < median.zones.size(); ++z)
    with_fabric("ratio of " + field.zones()[z].name, median.zones[z],
                column(&FabricState::zones, z));
  const std::vector<double> shares = room.shares(median);
  const auto with_air = [&](const std::string& name, double AirState::*coordinate) {
    const auto margin = [&](double value) {
      AirState day;
      day.*coordinate = value;
      return room.at(shares, day).margin;
    };
    const double slope = (margin(0.1) - margin(-0.1)) / 0.2;
    if (margin(five) == margin(-five)) return;
    inputs.push_back({name, margin(-five), margin(five), slope * slope});
  };
  if (materials::needs_humidity(criterion.test)) with_air("humidity", &AirState::humidity);
  with_air("temperature inside", &AirState::inside);
  with_air("temperature outside", &AirState::outside);
  return inputs;
}

/// The shares of inputs that are independent, where the slopes at the medians do not tell them: by
/// picking one and freezing the others.
void pick_and_freeze(const Room& room, const SurfaceField& field, std::vector<Input>& inputs) {
  constexpr std::size_t points = 512;
  const std::size_t materials = field.materials().size();
  const bool humid = inputs.size() == materials + 3;
  const solver::VarianceShares found =
      solver::variance_shares(inputs.size(), points, [&](std::span<const double> at) {
        FabricState fabric;
        for (std::size_t m = 0; m < materials; ++m)
          fabric.materials.push_back(field.materials()[m].sd * solver::normal_quantile(at[m]));
        AirState day;
        std::size_t next = materials;
        if (humid) day.humidity = solver::normal_quantile(at[next++]);
        day.inside = solver::normal_quantile(at[next++]);
        day.outside = solver::normal_quantile(at[next]);
        return room.at(room.shares(fabric), day).margin;
      });
  for (std::size_t k = 0; k < inputs.size(); ++k)
    inputs[k].variance = std::max(0.0, found.alone[k]);
}

FabricState median_of(const FabricDraws& fabric) {
  FabricState median = fabric.states.front();
  const auto take = [&](auto member) {
    for (std::size_t k = 0; k < (median.*member).size(); ++k) {
      std::vector<double> values;
      for (const FabricState& state : fabric.states) values.push_back((state.*member)[k]);
      (median.*member)[k] = ends_of(std::move(values)).median;
    }
  };
  take(&FabricState::materials);
  take(&FabricState::zones);
  for (ZoneExtent& extent : median.extents) extent = ZoneExtent::as_drawn;
  return median;
}

/// Of two inputs that weigh alike the one named first comes first, on every machine: what differs
/// by rounding only is alike.
double weight(double value) { return std::round(std::abs(value) * 1e9); }

void tell_inputs(const std::vector<Input>& inputs, Chance& chance) {
  double sum = 0.0;
  for (const Input& input : inputs) sum += input.variance;
  for (const Input& input : inputs) {
    if (sum > 0.0) chance.shares.push_back({input.name, input.variance / sum});
    chance.tornado.push_back({input.name, input.low, input.high});
  }
  std::stable_sort(
      chance.shares.begin(), chance.shares.end(),
      [](const ChanceShare& a, const ChanceShare& b) { return weight(a.share) > weight(b.share); });
  std::stable_sort(chance.tornado.begin(), chance.tornado.end(),
                   [](const TornadoBar& a, const TornadoBar& b) {
                     return weight(a.high - a.low) > weight(b.high - b.low);
                   });
}

/// In how many months drawn at random, each with a fabric and a day drawn along with it, the
/// criterion is broken: of those in which it is warmer inside than outside.
double share_of_months(const Room& room, const FabricDraws& fabric,
                       const std::array<MonthAir, 12>& months, const std::vector<double>& days,
                       const std::vector<std::size_t>& order) {
  std::size_t broken = 0;
  for (std::size_t k = 0; k < fabric.states.size(); ++k) {
    const MonthAir& month = months[k % months.size()];
    if (month.inside_temperature <= month.outside_temperature) continue;  // nothing is cold
    const double* day = days.data() + 3 * order[k];
    if (room.in_month(fabric.shares[k], month, {day[0], day[1], day[2]}).margin < 0.0) ++broken;
  }
  return static_cast<double>(broken) / static_cast<double>(fabric.states.size());
}

}  // namespace

FabricDraws fabric_beforehand(const SurfaceField& field, std::size_t draws) {
  FabricDraws fabric;
  const std::size_t dimensions = field.materials().size();
  const std::vector<double> normals = solver::even_normals(draws, dimensions);
  for (std::size_t k = 0; k < draws; ++k) {
    FabricState state;
    for (std::size_t m = 0; m < dimensions; ++m)
      state.materials.push_back(field.materials()[m].sd * normals[k * dimensions + m]);
    fabric.states.push_back(std::move(state));
  }
  fabric.effective = static_cast<double>(draws);
  return fabric;
}

void solve_states(const SurfaceField& field, FabricDraws& fabric) {
  for (const FabricState& state : fabric.states) fabric.shares.push_back(field.shares(state));
}

Chance chance_of(const SurfaceField& field, const FabricDraws& fabric,
                 const cases::Household& household, const ChanceQuestion& question) {
  const Room room(field, household, question);
  const FabricState median = median_of(fabric);
  const std::vector<double> median_shares = room.shares(median);
  const std::size_t draws = fabric.states.size();
  const std::vector<double> days = solver::even_normals(draws, 3);
  const std::vector<std::size_t> order = solver::shuffled(draws);
  std::size_t broken = 0, by_fabric = 0, by_household = 0;
  std::vector<double> safe, strained;
  double sum = 0.0, squares = 0.0;
  for (std::size_t k = 0; k < draws; ++k) {
    const double* day_of = days.data() + 3 * order[k];
    const AirState day{day_of[0], day_of[1], day_of[2]};
    const std::vector<double>& shares = fabric.shares[k];
    const Room::At at = room.at(shares, day);
    if (at.margin < 0.0) ++broken;
    sum += at.margin;
    squares += at.margin * at.margin;
    if (room.at(shares, {}).margin < 0.0) ++by_fabric;
    if (room.at(median_shares, day).margin < 0.0) ++by_household;
    const double highest = room.highest_humidity(at);
    safe.push_back(highest);
    strained.push_back(room.humidity_on(day) / highest);
  }
  const auto share = [&](std::size_t number) {
    return static_cast<double>(number) / static_cast<double>(draws);
  };
  Chance chance;
  chance.criterion = question.criterion->name;
  chance.space = field.rooms()[question.room];
  chance.unit = materials::unit_of(question.criterion->test);
  chance.broken = share(broken);
  chance.fabric = share(by_fabric);
  chance.household = share(by_household);
  // Of no case or of all one knows no better than one in as many as there are.
  const double likely =
      std::clamp(chance.broken, 1.0 / fabric.effective, 1.0 - 1.0 / fabric.effective);
  chance.sampling_error = std::sqrt(likely * (1.0 - likely) / fabric.effective);
  std::vector<Input> inputs = inputs_of(room, field, fabric, median, *question.criterion);
  const double mean = sum / static_cast<double>(draws);
  const double variance = squares / static_cast<double>(draws) - mean * mean;
  double by_slopes = 0.0;
  for (const Input& input : inputs) by_slopes += input.variance;
  constexpr double near = 0.9;  // slopes at the medians are as good as the whole
  if (!fabric.from_readings && inputs.size() >= field.materials().size() + 2 &&
      (by_slopes < near * variance || variance < near * by_slopes))
    pick_and_freeze(room, field, inputs);
  tell_inputs(inputs, chance);
  if (materials::needs_humidity(question.criterion->test)) {
    constexpr std::array<double, 1> tenth{0.1};
    const std::vector<double> weights(draws, 1.0 / static_cast<double>(draws));
    chance.highest_safe_humidity =
        std::clamp(solver::weighted_quantiles(safe, weights, tenth)[0], 0.0, 1.0);
    constexpr std::array<double, 1> nine_tenths{0.9};
    const double as_stated = room.humidity() / room.highest_humidity(room.at(median_shares, {}));
    if (as_stated > 0.0)
      chance.worse_in_ninety =
          solver::weighted_quantiles(strained, weights, nine_tenths)[0] / as_stated;
  }
  chance.from_readings = fabric.from_readings;
  std::optional<double> by_months;
  if (question.months != nullptr)
    by_months = share_of_months(room, fabric, *question.months, days, order);
  chance.words = chance_words(*field.section().variant, chance, *question.criterion,
                              {room.humidity(), room.spread(), by_months});
  return chance;
}

}  // namespace quoin::tools
