// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/space_remarks.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "cases/meaning/frame_corners.hpp"

namespace quoin::cases {
namespace {

/// Readings taken at a smaller difference between the spaces, K, say little. Common practice.
constexpr double least_difference = 5.0;

}  // namespace

void remark_on_small_difference(const Document& document, const Per<SpaceId, Space>& spaces,
                                std::vector<Remark>& remarks) {
  if (document.readings.empty() || spaces.size() == 0) return;
  const auto [coldest, warmest] = std::minmax_element(
      spaces.begin(), spaces.end(),
      [](const Space& a, const Space& b) { return a.temperature < b.temperature; });
  const double span = warmest->temperature - coldest->temperature;
  if (span >= least_difference) return;
  remarks.push_back({fmt::format("the temperatures differ by only {:.3g} K: what readings taken "
                                 "like this tell is uncertain",
                                 span),
                     document.readings.front().mark.line});
}

void remark_on_unknown_humidity(const Document& document, const Variant& variant,
                                std::vector<Remark>& remarks) {
  const bool judged = std::any_of(
      variant.criteria.begin(), variant.criteria.end(),
      [](const Criterion& criterion) { return materials::needs_humidity(criterion.test); });
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    const Space& space = variant.spaces[id];
    if (!judged || space.is != SpaceKind::inside || space.humidity || space.air != id) continue;
    const bool by_month = variant.climate && variant.climate->inside_humidity;
    remarks.push_back(
        {by_month
             ? fmt::format("'{}' has no humidity but that of the climate: its surfaces are "
                           "judged by it over the year only",
                           space.name)
             : fmt::format("'{}' has no humidity: its surfaces are not judged by it", space.name),
         document.spaces[id.index].mark.line});
  }
}

void remark_on_overruled_moisture(const Variant& variant, const Entry& climate,
                                  std::vector<Remark>& remarks) {
  if (!variant.climate || !variant.climate->inside_humidity) return;
  for (const Space& space : variant.spaces) {
    if (space.is != SpaceKind::inside || !space.moisture) continue;
    remarks.push_back(
        {fmt::format("over the year the 'inside humidity' of the climate takes the place of the "
                     "'{}' of '{}', which stays for the case as stated",
                     materials::name_of(*space.moisture), space.name),
         climate.mark.line});
  }
}

void remark_on_missing_corners(const Document& document, Variant& variant) {
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    const Space& space = variant.spaces[id];
    if (!space.frame_corners || strips_of(variant.spaces, id).valid()) continue;
    variant.remarks.push_back(
        {fmt::format("'{}' meets no re-entrant corner of frame or glazing (`part`): nothing is "
                     "done for its frame corners",
                     space.name),
         document.spaces[id.index].mark.line});
  }
}

}  // namespace quoin::cases
