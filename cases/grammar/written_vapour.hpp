// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "cases/grammar/vocabulary.hpp"
#include "cases/model/case.hpp"
#include "cases/text/fault_list.hpp"

namespace quoin::cases {

/// The coat a text names: one of the list, or an sd with its unit.
[[nodiscard]] std::variant<materials::Coat, Complaint> coat_of(std::string_view text);

template <class Visitor>
void choose_conditions(Visitor& visit, std::optional<Conditions>& conditions) {
  visit.choice("conditions", conditions,
               {{"as stated", Conditions::as_stated}, {"by month", Conditions::by_month}},
               "those of the spaces, or the months of the climate; by month where there is one");
}

/// The check for condensation within the section, as it is written.
struct WrittenVapour {
  static constexpr std::string_view alone = "conditions";
  std::optional<Conditions> conditions;
  std::optional<double> days;
};

template <class Visitor>
void describe(Visitor& visit, WrittenVapour& vapour) {
  choose_conditions(visit, vapour.conditions);
  visit.number("days", vapour.days, 1.0, 366.0,
               "how long the stated conditions last; the water gathered by then is told");
}

/// The drying ledger, as it is written.
struct WrittenDrying {
  std::string wet;
  std::vector<materials::Coat> coats, inside_coats;
  std::optional<Conditions> conditions;
};

template <class Visitor>
void describe(Visitor& visit, WrittenDrying& drying) {
  visit.coats("coats", drying.coats, "outside, to be compared");
  visit.coats("inside coats", drying.inside_coats, "inside, each with every one outside");
  visit.text("wet", drying.wet,
             "the material that dries; all that is wetter than damp if not given");
  choose_conditions(visit, drying.conditions);
}

}  // namespace quoin::cases
