// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// What a row has in a column: nothing, a number in the unit of the column, or words.
using Cell = std::variant<std::monostate, double, std::string>;

/// One thing that a sweep may tell of each row. Where a case has several rooms inside, it is told
/// of the one with the lowest fRsi.
struct SweepColumn {
  std::string name;  ///< as vary files write it
  std::string unit;  ///< empty: a number without one, or words
  bool words = false;
  bool by_outcome = false;  ///< needs the outcomes of the rooms
  bool by_chance = false;   ///< needs the chances, whatever the outcome
  Cell (*value)(const SolvedVariant& solved) = nullptr;
};

/// All there are.
[[nodiscard]] const std::vector<SweepColumn>& sweep_columns();
[[nodiscard]] std::vector<std::string> sweep_column_names();
/// The column of a name that is known.
[[nodiscard]] const SweepColumn& sweep_column(const std::string& name);

/// A value with the digits that findings have.
[[nodiscard]] std::string printed(double value);

}  // namespace quoin::tools
