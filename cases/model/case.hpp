// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "cases/model/survey.hpp"
#include "geometry/recipe.hpp"
#include "geometry/section.hpp"
#include "materials/behind.hpp"
#include "materials/clear_sky.hpp"
#include "materials/coats.hpp"
#include "materials/criterion.hpp"
#include "materials/evaporation.hpp"
#include "materials/humidity_source.hpp"
#include "materials/material.hpp"

namespace quoin::cases {

using geometry::MembraneId;
using geometry::Per;
using geometry::RegionId;
using geometry::SpaceId;
using materials::CriticalHumidity;
using materials::FactorThreshold;
using materials::SurfaceHumidityLimit;

/// Which way the section is cut: decides which surfaces look up or down.
enum class Cut : std::uint8_t { horizontal, vertical };

enum class SpaceKind : std::uint8_t { inside, outside, unheated };

/// By which rule surfaces in the re-entrant corners of frames exchange less heat.
enum class FrameCorners : std::uint8_t { iso_10077_2 };

/// What an unheated space loses to another, other than through the section.
struct Loss {
  SpaceId to;
  double by_metre = 0.0;  ///< W/(m K), by metre of the section
};

/// The surroundings on one side.
struct Space {
  std::string name;
  SpaceKind is = SpaceKind::inside;
  double temperature = 0.0;  ///< degC; where losses are given a first guess
  /// Unheated: (inside - temperature) / (inside - outside), where stated.
  std::optional<double> b;
  std::vector<Loss> losses;  ///< unheated, where its temperature follows from its heat balance
  std::optional<double> humidity;  ///< relative, 0 to 1; as stated or as it follows from moisture
  std::optional<double> humidity_spread;  ///< give or take, 95 %, where stated; relative
  std::optional<materials::HumiditySource> moisture;  ///< inside, where not stated
  std::optional<double> wind;                         ///< m/s, outside
  std::optional<double>
      resistance;  ///< surface resistance fixed by the author, m2K/W; 0: fixed temperature
  std::optional<materials::Behind> behind;  ///< what fixed the resistance, where it is said so
  std::optional<materials::ClearSky> sky;
  std::optional<materials::Evaporation> evaporation;
  std::optional<materials::Coat> coat;  ///< on its surfaces of fabric
  /// How much colder than its air this space is to its surfaces, K: by a clear sky, by evaporation.
  double cooling = 0.0;
  std::optional<FrameCorners> frame_corners;  ///< the rule by which strips are painted in them
  /// Which way heat crosses its level surfaces, where it is not the usual one.
  std::optional<materials::HeatDirection> heat;
  RegionId in_layer;  ///< valid: this space is that layer of air, open to outdoors
  SpaceId strips_of;  ///< valid: this space is the strips in the frame corners of another one
  SpaceId air;        ///< the space it is `like`, else itself: one air, one basis field
};

/// One material in one state and one use.
struct Region {
  std::string name;  ///< as the author calls the material
  materials::Material material;
  double moisture = 0.0;  ///< m3/m3
  std::string state;      ///< the moisture as written: "damp", "0.15 m3/m3"; empty: dry by default
  materials::Part part = materials::Part::fabric;
  /// Where the moisture is stated as between two: those, m3/m3, nine in ten between them.
  std::optional<double> driest = {};
  std::optional<double> wettest = {};
};

/// A sheet between materials, thin enough to resist vapour and nothing else.
struct Membrane {
  materials::Coat coat;  ///< as the case file writes it: what it is, or its sd
  std::string name;      ///< as the author calls it; empty: by what it is
};

/// A place where a temperature is wanted.
struct Probe {
  std::string name;
  geometry::Point place;
};

/// A temperature measured on site.
struct Reading {
  std::string probe;
  double temperature = 0.0;    ///< degC
  double plus_or_minus = 0.5;  ///< K
};

/// What counts as a risk.
struct Criterion {
  std::string name;
  materials::Test test;
  std::string guide = {};   ///< of a published threshold; empty: the author's own
  std::string source = {};  ///< of a published threshold
  materials::Confidence confidence = materials::Confidence::stated;
  bool with_any_resistance = false;  ///< compared even with a factor of another Rsi
};

/// January to December.
using ByMonth = std::array<double, 12>;

/// The weather of a year and the air inside.
struct Climate {
  std::string source;                         ///< as the author states it
  std::string table;                          ///< the file it was read from; empty: the case file
  std::string sha256;                         ///< of that file
  ByMonth outside_temperature{};              ///< degC
  ByMonth outside_humidity{};                 ///< relative, 0 to 1
  std::optional<ByMonth> inside_temperature;  ///< degC; absent: that of each space all year
  std::optional<ByMonth> inside_humidity;     ///< relative; absent: by the rule of each space
};

/// A layer whose thickness is changed until a criterion just holds, m.
struct ThicknessRange {
  std::string of;  ///< the material of the layer
  double from = 0.0;
  double to = 0.0;
};

/// What is changed until a criterion just holds.
struct Enough {
  std::optional<ThicknessRange> thickness;
  std::string moisture_of;  ///< the material whose moisture is changed; empty: none
};

/// The air that a question about vapour is asked for.
enum class Conditions : std::uint8_t { as_stated, by_month };

/// The check for condensation within the section.
struct Vapour {
  Conditions conditions = Conditions::as_stated;
  std::optional<double> days;  ///< that stated conditions last
};

/// How fast a wet part of the section dries through one coat or another.
struct Drying {
  Conditions conditions = Conditions::as_stated;
  std::string wet;                            ///< the material; empty: all that is wetter than damp
  std::vector<materials::Coat> coats;         ///< outside
  std::vector<materials::Coat> inside_coats;  ///< empty: as it is
};

/// A plain part of a section drawn by hand: a straight line across it from air to air, and the
/// length of the part that psi takes off.
struct PlainLine {
  std::string name;
  geometry::Point from;
  geometry::Point to;
  double length = 0.0;  ///< m
};

/// How psi is wanted, and what stands beside it.
struct PsiAsked {
  std::optional<geometry::Dimensions> by;  ///< absent: by all ways of measuring
  std::optional<double> catalogue;         ///< a value from elsewhere, W/(m K)
  std::string source;                      ///< of that value
};

/// How exact the answer must be.
struct Accuracy {
  double factor = 0.002;    ///< half width of the band of fRsi
  double coupling = 0.001;  ///< relative half width of the band of L2D
};

/// A remark on something allowed but doubtful, as read.
struct Remark {
  std::string text;
  std::size_t line = 0;  ///< from 1; 0: no place in the file
};

/// One variant, complete in itself.
struct Variant {
  std::string name;
  Cut cut = Cut::horizontal;
  Per<SpaceId, Space> spaces;
  Per<RegionId, Region> regions;
  Per<MembraneId, Membrane> membranes;
  geometry::Sheet sheet;  ///< as drawn by hand or by the recipe, damp bands included
  std::optional<geometry::Recipe> recipe;  ///< absent for a hand-drawn sheet
  std::vector<geometry::Flank> flanks;     ///< what the recipe knows; empty for a hand-drawn sheet
  double thickness = 0.0;                  ///< of the thickest flank, m; 0 where unknown
  std::vector<geometry::NamedPlace> places;       ///< the words of the recipe for places
  std::vector<geometry::NamedPlace> timber_ends;  ///< each a probe, too
  int halves = 1;                             ///< 2: the section is one half of a mirrored detail
  geometry::Sheet floor_alone;                ///< the same floor without its wall; may be empty
  std::optional<geometry::Outline> close_up;  ///< what pictures show; absent: all
  std::vector<PlainLine> plain_lines;         ///< of a sheet, as the author draws them
  PsiAsked psi;
  std::vector<Probe> probes;
  std::vector<Reading> readings;
  std::vector<Criterion> criteria;
  std::optional<Climate> climate;
  Enough enough;
  std::optional<Vapour> vapour;
  std::optional<Drying> drying;
  Accuracy accuracy;
  std::vector<Remark> remarks;
};

/// Everything a case file says.
struct Case {
  std::string title;
  std::string note;  ///< free text of the author, e.g. that the scenario is invented; may be empty
  std::string sha256;             ///< of the text as read, lower-case hexadecimal
  std::vector<Variant> variants;  ///< the first is the case as written
  std::optional<Survey> survey;   ///< of the case as written
  Household household;            ///< how far its air may leave what is stated
  std::string text = {};          ///< as read
};

}  // namespace quoin::cases
