// SPDX-License-Identifier: Apache-2.0
#include "solver/survey/reading_model.hpp"

#include <cmath>

namespace quoin::solver {
namespace {

/// A section at some unknowns: what its airs count for, and how that changes with each parameter.
struct Evaluated {
  Setting setting;
  std::vector<double> shares;
  Table slopes;
};

double conductance(const Evaluated& at, std::size_t group) { return at.setting.conductance[group]; }

/// A temperature or a difference and its derivatives by every unknown.
struct Value {
  double value = 0.0;
  std::vector<double> slope;  ///< empty: not wanted
};

/// Derivative of the share of air a in what a spot watches, by every unknown.
void add_share_slope(const UncertainSection& section, const Evaluated& at, std::size_t share,
                     double weight, std::vector<double>& slope) {
  for (const Growth& growth : section.growth)
    slope[growth.unknown] += weight * growth.power * at.slopes(share, growth.parameter);
}

/// The temperature of the place that a spot watches.
Value place_value(const ReadingModel& model, const ReadSpot& spot, const Evaluated& at,
                  std::span<const double> unknowns, bool with_slope) {
  Value result;
  if (with_slope) result.slope.assign(unknowns.size(), 0.0);
  const std::size_t airs = model.airs[spot.section];
  for (std::size_t a = 0; a < airs; ++a) {
    const std::size_t share = spot.watched * airs + a;
    const auto error = spot.air_error[a];
    const double felt = spot.air[a] + (error ? unknowns[*error] : 0.0);
    result.value += at.shares[share] * felt;
    if (!with_slope) continue;
    add_share_slope(model.sections[spot.section], at, share, felt, result.slope);
    if (error) result.slope[*error] += at.shares[share];
  }
  return result;
}

/// The difference across a pad: the wall behind it is taken as the plane wall that has the same
/// share of the room's air, so that pad, surface resistance and wall are in series.
Value across_pad(const ReadingModel& model, const ReadSpot& spot, const Evaluated& at,
                 std::span<const double> unknowns, const Value& place) {
  const ReadPad& pad = *spot.pad;
  const std::size_t airs = model.airs[spot.section];
  const std::size_t share = spot.watched * airs + pad.air;
  const auto error = spot.air_error[pad.air];
  const double air = spot.air[pad.air] + (error ? unknowns[*error] : 0.0);
  const double factor = pad.unknown ? std::exp(unknowns[*pad.unknown]) : 1.0;
  const double ratio = pad.resistance * factor * conductance(at, pad.group);
  const double colder = air - place.value;
  const double others = 1.0 - at.shares[share];
  const double divisor = 1.0 + ratio * others;
  Value result;
  result.value = ratio * colder / divisor;
  if (place.slope.empty()) return result;
  result.slope.assign(unknowns.size(), 0.0);
  const double by_ratio = result.value / divisor;  // by the logarithm of the ratio
  if (pad.unknown) result.slope[*pad.unknown] += by_ratio;
  const UncertainSection& section = model.sections[spot.section];
  for (const Growth& growth : section.growth) {
    if (growth.parameter == section.base.conductivity.size() + pad.group)
      result.slope[growth.unknown] += growth.power * by_ratio;
  }
  for (std::size_t u = 0; u < unknowns.size(); ++u)
    result.slope[u] -= ratio / divisor * place.slope[u];
  if (error) result.slope[*error] += ratio / divisor;
  add_share_slope(section, at, share, result.value * ratio / divisor, result.slope);
  return result;
}

}  // namespace

Setting setting_at(const UncertainSection& section, std::span<const double> unknowns) {
  Setting setting = section.base;
  const std::size_t regions = setting.conductivity.size();
  std::vector<double> exponent(regions + setting.conductance.size(), 0.0);
  for (const Growth& growth : section.growth)
    exponent[growth.parameter] += growth.power * unknowns[growth.unknown];
  for (std::size_t p = 0; p < exponent.size(); ++p) {
    if (exponent[p] == 0.0) continue;
    double& value = p < regions ? setting.conductivity[p] : setting.conductance[p - regions];
    value *= std::exp(exponent[p]);
  }
  return setting;
}

std::vector<double> ReadingModel::unknowns_at(std::span<const double> standard) const {
  std::vector<double> values;
  for (const Unknown& unknown : unknowns) values.push_back(unknown.median);
  for (std::size_t k = 0; k < active.size(); ++k)
    values[active[k]] += unknowns[active[k]].sd * standard[k];
  return values;
}

void ReadingModel::predict(std::span<const double> standard, std::span<double> predicted,
                           Table* slopes) const {
  const std::vector<double> at = unknowns_at(standard);
  std::vector<Evaluated> evaluated(sections.size());
  for (std::size_t s = 0; s < sections.size(); ++s) {
    Evaluated& one = evaluated[s];
    one.setting = setting_at(sections[s], at);
    one.shares.resize(watched[s] * airs[s]);
    fields[s]->evaluate(one.setting, one.shares, slopes != nullptr ? &one.slopes : nullptr);
  }
  for (std::size_t j = 0; j < spots.size(); ++j) {
    const ReadSpot& spot = spots[j];
    Value value = place_value(*this, spot, evaluated[spot.section], at, slopes != nullptr);
    if (spot.pad) value = across_pad(*this, spot, evaluated[spot.section], at, value);
    if (spot.radiation) {
      const double share = spot.radiation->share + at[spot.radiation->unknown];
      if (slopes != nullptr) {
        for (double& slope : value.slope) slope *= 1.0 - share;
        value.slope[spot.radiation->unknown] += spot.radiation->reflected - value.value;
      }
      value.value += share * (spot.radiation->reflected - value.value);
    }
    if (spot.offset) {
      value.value += at[*spot.offset];
      if (slopes != nullptr) value.slope[*spot.offset] += 1.0;
    }
    predicted[j] = value.value;
    if (slopes == nullptr) continue;
    for (std::size_t k = 0; k < active.size(); ++k)
      (*slopes)(j, k) = value.slope[active[k]] * unknowns[active[k]].sd;
  }
}

void activate(ReadingModel& model) {
  model.active.clear();
  for (std::size_t u = 0; u < model.unknowns.size(); ++u) {
    if (model.unknowns[u].sd > 0.0) model.active.push_back(u);
  }
}

}  // namespace quoin::solver
