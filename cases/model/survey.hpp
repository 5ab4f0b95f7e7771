// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "materials/behind.hpp"

namespace quoin::cases {

/// What a reading was taken with. `plus or minus` is 95 % everywhere: twice a standard deviation.
struct Instrument {
  std::string name;
  bool infrared = false;
  double plus_or_minus = 0.4;       ///< of one reading beside the next, K
  double shared = 0.6;              ///< of all its readings alike, K
  double emissivity = 0.93;         ///< of the surface
  double emissivity_set = 0.95;     ///< at the instrument
  std::optional<double> reflected;  ///< temperature of what the surface reflects, degC
  double spot = 0.010;              ///< width of what it covers, m
};

/// A pad of known resistance that is stuck to the wall, for the difference across it.
struct Pad {
  std::string name;
  double resistance = 0.0;      ///< m2K/W
  double plus_or_minus = 0.05;  ///< share of the resistance
};

/// Temperatures of an air in the hours before the readings.
struct AirHistory {
  std::vector<double> hourly;  ///< degC, the present hour first
  std::string table;           ///< the file it was read from
  std::string sha256;          ///< of that file
};

/// An air on the day of the survey.
struct SurveyedAir {
  std::string space;
  double plus_or_minus = 0.6;  ///< of its thermometer, K
  std::optional<AirHistory> history;
  std::optional<double> day_mean;  ///< of the 24 hours before, degC; of lowest and highest, too
};

/// An upright area of a section, m.
struct SurveyBox {
  double x_from = 0.0;
  double x_to = 0.0;
  double y_from = 0.0;
  double y_to = 0.0;
};

/// Masonry that may conduct otherwise than the rest of its material.
struct Zone {
  std::string name;
  std::string section;  ///< of a house; empty: the only one
  std::string of;       ///< material
  SurveyBox box;
};

/// Inside surface that something may cover.
struct Stretch {
  std::string name;
  std::string section;
  SurveyBox box;
  std::optional<materials::Behind> behind;
};

/// What may be the case, beside the section as it is drawn.
enum class ExplanationKind : std::uint8_t {
  as_drawn,
  conducts_better,
  conducts_less,
  covered,
  better_and_covered,
  thermometer_off,
  colder_outside,
};

struct Explanation {
  ExplanationKind kind = ExplanationKind::as_drawn;
  std::string of;    ///< zone, stretch, instrument or space; empty: nothing in particular
  std::string also;  ///< the stretch, where both
};

/// One reading of a survey, at a probe.
struct SurveyReading {
  std::string section;  ///< of a house; empty: the only one
  std::string probe;
  double temperature = 0.0;             ///< degC
  std::optional<double> difference;     ///< across a pad, K, in place of a temperature
  std::string across;                   ///< the pad
  std::string with;                     ///< the instrument; empty: one of its own
  std::optional<double> plus_or_minus;  ///< K, in place of the instrument's
};

/// How far the household may leave what is stated of its air, 95 %.
struct Household {
  double humidity = 0.10;  ///< relative humidity
  double inside = 2.0;     ///< K
  double outside = 3.0;    ///< K
};

/// A visit with a thermometer.
struct Survey {
  std::optional<double> hour;     ///< of the day, 0 to 24
  std::optional<double> heating;  ///< how long the heating has been steady, h
  std::optional<double> rain;     ///< since rain on the wall, h
  std::optional<double> sun;      ///< since sun on the wall, h
  bool wet = false;               ///< the surface, to the eye
  std::vector<Instrument> instruments;
  std::vector<Pad> pads;
  std::vector<SurveyedAir> airs;
  std::vector<Zone> zones;
  std::vector<Stretch> stretches;
  std::vector<SurveyReading> readings;
  std::vector<Explanation> explanations;  ///< empty: those that are usual
  std::size_t line = 0;                   ///< in the file, from 1
};

}  // namespace quoin::cases
