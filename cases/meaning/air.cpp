// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/air.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

#include "cases/text/words.hpp"

namespace quoin::cases {
namespace {

using Written = Named<WrittenSpace>;

Mark mark_of(const Written& space, std::string_view key) {
  const Entry* entry = space.node->find(key);
  return entry == nullptr ? space.mark : entry->mark;
}

class Derivation {
 public:
  Derivation(const std::vector<Written>& written, Per<SpaceId, Space>& spaces, FaultList& faults,
             std::vector<Remark>& remarks)
      : written_(written), spaces_(spaces), faults_(faults), remarks_(remarks) {}

  void derive() {
    for (const SpaceId id : geometry::ids(spaces_)) {
      if (!written_[id.index].value.like.empty()) continue;
      derive_temperature(id);
    }
    for (const SpaceId id : geometry::ids(spaces_)) {
      if (!written_[id.index].value.like.empty()) continue;
      derive_humidity(id);
      question_humidity(id);
    }
  }

 private:
  [[nodiscard]] bool has_stated_temperature(SpaceId id) const {
    return written_[id.index].value.temperature.has_value();
  }

  /// The coldest stated air of a kind, or the only one; not valid where there is none.
  [[nodiscard]] SpaceId coldest(SpaceKind kind) const {
    SpaceId found;
    for (const SpaceId id : geometry::ids(spaces_)) {
      if (spaces_[id].is != kind || !has_stated_temperature(id)) continue;
      if (!found.valid() || spaces_[id].temperature < spaces_[found].temperature) found = id;
    }
    return found;
  }

  [[nodiscard]] bool insides_differ() const {
    std::optional<double> first;
    for (const SpaceId id : geometry::ids(spaces_)) {
      if (spaces_[id].is != SpaceKind::inside || !has_stated_temperature(id)) continue;
      if (first && *first != spaces_[id].temperature) return true;
      first = spaces_[id].temperature;
    }
    return false;
  }

  void derive_temperature(SpaceId id) {
    const WrittenSpace& value = written_[id.index].value;
    Space& space = spaces_[id];
    const bool balanced = !value.losses.empty() || value.air_bricks;
    if (!value.b && !balanced) return;
    const std::string_view key = value.b ? "b" : !value.losses.empty() ? "losses" : "air bricks";
    const Mark mark = mark_of(written_[id.index], key);
    if (value.is && *value.is != SpaceKind::unheated) {
      faults_.add(mark, {fmt::format("'{}' is for spaces that are unheated", key), "",
                         "is: unheated", "give the temperature of this space"});
      return;
    }
    if (value.temperature || (value.b && balanced)) {
      faults_.add(mark, {fmt::format("the temperature of '{}' is known in two ways", space.name),
                         "", "one of: temperature, b, losses with air bricks",
                         fmt::format("remove `{}`", key)});
      return;
    }
    const SpaceId inside = coldest(SpaceKind::inside);
    const SpaceId outside = coldest(SpaceKind::outside);
    if (!inside.valid() || !outside.valid()) {
      faults_.add(mark, {fmt::format("'{}' needs a space inside and one outside", key), "",
                         "both with their temperatures", ""});
      return;
    }
    if (value.b) {
      if (insides_differ()) {
        faults_.add(mark, {"'b' needs one temperature inside", "several", "",
                           "give the temperature of this space, or its losses"});
        return;
      }
      space.b = value.b;
      space.temperature = spaces_[inside].temperature -
                          *value.b * (spaces_[inside].temperature - spaces_[outside].temperature);
    } else {
      add_losses(id);
    }
  }

  void add_losses(SpaceId id) {
    double sum = 0.0;
    double weighted = 0.0;
    for (const Named<double>& loss : written_[id.index].value.losses) {
      const auto found = std::find_if(written_.begin(), written_.end(),
                                      [&](const Written& one) { return one.name == loss.name; });
      const SpaceId to(static_cast<std::size_t>(found - written_.begin()));
      if (found == written_.end()) {
        refuse_unknown(loss);
      } else if (to == id || !found->value.like.empty() || !has_stated_temperature(to)) {
        faults_.add(loss.mark,
                    {fmt::format("'{}' cannot lose heat to '{}'", spaces_[id].name, loss.name), "",
                     "another space with an air and a temperature of its own", ""});
      } else {
        spaces_[id].losses.push_back({to, loss.value});
        sum += loss.value;
        weighted += loss.value * spaces_[to].temperature;
      }
    }
    const SpaceId outside = coldest(SpaceKind::outside);
    if (const auto& bricks = written_[id.index].value.air_bricks) {
      const double loss = materials::loss_through(*bricks);
      spaces_[id].losses.push_back({outside, loss});
      sum += loss;
      weighted += loss * spaces_[outside].temperature;
    }
    spaces_[id].temperature = sum > 0.0 ? weighted / sum : spaces_[outside].temperature;
  }

  void refuse_unknown(const Named<double>& loss) {
    faults_.add(loss.mark, [&]() -> Complaint {
      std::vector<std::string> names;
      for (const Written& one : written_) names.push_back(one.name);
      return {fmt::format("unknown space '{}'", loss.name), loss.name,
              "one of: " + joined(names, ", "), did_you_mean(loss.name, names)};
    });
  }

  void derive_humidity(SpaceId id) {
    const WrittenSpace& value = written_[id.index].value;
    if (!value.moisture) return;
    const std::string_view key = materials::name_of(*value.moisture);
    const Mark mark = mark_of(written_[id.index], key);
    Space& space = spaces_[id];
    if (value.is && *value.is != SpaceKind::inside) {
      faults_.add(mark, {fmt::format("'{}' is for spaces that are inside", key), "", "is: inside",
                         "state the humidity of this space"});
      return;
    }
    if (value.humidity) {
      faults_.add(mark, {fmt::format("'humidity' and '{}' exclude each other", key), "",
                         "one of the two", "remove one; in a variant `humidity: ~` does it"});
      return;
    }
    if (const auto objection = materials::objection(*value.moisture)) {
      faults_.add(mark, {objection->what, "", objection->expected, ""});
      return;
    }
    const SpaceId outside = coldest(SpaceKind::outside);
    if (!outside.valid() || !spaces_[outside].humidity) {
      faults_.add(outside.valid() ? written_[outside.index].mark : mark,
                  {fmt::format("'{}' of '{}' needs the humidity outside", key, space.name),
                   "no humidity", "humidity: 85 in the space outside", ""});
      return;
    }
    space.moisture = value.moisture;
    space.humidity =
        materials::inside_humidity(*value.moisture, space.temperature, spaces_[outside].temperature,
                                   *spaces_[outside].humidity);
    if (*space.humidity > 1.0) {
      remarks_.push_back(
          {fmt::format("by its {} the air of '{}' would hold {:.0f} % of what it can at {:.3g} °C: "
                       "100 % is taken; in truth its windows and walls run wet",
                       key, space.name, *space.humidity * 100, space.temperature),
           mark.line});
      space.humidity = 1.0;
    }
  }

  /// Air that near to saturation makes fog, not a room.
  void question_humidity(SpaceId id) {
    const Space& space = spaces_[id];
    const Written& written = written_[id.index];
    if (space.is != SpaceKind::inside || !written.value.humidity || !space.humidity) return;
    const double dew_point = materials::dew_point(space.temperature, *space.humidity);
    const double below = space.temperature - dew_point;
    if (below > 0.5) return;
    remarks_.push_back(
        {fmt::format("the air of '{}' begins to condense at {:.1f} °C, {} its own temperature: a "
                     "room like that drips; is the reading right?",
                     space.name, dew_point,
                     below < 0.05 ? "at" : fmt::format("{:.1f} K below", below)),
         mark_of(written, "humidity").line});
  }

  const std::vector<Written>& written_;
  Per<SpaceId, Space>& spaces_;
  FaultList& faults_;
  std::vector<Remark>& remarks_;
};

}  // namespace

void derive_air(const std::vector<Named<WrittenSpace>>& written, Per<SpaceId, Space>& spaces,
                FaultList& faults, std::vector<Remark>& remarks) {
  Derivation(written, spaces, faults, remarks).derive();
}

}  // namespace quoin::cases
