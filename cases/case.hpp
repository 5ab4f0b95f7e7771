// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "geometry/recipe.hpp"
#include "geometry/section.hpp"
#include "materials/material.hpp"

namespace quoin::cases {

using geometry::Per;
using geometry::RegionId;
using geometry::SpaceId;

/// Which way the section is cut: decides which surfaces look up or down.
enum class Cut : std::uint8_t { horizontal, vertical };

enum class SpaceKind : std::uint8_t { inside, outside, unheated };

/// The surroundings on one side.
struct Space {
  std::string name;
  SpaceKind is = SpaceKind::inside;
  double temperature = 0.0;        ///< degC
  std::optional<double> humidity;  ///< relative, 0 to 1
  std::optional<double> wind;      ///< m/s, outside
  std::optional<double>
      resistance;  ///< surface resistance fixed by the author, m2K/W; 0: fixed temperature
  SpaceId air;     ///< the space it is `like`, else itself: one air, one basis field
};

/// One material in one state and one use.
struct Region {
  std::string name;  ///< as the author calls the material
  materials::Material material;
  double moisture = 0.0;  ///< m3/m3
  std::string state;      ///< the moisture as written: "damp", "0.15 m3/m3"; empty: dry by default
  materials::Part part = materials::Part::fabric;
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

/// The humidity at an inside surface must not exceed this limit.
struct SurfaceHumidityLimit {
  double limit = 0.8;  ///< relative, 0 to 1
};

/// The temperature factor fRsi must not fall below this threshold.
struct FactorThreshold {
  double threshold = 0.75;
};

/// What counts as a risk.
struct Criterion {
  std::string name;
  std::variant<SurfaceHumidityLimit, FactorThreshold> test;
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
  geometry::Sheet sheet;  ///< as drawn by hand or by the recipe, damp bands included
  std::optional<geometry::Recipe> recipe;  ///< absent for a hand-drawn sheet
  std::vector<geometry::Flank> flanks;     ///< what the recipe knows; empty for a hand-drawn sheet
  double thickness = 0.0;                  ///< of the thickest flank, m; 0 where unknown
  std::vector<geometry::NamedPlace> places;  ///< the words of the recipe for places
  std::vector<Probe> probes;
  std::vector<Reading> readings;
  std::vector<Criterion> criteria;
  Accuracy accuracy;
  std::vector<Remark> remarks;
};

/// Everything a case file says.
struct Case {
  std::string title;
  std::string note;  ///< free text of the author, e.g. that the scenario is invented; may be empty
  std::string sha256;             ///< of the text as read, lower-case hexadecimal
  std::vector<Variant> variants;  ///< the first is the case as written
};

}  // namespace quoin::cases
