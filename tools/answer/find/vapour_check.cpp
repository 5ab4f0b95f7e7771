// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/find/vapour_check.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "materials/moisture.hpp"
#include "tools/answer/ask/vapour_conditions.hpp"

namespace quoin::tools {
namespace {

/// Less water than this, kg/m, is rounding.
constexpr double trace = 1e-6;

double total(const std::vector<double>& water) {
  double sum = 0.0;
  for (const double w : water) sum += w;
  return sum;
}

/// One grid led through the months.
class Led {
 public:
  Led(const solver::Field& heat, const solver::VapourPhysics& physics,
      const solver::LinearOptions& options)
      : heat_(heat),
        physics_(physics),
        options_(options),
        sites_(heat.mesh),
        water_(sites_.nodes().size(), 0.0) {}

  void live_through(const VapourConditions& month) {
    const solver::Stored stored{water_, month.seconds};
    const solver::VapourField field =
        solver::vapour_field(heat_.mesh, solver::temperatures(heat_, month.temperatures), physics_,
                             month.pressures, options_, &stored);
    for (std::size_t n = 0; n < water_.size(); ++n) water_[n] = field.condensing[n] * month.seconds;
  }

  [[nodiscard]] bool holds_water() const { return total(water_) > trace; }
  [[nodiscard]] std::vector<solver::Gathered> water() const { return sites_.gathered(water_); }

 private:
  const solver::Field& heat_;
  const solver::VapourPhysics& physics_;
  const solver::LinearOptions& options_;
  solver::Sites sites_;
  std::vector<double> water_;  ///< kg/m at each node
};

/// The month in which water first gathers after the warmest, in a section that is dry then.
std::optional<std::size_t> first_wet_month(const solver::Field& heat,
                                           const solver::VapourPhysics& physics,
                                           const std::vector<VapourConditions>& months,
                                           const cases::Climate& climate,
                                           const solver::LinearOptions& options) {
  const auto& outside = climate.outside_temperature;
  const auto warmest =
      static_cast<std::size_t>(std::max_element(outside.begin(), outside.end()) - outside.begin());
  for (std::size_t k = 0; k < months.size(); ++k) {
    const std::size_t month = (warmest + k) % months.size();
    Led led(heat, physics, options);
    led.live_through(months[month]);
    if (led.holds_water()) return month;
  }
  return std::nullopt;
}

VapourYear year_of(const SolvedVariant& solved, const solver::VapourGrids& grids,
                   const solver::VapourPhysics& physics, const solver::LinearOptions& options) {
  const std::vector<VapourConditions> months = conditions_of(solved, cases::Conditions::by_month);
  VapourYear year;
  year.first = first_wet_month(grids.fine, physics, months, *solved.variant.climate, options);
  if (!year.first) return year;
  Led fine(grids.fine, physics, options), coarse(grids.coarse, physics, options);
  for (std::size_t k = 0; k < months.size(); ++k) {
    const VapourConditions& month = months[(*year.first + k) % months.size()];
    fine.live_through(month);
    coarse.live_through(month);
    const std::vector<solver::Gathered> other = coarse.water();
    for (const solver::Gathered& one : fine.water()) {
      if (one.amount < trace) continue;
      auto known = std::find_if(year.places.begin(), year.places.end(), [&](const WaterYear& at) {
        return at.meeting == one.meeting && at.part == one.part;
      });
      if (known == year.places.end()) {
        known = year.places.insert(year.places.end(), WaterYear());
        known->meeting = one.meeting;
        known->part = one.part;
      }
      known->water[k] = one.amount;
      if (one.amount < known->water[known->most]) continue;
      known->most = k;
      const auto [amount, length] = solver::agreed(one, other);
      known->length = length;
      known->place = one.most;
      known->band = amount.band;
    }
  }
  std::stable_sort(year.places.begin(), year.places.end(),
                   [](const WaterYear& one, const WaterYear& other) {
                     return one.water[one.most] > other.water[other.most];
                   });
  return year;
}

/// Surfaces below the dew point of their air: what runs down them is no matter of diffusion.
void remark_on_dripping(const SolvedVariant& solved, const solver::VapourField& field,
                        std::vector<std::string>& remarks) {
  for (const SpaceId id : geometry::ids(field.dripping)) {
    if (field.dripping[id] < geometry::snap) continue;
    remarks.push_back(fmt::format(
        "{:.2f} m of the surface to {} is below the dew point of its air: what condenses on the "
        "surface itself is not counted here",
        field.dripping[id], solved.variant.spaces[id].name));
  }
}

/// Masonry whose pores hold water: what it gives off is no vapour of the airs.
void remark_on_wet_masonry(const cases::Variant& variant, std::vector<std::string>& remarks) {
  std::set<std::string> told;
  for (const cases::Region& region : variant.regions) {
    if (region.part != materials::Part::fabric || !told.insert(region.name).second ||
        !materials::wetter_than_damp(region.material, region.moisture)) {
      continue;
    }
    remarks.push_back(fmt::format(
        "The water that '{}' holds, wetter than damp, is not counted: this is what the vapour of "
        "the airs adds. Let it dry, and ask by `drying` how long that takes",
        region.name));
  }
}

}  // namespace

std::optional<VapourCheck> vapour_check(const SolvedVariant& solved,
                                        const solver::LinearOptions& options) {
  if (!solved.variant.vapour) return std::nullopt;
  const solver::VapourPhysics physics = vapour_physics_of(solved.variant);
  const solver::VapourGrids grids = solver::vapour_grids(solved.surface, options);
  VapourCheck check;
  remark_on_wet_masonry(solved.variant, check.remarks);
  if (solved.variant.vapour->conditions == cases::Conditions::by_month) {
    check.year = year_of(solved, grids, physics, options);
  } else {
    const VapourConditions stated = conditions_of(solved, cases::Conditions::as_stated).front();
    check.stated =
        solver::condensation_at(grids, stated.temperatures, physics, stated.pressures, options);
    check.days = solved.variant.vapour->days;
    remark_on_dripping(solved, check.stated->field, check.remarks);
  }
  return check;
}

}  // namespace quoin::tools
