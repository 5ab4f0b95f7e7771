// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "materials/criterion.hpp"
#include "tools/answer/survey/chance.hpp"

namespace quoin::tools {

/// How the air of a day differs from what is stated, in sd of the household.
struct AirState {
  double humidity = 0.0;
  double inside = 0.0;
  double outside = 0.0;
};

/// One room and criterion, for any fabric and air. What it is made from must outlive it.
class JudgedRoom {
 public:
  JudgedRoom(const SurfaceField& field, const cases::Household& household,
             const ChanceQuestion& question);

  struct At {
    double margin = 0.0;
    double surface = 0.0;  ///< degC
    double inside = 0.0;   ///< degC
  };

  /// `shares`: what airs count for in the field of some fabric.
  [[nodiscard]] At at(const std::vector<double>& shares, const AirState& day) const;

  /// In a month of the climate, while the humidity is as far from what it is in the month as it is
  /// on the day from what is stated.
  [[nodiscard]] At in_month(const std::vector<double>& shares, const MonthAir& month,
                            const AirState& day) const;

  /// The humidity of the room on a day, relative.
  [[nodiscard]] double humidity_on(const AirState& day) const;

  /// The humidity up to which the criterion holds, relative.
  [[nodiscard]] double highest_humidity(const At& at) const;

  [[nodiscard]] std::vector<double> shares(const FabricState& fabric) const {
    return field_.shares(fabric);
  }
  [[nodiscard]] const SurfaceField& field() const { return field_; }
  [[nodiscard]] double humidity() const { return humidity_; }
  [[nodiscard]] double spread() const { return spread_; }

 private:
  /// With the airs inside and outside at some temperatures, degC, and a vapour pressure inside, Pa.
  [[nodiscard]] At between(const std::vector<double>& shares, double inside, double outside,
                           double pressure) const;

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

}  // namespace quoin::tools
