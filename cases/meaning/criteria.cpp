// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/criteria.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>

#include "cases/model/painted.hpp"
#include "cases/text/words.hpp"
#include "cases/text/yaml_tree.hpp"
#include "materials/published_tests.hpp"
#include "materials/surface_resistance.hpp"

namespace quoin::cases {
namespace {

using Written = Named<WrittenCriterion>;

const materials::PublishedTest* find_guide(const std::string& guide, Mark mark, FaultList& faults) {
  std::vector<std::string> known;
  for (const materials::PublishedTest& published : materials::published_tests()) {
    if (published.guide == guide) return &published;
    known.emplace_back(published.guide);
  }
  faults.add(mark, {fmt::format("no published threshold is known as '{}'", guide), guide,
                    "one of: " + joined(known, ", "), did_you_mean(guide, known)});
  return nullptr;
}

/// The place of the test's own value, or of the criterion's name.
Mark mark_of(const Written& written, std::string_view key) {
  const Entry* entry = written.node->find(key);
  return entry == nullptr ? written.mark : entry->value.mark;
}

/// A criterion whose test is already known, or looked up; absent with a fault.
std::optional<Criterion> criterion_of(const Written& written, FaultList& faults) {
  if (!written.value.test) return std::nullopt;
  return std::visit(
      [&]<class T>(const T& test) -> std::optional<Criterion> {
        if constexpr (std::is_same_v<T, PublishedTest>) {
          const auto* published = find_guide(test.guide, mark_of(written, T::name), faults);
          if (published == nullptr) return std::nullopt;
          return Criterion{written.name,
                           published->test,
                           std::string(published->guide),
                           std::string(published->source),
                           published->confidence,
                           test.with == WithRsi::as_computed};
        } else {
          return Criterion{written.name, test};
        }
      },
      *written.value.test);
}

/// The resistance that factors of the fabric at a space inside are computed with, m2K/W.
double resistance_at(const Space& space) {
  return space.resistance.value_or(
      materials::surface_resistance(materials::Face{}, materials::Purpose::surface_temperature));
}

/// Whether a threshold was stated for one of the two resistances that everything is solved with.
bool is_solved_with(double resistance, const Space& space) {
  constexpr double rounding = 1e-9;  // m2K/W
  if (std::abs(resistance_at(space) - resistance) < rounding) return true;
  const double heat =
      materials::surface_resistance(materials::Face{}, materials::Purpose::heat_flow);
  return !space.resistance && std::abs(heat - resistance) < rounding;
}

/// Whether a space says where its humidity comes from, be it wrongly: that is said elsewhere.
bool asks_for_humidity(const Node& space) {
  constexpr std::array<std::string_view, 4> keys{"humidity", materials::HumidityClass::name,
                                                 materials::MoistureProduction::name,
                                                 materials::LoggedReading::name};
  return std::any_of(keys.begin(), keys.end(), [&](std::string_view key) {
    return space.find(key) != nullptr || has_mistyped(space, key);
  });
}

}  // namespace

bool any_humid(const std::vector<Named<WrittenSpace>>& written, const Per<SpaceId, Space>& spaces) {
  for (const SpaceId id : geometry::ids(spaces)) {
    if (spaces[id].is != SpaceKind::inside) continue;
    if (spaces[id].humidity || asks_for_humidity(*written[id.index].node)) return true;
  }
  return false;
}

std::vector<Criterion> criteria_of(const std::vector<Written>& written, bool humid,
                                   FaultList& faults) {
  std::vector<Criterion> criteria;
  if (written.empty() && humid) criteria.push_back({"mould", SurfaceHumidityLimit{}});
  for (const Written& one : written) {
    const auto criterion = criterion_of(one, faults);
    if (criterion) {
      criteria.push_back(*criterion);
      if (materials::needs_humidity(criterion->test) && !humid) {
        faults.add(
            one.mark,
            {fmt::format("'{}' needs the humidity of a space that is inside", one.name),
             "no humidity", "humidity: 62 in the space inside",
             "state the humidity, here or by month in the climate, or use fRsi as the criterion"});
      }
    } else if (one.node->kind == Node::Kind::map && one.node->entries.empty()) {
      faults.add(one.mark, {fmt::format("the criterion '{}' tests nothing", one.name), "",
                            "{surface humidity: 80}, {fRsi: 0.75}, {critical humidity: by "
                            "temperature} or {published: DIN 4108-2}",
                            ""});
    }
  }
  return criteria;
}

void check_resistances(const std::vector<Written>& written, const Variant& variant,
                       FaultList& faults) {
  for (const Written& one : written) {
    const auto found = std::find_if(variant.criteria.begin(), variant.criteria.end(),
                                    [&](const Criterion& known) { return known.name == one.name; });
    if (found == variant.criteria.end() || found->with_any_resistance) continue;
    const auto* threshold = std::get_if<FactorThreshold>(&found->test);
    if (threshold == nullptr || !threshold->resistance) continue;
    for (const SpaceId id : geometry::ids(variant.spaces)) {
      const Space& space = variant.spaces[id];
      if (space.is != SpaceKind::inside || !is_painted(variant, id)) continue;
      const double computed = resistance_at(space);
      if (is_solved_with(*threshold->resistance, space)) continue;
      faults.add(one.mark,
                 {fmt::format("'{}' is stated for an Rsi of {:.3g}, but the factor at '{}' is "
                              "computed with {:.3g}",
                              one.name, *threshold->resistance, space.name, computed),
                  "", "one and the same Rsi: the factor of the same wall differs by 0.1 and more",
                  found->guide.empty() ? "leave `Rsi` out to compare all the same"
                                       : "write {published: {guide: " + found->guide +
                                             ", with Rsi: as computed}} to compare all the same"});
      break;
    }
  }
}

}  // namespace quoin::cases
