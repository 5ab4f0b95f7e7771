// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string_view>
#include <variant>

#include "cases/grammar/units.hpp"
#include "cases/text/fault_list.hpp"
#include "materials/moisture.hpp"

namespace quoin::cases {

/// The values that are plausible, ends included, in the unit values have inside.
struct Range {
  double low = 0.0;
  double high = 0.0;
  std::optional<double> example = {};  ///< of an input that may be absent, for a starting case
};

/// The value of a text such as "0.33 m" or "330", inside unit. Refuses what is no number, a unit
/// of another measure, and a value outside the range, each with the slip most likely behind it.
[[nodiscard]] std::variant<double, Complaint> quantity_of(std::string_view text, Measure measure,
                                                          Range plausible);

/// The moisture a text states: "damp", "0.15 m3/m3", "0.08 kg/kg", "150 kg/m3", "8 vol-%",
/// "at 80 %".
[[nodiscard]] std::variant<materials::MoistureState, Complaint> moisture_state_of(
    std::string_view text);

/// "a length, 50 mm to 20 m"
[[nodiscard]] std::string expected(Measure measure, Range plausible);

/// A text without blanks at its ends, the unbreakable ones included.
[[nodiscard]] std::string_view trimmed(std::string_view text);

}  // namespace quoin::cases
