// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "solver/survey/reduced_field.hpp"
#include "solver/survey/table.hpp"

namespace quoin::solver {

/// What is not known, beforehand normal: a logarithm of a factor, or a difference in K or a share.
struct Unknown {
  double median = 0.0;
  double sd = 0.0;  ///< 0: known after all
};

/// A parameter of a section that grows with e to the power of an unknown.
struct Growth {
  std::size_t parameter = 0;  ///< regions first, then groups of faces
  std::size_t unknown = 0;
  double power = 1.0;
};

/// One section as far as it is known.
struct UncertainSection {
  Setting base;  ///< where all unknowns are 0
  std::vector<Growth> growth;
};

/// The setting of a section. Shape: unknowns.
[[nodiscard]] Setting setting_at(const UncertainSection& section, std::span<const double> unknowns);

/// A pad of known resistance stuck to the surface, the difference across which is read.
struct ReadPad {
  double resistance = 0.0;             ///< m2K/W
  std::optional<std::size_t> unknown;  ///< logarithm of its factor; absent: it is 1
  std::size_t group = 0;               ///< of the faces it is stuck to
  std::size_t air = 0;                 ///< in front of it
};

/// What a thermometer that looks at the surface adds to it.
struct ReadByRadiation {
  double reflected = 0.0;   ///< temperature of what the surface reflects, degC
  double share = 0.0;       ///< of that temperature's excess that is read
  std::size_t unknown = 0;  ///< what the share errs by
};

/// One reading.
struct ReadSpot {
  std::size_t section = 0;
  std::size_t watched = 0;  ///< what its sensor covers
  std::vector<double> air;  ///< temperature that the place feels of each air, degC
  std::vector<std::optional<std::size_t>> air_error;  ///< K to add to each
  std::optional<std::size_t> offset;                  ///< K that the instrument adds
  std::optional<ReadByRadiation> radiation;
  std::optional<ReadPad> pad;  ///< read is the difference across it
};

/// All sections of a house and all that was read in them.
struct ReadingModel {
  std::vector<const ReducedField*> fields;  ///< of each section
  std::vector<std::size_t> airs;            ///< of each section
  std::vector<UncertainSection> sections;
  std::vector<std::size_t> watched;  ///< how many things each field watches
  std::vector<ReadSpot> spots;
  std::vector<Unknown> unknowns;
  std::vector<std::size_t> active;  ///< the unknowns that are not known, in the order of inference

  /// The unknowns from their standard normal stand-ins.
  [[nodiscard]] std::vector<double> unknowns_at(std::span<const double> standard) const;

  /// What would be read. Shape: standard active; predicted spots; slopes spots by active, or null.
  void predict(std::span<const double> standard, std::span<double> predicted, Table* slopes) const;
};

/// Sets `active` to the unknowns of some spread.
void activate(ReadingModel& model);

}  // namespace quoin::solver
