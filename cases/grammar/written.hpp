// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cases/grammar/interval.hpp"
#include "cases/grammar/written_climate.hpp"
#include "cases/grammar/written_criterion.hpp"
#include "cases/grammar/written_space.hpp"
#include "cases/grammar/written_survey.hpp"
#include "cases/grammar/written_vapour.hpp"
#include "cases/model/case.hpp"
#include "materials/cavity.hpp"
#include "materials/law.hpp"
#include "materials/material.hpp"
#include "materials/moisture.hpp"

/// The case file as it is written, part by part, before names are looked up. The describe functions
/// are the one list of its keys: reader, unknown keys, schema and starting cases come from it.
namespace quoin::cases {

/// A moisture and how it was written.
struct WrittenMoisture {
  materials::MoistureState state;
  std::string text;
  std::optional<materials::MoistureState> to = {};  ///< where it lies between two
};

template <class Visitor, class T>
void choose_confidence(Visitor& visit, std::string_view key, T& value) {
  using materials::Confidence;
  visit.choice(key, value,
               {{"published", Confidence::published},
                {"memory", Confidence::memory},
                {"typical", Confidence::typical},
                {"stated", Confidence::stated}},
               "how well it is known");
}

template <class Visitor>
void choose_part(Visitor& visit, std::optional<materials::Part>& part) {
  using materials::Part;
  visit.choice(
      "part", part,
      {{"fabric", Part::fabric},
       {"frame", Part::frame},
       {"glazing", Part::glazing},
       {"ground", Part::ground}},
      "what its faces are, for the choice of the surface resistance; ground takes no coat");
}

/// A value, alone or as a map that tells where it comes from.
template <class Visitor>
void describe_sourced(Visitor& visit, materials::Sourced& sourced, Measure measure,
                      Range plausible) {
  visit.quantity("value", sourced.value, measure, plausible, "the value");
  visit.quantity("low", sourced.low, measure, plausible, "the least met in practice");
  visit.quantity("high", sourced.high, measure, plausible, "the most met in practice");
  visit.text("source", sourced.source, "where the value comes from");
  choose_confidence(visit, "confidence", sourced.confidence);
}

/// Vapour resistance factors.
struct WrittenVapourResistance {
  std::optional<materials::Sourced> dry, wet;
};

template <class Visitor>
void describe(Visitor& visit, WrittenVapourResistance& factors) {
  visit.sourced("dry", factors.dry, Measure::number, {1.0, infinite}, "measured dry (dry cup)");
  visit.sourced("wet", factors.wet, Measure::number, {1.0, infinite}, "measured moist (wet cup)");
}

/// An own material, or one of the catalogue.
struct WrittenMaterial {
  std::string like, about;
  std::optional<materials::Sourced> conductivity, density, saturation, moisture_at_80;
  std::optional<WrittenVapourResistance> vapour_resistance;
  std::optional<materials::Law> law;
  std::string law_source;
  std::optional<materials::Confidence> law_confidence;
  std::optional<materials::Part> part;
  std::optional<WrittenMoisture> moisture;
  std::optional<materials::Cavity::Ventilation> cavity;
  std::optional<materials::Cavity::Flow> flow;
  std::optional<double> air_layer;  ///< thickness, m
  std::optional<materials::HeatDirection> heat;
  std::optional<double> openings, layer_resistance;
};

template <class Visitor>
void describe(Visitor& visit, WrittenMaterial& material) {
  visit.text("like", material.like, "another material, from the catalogue or further up");
  visit.text("about", material.about, "one line about it");
  visit.sourced("conductivity", material.conductivity, Measure::conductivity, {0.005, 500.0},
                "dry");
  visit.sourced("density", material.density, Measure::density, {1.0, 25000.0}, "dry");
  visit.sourced("saturation", material.saturation, Measure::water_volume, {0.0, 1.0},
                "moisture content when full of water");
  visit.sourced("moisture at 80 %", material.moisture_at_80, Measure::water_volume, {0.0, 1.0},
                "moisture content in equilibrium with air of 80 % humidity");
  visit.group("vapour resistance", material.vapour_resistance, "resistance factors to vapour");
  visit.one_of("law", material.law, "how the conductivity grows with moisture");
  visit.text("law source", material.law_source, "where the values of the law come from");
  choose_confidence(visit, "law confidence", material.law_confidence);
  choose_part(visit, material.part);
  visit.moisture(
      "moisture", material.moisture,
      "its state: dry, sheltered, exposed, damp, saturated, 0.15 m3/m3, at 80 %; or between "
      "sheltered and damp");
  materials::choose_cavity(visit, material.cavity, material.flow);
  materials::choose_air_layer(visit, material.air_layer, material.heat, material.openings,
                              material.layer_resistance);
}

/// One layer of a wall.
struct WrittenLayer {
  std::string material;
  double thickness = needed;
  std::optional<WrittenMoisture> moisture;
};

template <class Visitor>
void describe(Visitor& visit, WrittenLayer& layer) {
  visit.word("material", layer.material, "a name from `materials` or the catalogue");
  visit.length("thickness", layer.thickness, 0.0001, 5.0, "of the layer");
  visit.moisture("moisture", layer.moisture, "its state, where it is not that of the material");
}

/// A membrane between two layers.
struct WrittenMembrane {
  static constexpr std::string_view key = "membrane";
  std::optional<materials::Coat> coat;
  std::string name;
};

template <class Visitor>
void describe(Visitor& visit, WrittenMembrane& membrane) {
  visit.coat(WrittenMembrane::key, membrane.coat,
             "a sheet without thickness or heat resistance: polyethylene sheet, bitumen felt, "
             "aluminium foil, tight, ..., or its sd: 100 m");
  visit.text("name", membrane.name, "what it is called, as vapour barrier");
}

/// A membrane along a line of a sheet.
struct WrittenMembraneLine {
  WrittenMembrane membrane;
  std::optional<geometry::Outline> line;
};

template <class Visitor>
void describe(Visitor& visit, WrittenMembraneLine& drawn) {
  describe(visit, drawn.membrane);
  visit.line("line", drawn.line, "along x and y, from end to end: [[x, y], [x, y], ...]");
}

/// One painted area of a sheet.
struct WrittenPatch {
  std::string fill;
  std::optional<Interval> x, y;
  std::optional<geometry::Outline> outline;
  std::optional<WrittenMoisture> moisture;
  std::optional<materials::Part> part;
};

inline constexpr std::string_view nothing = "nothing";  ///< a fill that erases

template <class Visitor>
void describe(Visitor& visit, WrittenPatch& patch) {
  visit.word("fill", patch.fill, "a material, a space, or `nothing`");
  visit.interval("x", patch.x, "from left to right");
  visit.interval("y", patch.y, "from below to above");
  visit.outline("outline", patch.outline, "corners of a polygon, in place of x and y");
  visit.moisture("moisture", patch.moisture, "of a material here");
  choose_part(visit, patch.part);
}

/// A part of one material that is wetter or drier than the rest.
struct WrittenBand {
  std::string of;
  std::optional<Interval> x, y;
  std::optional<WrittenMoisture> moisture;
};

template <class Visitor>
void describe(Visitor& visit, WrittenBand& band) {
  visit.word("of", band.of, "the material");
  visit.interval("x", band.x, "from left to right; everywhere if not given");
  visit.interval("y", band.y, "from below to above; everywhere if not given");
  visit.moisture("moisture", band.moisture, "the state inside the band");
}

/// Which way along a surface, as seen by who looks at it from its air.
enum class Leg : std::uint8_t { left, right };

/// A place on a surface, so far along it from one that the recipe names.
struct WrittenOnSurface {
  std::string on, from;
  double at = 0.0;
  std::optional<Leg> leg;
};

template <class Visitor>
void describe(Visitor& visit, WrittenOnSurface& place) {
  visit.word("on", place.on, "inside, outside, or a space: whose surface");
  visit.word("from", place.from, "a place that the recipe names on it: the angle, the frame edge");
  visit.length("at", place.at, 0.0, 100.0, "how far from there, along the surface");
  visit.choice("leg", place.leg, {{"left", Leg::left}, {"right", Leg::right}},
               "which way, as seen from that space");
}

/// Where a temperature is wanted: either of the two.
struct WrittenProbe {
  std::optional<geometry::Point> point;
  std::optional<WrittenOnSurface> surface;
};

struct WrittenReading {
  static constexpr std::string_view alone = "temperature";  ///< `A: 12.4`
  std::optional<double> temperature, difference, plus_or_minus;
  std::string with, across;
};

template <class Visitor>
void describe(Visitor& visit, WrittenReading& reading) {
  visit.temperature("temperature", reading.temperature, -60.0, 80.0, "as measured");
  visit.difference("difference", reading.difference, 0.0, 40.0,
                   "in place of a temperature: across a pad of the survey");
  visit.text("across", reading.across, "the pad");
  visit.text("with", reading.with, "an instrument of the survey");
  visit.difference("plus or minus", reading.plus_or_minus, 0.01, 10.0,
                   "its uncertainty; by default that of its instrument, or 0.5 K");
}

/// A plain part of a sheet.
struct WrittenPlainPart {
  std::optional<geometry::Outline> across;
  double length = needed;
};

template <class Visitor>
void describe(Visitor& visit, WrittenPlainPart& part) {
  visit.line("across", part.across, "from the air on one side straight to that on the other");
  visit.length("length", part.length, 0.0, 100.0, "of the part: psi takes off its U times this");
}

template <class Visitor>
void describe(Visitor& visit, PsiAsked& psi) {
  visit.choice("by", psi.by,
               {{"internal", geometry::Dimensions::internal},
                {"overall internal", geometry::Dimensions::overall_internal},
                {"external", geometry::Dimensions::external}},
               "the one way of measuring that is told; by default all three");
  visit.number("catalogue", psi.catalogue, -5.0, 5.0,
               "a value from elsewhere to stand beside it, W/(m K)");
  visit.text("source", psi.source, "where that value is from");
}

template <class Visitor>
void describe(Visitor& visit, Accuracy& accuracy) {
  visit.number("fRsi", accuracy.factor, 1e-5, 0.1, "half width of the band of fRsi");
  visit.share("L2D", accuracy.coupling, 1e-6, 0.1, "half width of the band of L2D, relative");
}

/// The keys at the top of a case file. Parts whose meaning depends on other parts stay nodes.
struct Document {
  double format = needed;
  std::string title;
  std::string note;
  std::optional<Cut> cut;
  std::vector<Named<WrittenSpace>> spaces;
  std::vector<Named<WrittenMaterial>> materials;
  const Node* section = nullptr;
  std::vector<Named<WrittenPlainPart>> plain_parts;
  std::optional<PsiAsked> psi;
  std::vector<Named<WrittenProbe>> probes;
  std::vector<Named<WrittenReading>> readings;
  std::optional<WrittenSurvey> survey;
  std::vector<Named<WrittenCriterion>> criteria;
  std::optional<WrittenClimate> climate;
  std::optional<WrittenEnough> enough;
  std::optional<WrittenVapour> vapour;
  std::optional<WrittenDrying> drying;
  std::optional<Accuracy> accuracy;
  const Node* variants = nullptr;
};

template <class Visitor>
void describe(Visitor& visit, Document& document) {
  visit.version("quoin", document.format, 1);
  visit.text("title", document.title, "what is computed");
  visit.text("note", document.note, "anything the report should repeat");
  visit.choice("cut", document.cut, {{"horizontal", Cut::horizontal}, {"vertical", Cut::vertical}},
               "a plan cut (default) or a vertical one: decides which surfaces look up or down");
  visit.named("spaces", document.spaces, "the air on each side");
  visit.named("materials", document.materials, "own ones; all others by name from the catalogue");
  visit.section("section", document.section, "a recipe or a sheet, perhaps with bands");
  visit.named("plain parts", document.plain_parts,
              "of a sheet: parts that psi takes off, each by a line across it");
  visit.group("psi", document.psi, "how the linear transmittance is told");
  visit.named(
      "probes", document.probes,
      "places whose temperature is wanted: [x, y], or {on: inside, from: the angle, at: 250}");
  visit.named("readings", document.readings, "temperatures measured at probes");
  visit.group("survey", document.survey, "how the readings were taken, and what may explain them");
  visit.named("criteria", document.criteria, "what counts as a risk");
  visit.group("climate", document.climate, "twelve months, for a judgement over the year");
  visit.group("enough", document.enough, "what is changed until a criterion just holds");
  visit.group("vapour", document.vapour,
              "asks where vapour would condense within the section by steady diffusion alone");
  visit.group("drying", document.drying,
              "asks how fast a wet part would dry through one coat or another");
  visit.group("accuracy", document.accuracy, "how exact the answer must be");
  visit.variants("variants", document.variants, "each is the case above with some keys replaced");
}

}  // namespace quoin::cases
