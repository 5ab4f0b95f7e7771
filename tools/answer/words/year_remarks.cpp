// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/words/year_remarks.hpp"

#include <fmt/format.h>

#include "tools/answer/ask/conditions.hpp"

namespace quoin::tools {
namespace {

std::string words_for_water(const cases::Space& space) {
  const bool claimed = std::holds_alternative<materials::EvaporationRate>(*space.evaporation);
  return fmt::format(
      "in every month of the climate the surfaces of '{}' are taken to lose as much water as {}, "
      "like air of {:.1f} K less: less leaves in cold and damp months",
      space.name, claimed ? "claimed" : "in the weather as stated", cooling_by_water(space));
}

}  // namespace

std::vector<std::string> year_remarks(const SolvedVariant& solved) {
  std::vector<std::string> remarks;
  if (!solved.variant.climate) return remarks;
  for (const cases::Space& space : solved.variant.spaces) {
    if (space.evaporation && cooling_by_water(space) != 0.0)
      remarks.push_back(words_for_water(space));
    if (space.sky) {
      remarks.push_back(fmt::format(
          "the months of the climate leave the clear sky of '{}' out: a clear night is no mean of "
          "a month",
          space.name));
    }
  }
  if (solved.years.empty() && !solved.vapour && !solved.drying) {
    remarks.emplace_back(
        "nothing is said of the year: no space inside has a humidity. State `humidity`, `humidity "
        "class` or another source of it there, or `inside humidity` in the climate");
  }
  return remarks;
}

}  // namespace quoin::tools
