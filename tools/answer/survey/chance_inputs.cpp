// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/chance_inputs.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "solver/survey/posterior.hpp"
#include "solver/survey/quasi_random.hpp"
#include "solver/survey/variance_shares.hpp"

namespace quoin::tools {
namespace {

/// What a difference counts for: rounding counts for nothing, so that every machine tells the same
/// inputs, and of those that count alike the one named first comes first.
double weight(double value) { return std::round(std::abs(value) * 1e9); }

constexpr double five = 1.6448536269514722;  ///< sd from the median to 5 and 95 of 100

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
  // What it is: the conductivity of a material of the field, an air, or else a zone.
  std::optional<std::size_t> material = std::nullopt;
  double AirState::*air = nullptr;

  [[nodiscard]] InputOf of() const {
    return air == nullptr               ? InputOf::fabric
           : air == &AirState::humidity ? InputOf::humidity
                                        : InputOf::temperature;
  }
};

std::vector<Input> inputs_of(const JudgedRoom& room, const FabricDraws& fabric, FabricState median,
                             const cases::Criterion& criterion) {
  const SurfaceField& field = room.field();
  std::vector<Input> inputs;
  const auto with_fabric = [&](const std::string& name, double& coordinate, const Ends& ends,
                               std::optional<std::size_t> material = std::nullopt) {
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
    inputs.push_back(
        {name, margin(ends.low), margin(ends.high), std::pow(slope * ends.sd, 2), material});
  };
  const auto column = [&](auto member, std::size_t k) {
    std::vector<double> values;
    for (const FabricState& state : fabric.states) values.push_back((state.*member)[k]);
    return ends_of(std::move(values));
  };
  for (std::size_t m = 0; m < field.materials().size(); ++m)
    with_fabric("conductivity of " + field.materials()[m].name, median.materials[m],
                column(&FabricState::materials, m), m);
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
    if (weight(margin(five) - margin(-five)) == 0.0) return;
    inputs.push_back({name, margin(-five), margin(five), slope * slope, {}, coordinate});
  };
  if (materials::needs_humidity(criterion.test)) with_air("humidity", &AirState::humidity);
  with_air("temperature inside", &AirState::inside);
  with_air("temperature outside", &AirState::outside);
  return inputs;
}

/// The shares of inputs that are independent, where the slopes at the medians do not tell them: by
/// picking one and freezing the others.
void pick_and_freeze(const JudgedRoom& room, std::vector<Input>& inputs) {
  const SurfaceField& field = room.field();
  constexpr std::size_t points = 512;
  const solver::VarianceShares found =
      solver::variance_shares(inputs.size(), points, [&](std::span<const double> at) {
        FabricState fabric;
        fabric.materials.assign(field.materials().size(), 0.0);
        AirState day;
        for (std::size_t k = 0; k < inputs.size(); ++k) {
          const double normal = solver::normal_quantile(at[k]);
          if (const auto m = inputs[k].material)
            fabric.materials[*m] = field.materials()[*m].sd * normal;
          if (inputs[k].air != nullptr) day.*inputs[k].air = normal;
        }
        return room.at(room.shares(fabric), day).margin;
      });
  for (std::size_t k = 0; k < inputs.size(); ++k)
    inputs[k].variance = std::max(0.0, found.alone[k]);
}

void tell(const std::vector<Input>& inputs, Chance& chance) {
  double sum = 0.0;
  for (const Input& input : inputs) sum += input.variance;
  for (const Input& input : inputs) {
    if (sum > 0.0) chance.shares.push_back({input.name, input.variance / sum, input.of()});
    chance.tornado.push_back({input.name, input.low, input.high, input.of()});
  }
  std::stable_sort(
      chance.shares.begin(), chance.shares.end(),
      [](const ChanceShare& a, const ChanceShare& b) { return weight(a.share) > weight(b.share); });
  std::stable_sort(chance.tornado.begin(), chance.tornado.end(),
                   [](const TornadoBar& a, const TornadoBar& b) {
                     return weight(a.high - a.low) > weight(b.high - b.low);
                   });
}

}  // namespace

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

void tell_inputs(const JudgedRoom& room, const FabricDraws& fabric, const FabricState& median,
                 const cases::Criterion& criterion, double variance, Chance& chance) {
  std::vector<Input> inputs = inputs_of(room, fabric, median, criterion);
  double by_slopes = 0.0;
  for (const Input& input : inputs) by_slopes += input.variance;
  constexpr double near = 0.9;  // slopes at the medians are as good as the whole
  if (!fabric.from_readings && inputs.size() >= room.field().materials().size() + 2 &&
      (by_slopes < near * variance || variance < near * by_slopes))
    pick_and_freeze(room, inputs);
  tell(inputs, chance);
}

}  // namespace quoin::tools
