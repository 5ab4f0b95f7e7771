// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cases/grammar/vocabulary.hpp"
#include "cases/model/case.hpp"
#include "cases/text/named.hpp"
#include "materials/air_bricks.hpp"

namespace quoin::cases {

/// A space as it is written.
struct WrittenSpace {
  std::string like;  ///< empty: an air of its own
  std::optional<SpaceKind> is;
  std::optional<double> temperature, b;
  std::vector<Named<double>> losses;
  std::optional<double> humidity, humidity_spread;
  std::optional<materials::HumiditySource> moisture;
  std::optional<double> wind, resistance;
  std::optional<materials::Behind> behind;
  std::optional<FrameCorners> frame_corners;
  std::optional<materials::ClearSky> sky;
  std::optional<materials::Evaporation> evaporation;
  std::optional<materials::Coat> coat;
  std::optional<materials::HeatDirection> heat;
  std::optional<materials::AirBricks> air_bricks;
};

template <class Visitor>
void describe(Visitor& visit, WrittenSpace& space) {
  visit.text("like", space.like, "a space of the same air; only the surface differs");
  visit.choice("is", space.is,
               {{"inside", SpaceKind::inside},
                {"outside", SpaceKind::outside},
                {"unheated", SpaceKind::unheated}},
               "decides the surface resistance");
  visit.temperature("temperature", space.temperature, -60.0, 80.0, "of the air");
  visit.number("b", space.b, 0.0, 1.0,
               "unheated, in place of the temperature: how far it is from the inside towards the "
               "outside; 0 as warm as inside, 1 as cold as outside");
  visit.amounts("losses", space.losses, Measure::loss, {0.0, 1000.0},
                "unheated, in place of the temperature: what it loses to each space other than "
                "through this section, so that its temperature follows from its heat balance");
  visit.group("air bricks", space.air_bricks,
              "unheated, in place of the temperature: by what air outside passes under a floor; "
              "adds to its losses");
  visit.humidity_give_or_take("humidity", space.humidity, space.humidity_spread, 0.01, 1.0,
                              "relative humidity of the air; 62 ± 8 where it is not known well");
  visit.alternatives(space.moisture);
  visit.speed("wind", space.wind, 0.0, 40.0, "outside; sets the surface resistance");
  visit.resistance("resistance", space.resistance, 0.0, 2.0,
                   "of the surface, in place of the standard's; 0 fixes its temperature");
  materials::choose_behind(visit, space.behind);
  visit.choice("heat goes", space.heat,
               {{"up", materials::HeatDirection::up}, {"down", materials::HeatDirection::down}},
               "through its level surfaces, where it does not leave an inside space or enter an "
               "unheated one: down in a void under a floor");
  visit.choice("frame corners", space.frame_corners, {{"ISO 10077-2", FrameCorners::iso_10077_2}},
               "inside: strips of poorer exchange, 0.20 m2K/W for both purposes, in the re-entrant "
               "corners of frame and glazing");
  visit.group("clear sky", space.sky,
              "outside: how much colder than the air the sky is, on a clear night of readings");
  visit.alternatives(space.evaporation);
  visit.coat(
      "coat", space.coat,
      "what lies on its surfaces, for vapour: limewash, plastic masonry paint, an sd such as "
      "0.5 m; nothing where not given");
}

}  // namespace quoin::cases
