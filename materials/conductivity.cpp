// SPDX-License-Identifier: Apache-2.0
#include "materials/conductivity.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

namespace quoin::materials {
namespace {

Basis basis_of(const Material& material) {
  Basis basis{material.conductivity.value, material.density.value, std::nullopt};
  if (material.saturation) basis.saturation = material.saturation->value;
  return basis;
}

/// Whether a law says nothing of a material of unknown density: what goes by its mass, and what
/// reaches to a saturation for which its pores stand in.
bool needs_density(const Law& law, bool knows_saturation) {
  if (const auto* exponential = std::get_if<Exponential>(&law)) return exponential->per_mass > 0.0;
  if (std::holds_alternative<BetweenDryAndSaturated>(law)) return !knows_saturation;
  return std::holds_alternative<PerMassPercent>(law);
}

std::string impossible(double moisture, const Basis& basis) {
  if (moisture < 0.0) return "moisture below 0 cannot be; the dry value is taken";
  if (basis.saturation) {
    return fmt::format("that is more than its saturation, {:.3g} m3/m3, which is taken",
                       *basis.saturation);
  }
  return fmt::format(
      "that is more than the pores hold at {:.4g} kg/m3, {:.3g} m3/m3, which is taken",
      basis.density, fullest(basis));
}

}  // namespace

Conductivity conductivity_of(const Material& material, double moisture) {
  const Basis dry = basis_of(material);
  const double held = std::clamp(moisture, 0.0, fullest(dry));
  std::vector<std::string> warnings;
  if (held != moisture) warnings.push_back(impossible(moisture, dry));

  const auto [value, range] = std::visit(
      [&](const auto& law) {
        return std::pair{conductivity(law, dry, held), trusted(law, dry)};
      },
      material.law);
  if (held > range.limit) {
    warnings.push_back(fmt::format("the law '{}' is trusted to {:.3g} m3/m3: {}",
                                   name_of(material.law), range.limit, range.beyond));
  }
  if (const double bound = wet_mineral_bound(dry.saturation.value_or(held));
      value > dry.conductivity && value > bound) {
    warnings.push_back(fmt::format(
        "{:.3g} W/(m K) is more than wet stone, brick or concrete conducts, about {:.3g}", value,
        bound));
  }

  Conductivity result{value, name_of(material.law), std::nullopt};
  if (!warnings.empty()) {
    result.warning =
        fmt::format("{} at {:.3g} m3/m3: {}", material.name, moisture, fmt::join(warnings, "; "));
  }
  return result;
}

std::vector<std::string> flaws(const Material& material) {
  const Basis dry = basis_of(material);
  std::vector<std::string> found;
  if (dry.density <= 0.0 && needs_density(material.law, dry.saturation.has_value())) {
    found.push_back(
        fmt::format("the law '{}' needs its density, which is not given", name_of(material.law)));
  }
  if (const double pores = pore_space(dry.density); dry.saturation.value_or(0.0) > pores) {
    found.push_back(
        fmt::format("a saturation of {:.3g} m3/m3 does not fit into a material of {:.4g} kg/m3, "
                    "whose pores are {:.3g} m3/m3 at most",
                    *dry.saturation, dry.density, pores));
  }
  if (material.moisture_at_80 &&
      material.moisture_at_80->value > dry.saturation.value_or(pore_space(dry.density))) {
    found.push_back(fmt::format("at 80 % humidity it would hold {:.3g} m3/m3, more than saturated",
                                material.moisture_at_80->value));
  }
  if (auto fault = std::visit([&](const auto& law) { return flaw(law, dry); }, material.law)) {
    found.push_back(*std::move(fault));
  }
  return found;
}

double wet_mineral_bound(double water) {
  return std::pow(4.0, 1.0 - water) * std::pow(0.60, water);
}

}  // namespace quoin::materials
