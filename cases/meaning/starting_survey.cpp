// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/starting_survey.hpp"

namespace quoin::cases {
namespace {

constexpr std::string_view survey =
    R"(# Readings of a corner and what may explain them. Every value below is invented: put your own
# in its place. `plus or minus` is 95 % everywhere. Five readings inside or more, two of them in
# the zone and two of sound wall 400 mm from it, before sunrise in cold weather, say most.
quoin: 1
title: A survey to start from

spaces:
  room: {is: inside, temperature: 18.5, humidity: 62 ± 8}      # when the wall was read
  outdoors: {is: outside, temperature: 2, humidity: 90}

materials:
  wall brick: {like: common brick, moisture: between sheltered and damp}
  # tested brick: {like: common brick, conductivity: 0.62 ± 0.1}

section:
  corner:
    leg: 1800
    layers:                       # from the inside out
      - {material: lime plaster, thickness: 15}
      - {material: wall brick, thickness: 225}

probes:
  B4 angle: [240, 240]
  B3 50 mm from it: [290, 240]
  B2 300 mm from it: [540, 240]
  A1 sound wall: [1440, 240]
  A2 sound wall: [240, 1440]
  O1 outside: [540, 0]
  B5 not read yet: [390, 240]

readings:
  B4 angle: {temperature: 9.2, with: contact probe}
  B3 50 mm from it: {temperature: 9.9, with: contact probe}
  B2 300 mm from it: {temperature: 11.1, with: contact probe}
  A1 sound wall: {temperature: 13.2, with: contact probe}
  A2 sound wall: {temperature: 13.0, with: contact probe}
  O1 outside: {temperature: 3.4, with: contact probe}
  # A1 sound wall: {difference: 3.3, across: pad}

survey:
  hour: 7
  heating steady for: 19 h
  rain on the wall: 60 h          # since; `sun on the wall` likewise
  surface: dry                    # or wet, to the eye
  instruments:
    contact probe: {plus or minus: 0.4, shared: 0.6}           # of one reading; of all alike
    # gun: {is: infrared, plus or minus: 0.6, shared: 1, emissivity: 0.93, emissivity set: 0.95, reflected: 18, spot: 60}
  # pads: {pad: {resistance: 0.10, plus or minus: 5 %}}
  air:                            # by name of space
    outdoors: {plus or minus: 0.6, lowest: 0.5, highest: 4.5}  # or history: airs.csv, with columns
    room: {plus or minus: 0.6}    # hours before,outside temperature,inside temperature
  zones: {corner masonry: {of: wall brick, x: [0, 800], y: [0, 800]}}
  stretches: {cupboard: {x: [320, 800], y: [239, 241]}}        # inside faces within the box
  # explanations: [as drawn, conducts better: corner masonry, covered: cupboard]
  # household: {humidity: 10, inside: 2, outside: 3}           # plus or minus

criteria:
  mould: {surface humidity: 80}

variants:
  dried out: {materials: {wall brick: {moisture: sheltered}}}
)";

constexpr std::string_view house =
    R"(# One house read in several places. Each section is a case file of its own, with its probes and
# readings; what is called the same in several is one thing: the brick, the room, the thermometer.
quoin: 1
title: A house to start from

house:
  wall: wall.yaml
  corner: corner.yaml

survey:
  hour: 7
  heating steady for: 19 h
  instruments:
    contact probe: {plus or minus: 0.4, shared: 0.6}
  air:
    outdoors: {plus or minus: 0.6, lowest: 0.5, highest: 4.5}
  zones:
    corner masonry: {in: corner, of: wall brick, x: [0, 800], y: [0, 800]}
)";

}  // namespace

std::string_view starting_survey() { return survey; }

std::string_view starting_house() { return house; }

}  // namespace quoin::cases
