// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <string>
#include <variant>
#include <vector>

#include "cases/grammar/quantity.hpp"
#include "cases/grammar/units.hpp"

namespace {

using quoin::cases::Complaint;
using quoin::cases::Measure;
using quoin::cases::moisture_state_of;
using quoin::cases::quantity_of;
using quoin::cases::Range;
using quoin::materials::AtHumidity;
using quoin::materials::Concentration;
using quoin::materials::MassRatio;
using quoin::materials::NamedState;
using quoin::materials::VolumeFraction;

constexpr Range any{-1e9, 1e9};

/// The value of a text that must have one.
double value(std::string_view text, Measure measure, Range plausible = any) {
  const auto result = quantity_of(text, measure, plausible);
  if (const auto* complaint = std::get_if<Complaint>(&result)) {
    CAPTURE(complaint->what);
    FAIL(std::string(text));
  }
  return std::get<double>(result);
}

/// The complaint about a text that must be refused.
Complaint complaint(std::string_view text, Measure measure, Range plausible = any) {
  const auto result = quantity_of(text, measure, plausible);
  if (!std::holds_alternative<Complaint>(result)) FAIL(std::string(text));
  return std::get<Complaint>(result);
}

template <class State>
State state(std::string_view text) {
  const auto result = moisture_state_of(text);
  if (const auto* refused = std::get_if<Complaint>(&result)) FAIL(refused->what);
  return std::get<State>(std::get<quoin::materials::MoistureState>(result));
}

}  // namespace

TEST_CASE("bare numbers carry the unit the trade uses") {
  CHECK(value("330", Measure::length) == 0.33);
  CHECK(value("18", Measure::temperature) == 18.0);
  CHECK(value("0.5", Measure::difference) == 0.5);
  CHECK(value("62", Measure::humidity) == 0.62);
  CHECK(value("0.62", Measure::conductivity) == 0.62);
  CHECK(value("0.13", Measure::resistance) == 0.13);
  CHECK(value("1650", Measure::density) == 1650.0);
  CHECK(value("4", Measure::speed) == 4.0);
  CHECK(value("0.1", Measure::share) == 0.001);
  CHECK(value("0.75", Measure::number) == 0.75);
}

TEST_CASE("a length is the same double in every unit") {
  for (const char* text : {"330", "330 mm", "330mm", "33 cm", "0.33 m", "0.33m", "3.3e2", "+330"}) {
    CAPTURE(text);
    CHECK(value(text, Measure::length) == 0.33);
  }
}

TEST_CASE("units are read in each of their spellings") {
  for (const char* text :
       {"0.56 W/(m K)", "0.56 W/(m·K)", "0.56 W/mK", "0.56 W/m K", "0.56 W/(m\u00A0K)",
        "0.56\u00A0W/(m\u202FK)", "560 mW/(m·K)", "0.56 W m⁻¹ K⁻¹", "0.56 W/m/K"}) {
    CAPTURE(text);
    CHECK(value(text, Measure::conductivity) == 0.56);
  }
  for (const char* text : {"0.13 m2K/W", "0.13 m²K/W", "0.13 m^2 K/W", "0.13 m²·K/W",
                           "0.13 (m² K)/W", "0.13 K m²/W"}) {
    CAPTURE(text);
    CHECK(value(text, Measure::resistance) == 0.13);
  }
  for (const char* text : {"18 °C", "18°C", "18 C", "18 degC", "18 ºC", "18 ℃"}) {
    CAPTURE(text);
    CHECK(value(text, Measure::temperature) == 18.0);
  }
  CHECK(value("1650 kg/m³", Measure::density) == 1650.0);
  CHECK(value("1.65 g/cm3", Measure::density) == 1650.0);
  CHECK(value("62 % RH", Measure::humidity) == 0.62);
  CHECK(value("36 km/h", Measure::speed) == 10.0);
  CHECK(value("-5", Measure::temperature) == -5.0);
  CHECK(value("−5 °C", Measure::temperature) == -5.0);
}

TEST_CASE("the water in a material is read by volume, by mass, by density, by name, by humidity") {
  CHECK(state<VolumeFraction>("0.15 m3/m3").value == 0.15);
  CHECK(state<VolumeFraction>("15 vol-%").value == 0.15);
  CHECK(state<VolumeFraction>("15 % by volume").value == 0.15);
  CHECK(state<VolumeFraction>("0").value == 0.0);
  CHECK(state<MassRatio>("0.08 kg/kg").value == 0.08);
  CHECK(state<MassRatio>("8 mass-%").value == 0.08);
  CHECK(state<MassRatio>("8 % by mass").value == 0.08);
  CHECK(state<Concentration>("150 kg/m3").value == 150.0);
  CHECK(state<NamedState>("damp") == NamedState::damp);
  CHECK(state<NamedState>(" saturated ") == NamedState::saturated);
  CHECK(state<AtHumidity>("at 80 %").humidity == 0.8);
  for (const char* text : {"0.15", "8 %", "damper", "at 0.8", "at damp", "0.15 m", "1.2 m3/m3"}) {
    CAPTURE(text);
    CHECK(std::holds_alternative<Complaint>(moisture_state_of(text)));
  }
}

TEST_CASE("a unit of another measure is refused, not converted") {
  struct Row {
    const char* text;
    Measure measure;
    const char* says;
  };
  const std::vector<Row> rows = {
      {"0.33 W/(m K)", Measure::length, "this is a thermal conductivity, not a length"},
      {"330 mm", Measure::temperature, "this is a length, not a temperature"},
      {"18 °C", Measure::length, "this is a temperature, not a length"},
      {"62 %", Measure::temperature, "this is a relative humidity, not a temperature"},
      {"0.13 m2K/W", Measure::conductivity, "this is a thermal resistance"},
      {"1650 kg/m3", Measure::conductivity, "this is a density"},
      {"330 mm", Measure::number, "this is a length, not a number"},
      {"7.7 W/(m2K)", Measure::conductivity, "this is a coefficient"},
      {"5 furlong", Measure::length, "unknown unit 'furlong'"},
      {"5 M", Measure::length, "unknown unit 'M'"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(complaint(row.text, row.measure).what.find(row.says) == 0);
  }
}

TEST_CASE("units that are not used come back converted") {
  CHECK(complaint("68 F", Measure::temperature).remedy == "write 20 °C");
  CHECK(complaint("50 °F", Measure::temperature).remedy == "write 10 °C");
  CHECK(complaint("293.15 K", Measure::temperature).remedy == "293.15 K is 20 °C");
  CHECK(complaint("10 in", Measure::length).remedy == "write 254 mm");
  CHECK(complaint("10 ft", Measure::length).remedy == "write 3.048 m");
  CHECK(complaint("25 W/(m²K)", Measure::resistance).remedy ==
        "the resistance is 1/25 = 0.04 m²K/W");
}

TEST_CASE("an implausible value is questioned with its likely slip") {
  struct Row {
    const char* text;
    Measure measure;
    Range plausible;
    const char* remedy;
  };
  const Range wall{0.05, 20.0}, humidity{0.01, 1.0}, conductivity{0.005, 500.0}, film{0.0, 2.0};
  const std::vector<Row> rows = {
      {"365 m", Measure::length, wall, "did you mean 365 mm"},
      {"0.365", Measure::length, wall, "did you mean 0.365 m?"},
      {"5000", Measure::conductivity, conductivity, "did you mean 5000 mW/mK"},
      {"0.62", Measure::humidity, humidity, "did you mean 62 %"},
      {"0.6 %", Measure::humidity, humidity, "did you mean 60 %"},
      {"7.7", Measure::resistance, film, "the resistance is then 1/7.7 = 0.1299"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    const Complaint refused = complaint(row.text, row.measure, row.plausible);
    CAPTURE(refused.remedy);
    CHECK(refused.remedy.find(row.remedy) != std::string::npos);
    CHECK(refused.expected.find(" to ") != std::string::npos);
  }
}

TEST_CASE("a plausible value is not questioned, ends of the range included") {
  CHECK(value("50", Measure::length, {0.05, 20.0}) == 0.05);
  CHECK(value("20 m", Measure::length, {0.05, 20.0}) == 20.0);
  CHECK(value("100", Measure::humidity, {0.01, 1.0}) == 1.0);
  CHECK(value("0", Measure::resistance, {0.0, 2.0}) == 0.0);
  CHECK(value("0.5 mm", Measure::length, {0.0001, 5.0}) == 0.0005);
}

TEST_CASE("what only looks like a number is refused") {
  struct Row {
    const char* text;
    const char* says;
    const char* remedy;
  };
  const std::vector<Row> rows = {
      {"0,33", "a comma stands inside a number", "write 0.33"},
      {"18,5 °C", "a comma stands inside a number", "write 18.5"},
      {"1,330", "a comma stands inside a number", "write 1.330 or 1330"},
      {"010", "a number begins with 0", "write 10"},
      {"-007.5", "a number begins with 0", "write -7.5"},
      {"00", "a number begins with 0", "write 0"},
      {"07:30", "a clock time stands for a number", "write 7.5"},
      {"0x1F", "numbers are decimal", ""},
      {"0o17", "numbers are decimal", ""},
      {"1 330", "something stands between the digits", ""},
      {"1_330", "something stands between the digits", ""},
      {".nan", "a case holds only finite numbers", ""},
      {".inf", "a case holds only finite numbers", ""},
      {"-.INF", "a case holds only finite numbers", ""},
      {"1e999", "this number is beyond", ""},
      {"warm", "this is not a number", ""},
      {"", "this is not a number", ""},
      {"-", "this is not a number", ""},
      {".", "this is not a number", ""},
      {"ca. 330", "this is not a number", ""},
      {"mm 330", "this is not a number", ""},
      {"--5", "this is not a number", ""},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    const Complaint refused = complaint(row.text, Measure::length);
    CHECK(refused.what.find(row.says) == 0);
    CHECK(refused.remedy == row.remedy);
  }
}

TEST_CASE("numbers in YAML's and the trade's usual forms are read") {
  CHECK(value("0.5", Measure::number) == 0.5);
  CHECK(value(".5", Measure::number) == 0.5);
  CHECK(value("5.", Measure::number) == 5.0);
  CHECK(value("1e3", Measure::number) == 1000.0);
  CHECK(value("1.5E-3", Measure::number) == 0.0015);
  CHECK(value("-0", Measure::number) == 0.0);
}

TEST_CASE("a number written bare reads back to the same double") {
  using quoin::cases::bare_number;
  for (const double length : {0.33, 0.345, 1.2, 0.0015, 0.1 + 0.2, 1.0 / 3.0}) {
    CAPTURE(length);
    CHECK(value(bare_number(length, Measure::length), Measure::length) == length);
  }
  for (int percent = 1; percent <= 100; ++percent) {
    const double humidity = percent / 100.0;
    CHECK(bare_number(humidity, Measure::humidity) == std::to_string(percent));
    CHECK(value(bare_number(humidity, Measure::humidity), Measure::humidity) == humidity);
  }
  CHECK(bare_number(0.33, Measure::length) == "330");
}
