// SPDX-License-Identifier: Apache-2.0
#include "cases/grammar/units.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>

#include "cases/text/decimal.hpp"

namespace quoin::cases {
namespace {

/// The first accepted unit of each measure is that of bare numbers.
constexpr Unit table[] = {
    {"mm", Measure::length, 1, 1000},
    {"cm", Measure::length, 1, 100},
    {"m", Measure::length},
    {"in", Measure::length, 25.4, 1000, 0, false},
    {"inch", Measure::length, 25.4, 1000, 0, false},
    {"\"", Measure::length, 25.4, 1000, 0, false},
    {"ft", Measure::length, 304.8, 1000, 0, false},
    {"'", Measure::length, 304.8, 1000, 0, false},
    {"°C", Measure::temperature},
    {"degC", Measure::temperature},
    {"C", Measure::temperature},
    {"°F", Measure::temperature, 5, 9, -160.0 / 9, false},
    {"degF", Measure::temperature, 5, 9, -160.0 / 9, false},
    {"F", Measure::temperature, 5, 9, -160.0 / 9, false},
    {"K", Measure::difference},
    {"°C", Measure::difference},
    {"degC", Measure::difference},
    {"%", Measure::humidity, 1, 100},
    {"%RH", Measure::humidity, 1, 100},
    {"%rh", Measure::humidity, 1, 100},
    {"W/mK", Measure::conductivity},
    {"W/m/K", Measure::conductivity},
    {"Wm-1K-1", Measure::conductivity},
    {"mW/mK", Measure::conductivity, 1, 1000},
    {"m2K/W", Measure::resistance},
    {"Km2/W", Measure::resistance},
    {"kg/m3", Measure::density},
    {"g/cm3", Measure::density, 1000},
    {"kg/m3", Measure::water_density},
    {"m/s", Measure::speed},
    {"km/h", Measure::speed, 1, 3.6},
    {"m3/m3", Measure::water_volume},
    {"vol-%", Measure::water_volume, 1, 100},
    {"vol%", Measure::water_volume, 1, 100},
    {"%byvolume", Measure::water_volume, 1, 100},
    {"kg/kg", Measure::water_mass},
    {"mass-%", Measure::water_mass, 1, 100},
    {"mass%", Measure::water_mass, 1, 100},
    {"%bymass", Measure::water_mass, 1, 100},
    {"g/h", Measure::moisture_rate, 1, 3.6e6},
    {"kg/h", Measure::moisture_rate, 1, 3600},
    {"kg/d", Measure::moisture_rate, 1, 86400},
    {"m3", Measure::volume},
    {"1/h", Measure::air_change, 1, 3600},
    {"/h", Measure::air_change, 1, 3600},
    {"h-1", Measure::air_change, 1, 3600},
    {"W/mK", Measure::loss},
    {"g/m2h", Measure::evaporation, 1, 3.6e6},
    {"g/m2d", Measure::evaporation, 1, 8.64e7},
    {"Pa", Measure::pressure},
    {"hPa", Measure::pressure, 100},
    {"%", Measure::share, 1, 100},
    {"h", Measure::duration},
    {"hours", Measure::duration},
    {"hour", Measure::duration},
    {"min", Measure::duration, 1, 60},
    {"d", Measure::duration, 24},
    {"days", Measure::duration, 24},
    {"mm2/m", Measure::openings, 1, 1e6},
    {"mm2/m2", Measure::openings, 1, 1e6},
    {"cm2/m", Measure::openings, 1, 1e4},
    {"cm2/m2", Measure::openings, 1, 1e4},
    {"m2/m", Measure::openings},
};

/// Turns every `from` into `to`.
void replace(std::string& text, std::string_view from, std::string_view to) {
  for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size())
    text.replace(at, from.size(), to);
}

const Unit* bare_unit(Measure measure) {
  const auto found = std::find_if(std::begin(table), std::end(table), [&](const Unit& unit) {
    return unit.measure == measure && unit.accepted;
  });
  return found == std::end(table) ? nullptr : found;
}

double read_back(const std::string& text) {
  double value = 0.0;
  from_decimal(text.data(), text.data() + text.size(), value);
  return value;
}

}  // namespace

std::span<const Unit> units() { return table; }

std::string normal_unit(std::string_view unit) {
  std::string text(unit);
  for (const std::string_view dropped :
       {" ", "\u00A0", "\u202F", "\u2009", "·", "⋅", "*", "(", ")", "^", "\t"})
    replace(text, dropped, "");
  replace(text, "²", "2");
  replace(text, "³", "3");
  replace(text, "⁻¹", "-1");
  replace(text, "−", "-");
  replace(text, "º", "°");
  replace(text, "℃", "°C");
  return text;
}

Spoken spoken(Measure measure) {
  switch (measure) {
    case Measure::length:
      return {"a length", "mm", true};
    case Measure::temperature:
      return {"a temperature", "°C", true};
    case Measure::difference:
      return {"a temperature difference", "K", true};
    case Measure::humidity:
      return {"a relative humidity", "%", true};
    case Measure::conductivity:
      return {"a thermal conductivity", "W/(m·K)", true};
    case Measure::resistance:
      return {"a thermal resistance", "m²K/W", true};
    case Measure::density:
      return {"a density", "kg/m³", true};
    case Measure::speed:
      return {"a speed", "m/s", true};
    case Measure::water_volume:
      return {"a moisture content by volume", "m3/m3", true};
    case Measure::water_mass:
      return {"a moisture content by mass", "kg/kg", false};
    case Measure::water_density:
      return {"a moisture content", "kg/m3", false};
    case Measure::moisture_rate:
      return {"a moisture production", "g/h", true};
    case Measure::volume:
      return {"a volume", "m³", true};
    case Measure::air_change:
      return {"an air change", "1/h", true};
    case Measure::loss:
      return {"a heat loss per metre of the section", "W/(m·K)", true};
    case Measure::evaporation:
      return {"a rate of evaporation", "g/(m²·h)", true};
    case Measure::pressure:
      return {"a vapour pressure", "Pa", true};
    case Measure::duration:
      return {"a duration", "h", true};
    case Measure::share:
      return {"a share", "%", true};
    case Measure::openings:
      return {"an area of openings", "mm²/m", true};
    case Measure::number:
      break;
  }
  return {"a number", "", true};
}

std::string shown(double value, Measure measure) {
  if (std::isinf(value)) return "infinite";
  if (measure == Measure::length && std::abs(value) >= 1.0) return fmt::format("{:.6g} m", value);
  const Unit* unit = bare_unit(measure);
  const std::string_view name = spoken(measure).unit;
  if (unit == nullptr || name.empty()) return fmt::format("{:.6g}", value);
  return fmt::format("{:.6g} {}", (value - unit->offset) * unit->divisor / unit->factor, name);
}

std::string bare_number(double value, Measure measure) {
  if (std::isinf(value)) return "infinite";
  const Unit* unit = bare_unit(measure);
  if (unit == nullptr) return fmt::format("{}", value);
  const double number = (value - unit->offset) * unit->divisor / unit->factor;
  for (int digits = 6; digits < 17; ++digits) {
    const std::string text = fmt::format("{:.{}g}", number, digits);
    if (read_back(text) * unit->factor / unit->divisor + unit->offset == value) return text;
  }
  return fmt::format("{}", number);
}

}  // namespace quoin::cases
