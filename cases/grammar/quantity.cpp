// SPDX-License-Identifier: Apache-2.0
#include "cases/grammar/quantity.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "cases/grammar/written_number.hpp"
#include "cases/text/words.hpp"

namespace quoin::cases {
namespace {

constexpr std::string_view coefficient = "W/m2K";

double inside(double number, const Unit& unit) {
  return number * unit.factor / unit.divisor + unit.offset;
}

std::vector<Unit> units_of(Measure measure) {
  std::vector<Unit> list;
  for (const Unit& unit : units()) {
    if (unit.measure == measure && unit.accepted) list.push_back(unit);
  }
  return list;
}

/// "mm, cm, m": one name for each size of unit.
std::string unit_names(Measure measure) {
  const std::vector<Unit> list = units_of(measure);
  if (list.empty()) return "no unit";
  std::vector<std::string> names{std::string(spoken(measure).unit)};
  std::vector<double> sizes{inside(1.0, list.front())};
  for (const Unit& unit : list) {
    if (std::find(sizes.begin(), sizes.end(), inside(1.0, unit)) != sizes.end()) continue;
    sizes.push_back(inside(1.0, unit));
    names.emplace_back(unit.written);
  }
  return joined(names, ", ");
}

bool in(Range range, double value) { return value >= range.low && value <= range.high; }

/// What the writer may have meant by a value out of range; empty where nothing comes to mind.
std::string likely_slip(const WrittenNumber& number, double value, Measure measure, Range range) {
  if (measure == Measure::resistance && value > 0 && in(range, 1.0 / value)) {
    return fmt::format("a coefficient in W/(m²K)? the resistance is then 1/{} = {:.4g}",
                       number.digits, 1.0 / value);
  }
  if ((measure == Measure::humidity || measure == Measure::share) && in(range, number.value))
    return fmt::format("did you mean {} ?", shown(number.value, measure));
  if (value < 0.0 && range.low >= 0.0 && in(range, -value))
    return fmt::format("did you mean {}?", shown(-value, measure));
  if (measure == Measure::number && in(range, value / 100) && range.high <= 1.0)
    return fmt::format("did you mean {:.6g}?", value / 100);
  std::vector<Unit> others = units_of(measure);
  if (value < range.low) std::reverse(others.begin(), others.end());
  for (const Unit& unit : others) {
    const double meant = inside(number.value, unit);
    if (meant == value || !in(range, meant)) continue;
    const std::string written = fmt::format("{} {}", number.digits, unit.written);
    const std::string bare(spoken(measure).unit);
    return unit.written == normal_unit(bare)
               ? fmt::format("did you mean {}? {} is the unit when none is written", written, bare)
               : fmt::format("did you mean {}? then write the unit", written);
  }
  return {};
}

/// Why a unit does not fit a measure.
Complaint unfit_unit(std::string_view text, const WrittenNumber& number, Measure measure) {
  const std::string what(spoken(measure).what);
  const std::string found(text);
  const std::string wanted = fmt::format("{}, in {}", what, unit_names(measure));
  if (number.unit == coefficient && measure == Measure::resistance && number.value > 0) {
    return {
        "a coefficient stands where a resistance is expected", found, wanted,
        fmt::format("the resistance is 1/{} = {:.4g} m²K/W", number.digits, 1.0 / number.value)};
  }
  if (measure == Measure::temperature && number.unit == "K") {
    return {"temperatures are written in °C", found, wanted,
            fmt::format("{} K is {:.6g} °C", number.digits, number.value - 273.15)};
  }
  const Unit* other = nullptr;
  for (const Unit& unit : units()) {
    if (unit.written != number.unit) continue;
    if (unit.measure == measure) {
      return {fmt::format("the unit '{}' is not used in a case file", number.unit), found, wanted,
              fmt::format("write {}", shown(inside(number.value, unit), measure))};
    }
    if (other == nullptr) other = &unit;
  }
  if (other != nullptr || number.unit == coefficient) {
    return {fmt::format("this is {}, not {}",
                        other != nullptr ? spoken(other->measure).what : "a coefficient", what),
            found, wanted, ""};
  }
  std::vector<std::string> names;
  for (const Unit& unit : units_of(measure)) names.emplace_back(unit.written);
  const std::string near = nearest(number.unit, names);
  return {fmt::format("unknown unit '{}'", number.unit), found, wanted,
          near.empty() ? "" : fmt::format("did you mean {} {}?", number.digits, near)};
}

const Unit* fitting_unit(const WrittenNumber& number, Measure measure) {
  for (const Unit& unit : units()) {
    if (unit.measure == measure && unit.accepted &&
        (number.unit.empty() || unit.written == number.unit))
      return &unit;
  }
  return nullptr;
}

}  // namespace

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view blanks[] = {" ", "\t", "\n", "\u00A0", "\u202F", "\u2009"};
  for (bool again = true; again;) {
    again = false;
    for (const std::string_view blank : blanks) {
      if (text.substr(0, blank.size()) == blank) {
        text.remove_prefix(blank.size());
        again = true;
      }
      if (text.size() >= blank.size() && text.substr(text.size() - blank.size()) == blank) {
        text.remove_suffix(blank.size());
        again = true;
      }
    }
  }
  return text;
}

std::string expected(Measure measure, Range plausible) {
  return fmt::format("{}, {} to {}", spoken(measure).what, shown(plausible.low, measure),
                     shown(plausible.high, measure));
}

std::variant<double, Complaint> quantity_of(std::string_view text, Measure measure,
                                            Range plausible) {
  if (trimmed(text) == "infinite" && std::isinf(plausible.high)) return plausible.high;
  const auto written = written_number(text);
  if (const auto* complaint = std::get_if<Complaint>(&written)) {
    Complaint full = *complaint;
    if (full.expected.empty()) full.expected = expected(measure, plausible);
    return full;
  }
  const WrittenNumber& number = std::get<WrittenNumber>(written);
  const bool bare = number.unit.empty();
  double value = number.value;
  if (!bare || measure != Measure::number) {
    const Unit* unit = fitting_unit(number, measure);
    if (unit == nullptr) return unfit_unit(text, number, measure);
    value = inside(number.value, *unit);
  }
  const bool metres_likely =
      measure == Measure::length && bare && value != 0.0 && std::abs(number.value) < 1.0;
  if (in(plausible, value) && !metres_likely) return value;

  Complaint complaint{fmt::format("this is hardly meant: {}", shown(value, measure)),
                      std::string(text), expected(measure, plausible),
                      likely_slip(number, value, measure, plausible)};
  if (metres_likely) {
    complaint.remedy = fmt::format("did you mean {} m? then write the unit", number.digits);
    if (in(plausible, value)) complaint.remedy += fmt::format("; else write {} mm", number.digits);
  }
  return complaint;
}

std::variant<materials::MoistureState, Complaint> moisture_state_of(std::string_view text) {
  using materials::MoistureState;
  const std::string_view whole = trimmed(text);
  std::vector<std::string> names;
  for (const auto& [name, state] : materials::named_states) {
    if (whole == name) return MoistureState(state);
    names.emplace_back(name);
  }
  const std::string wanted = joined(names, ", ") + ", or a content such as 0.15 m3/m3 or at 80 %";
  if (whole.substr(0, 3) == "at ") {
    const auto humidity = quantity_of(whole.substr(3), Measure::humidity, {0.01, 1.0});
    if (const auto* complaint = std::get_if<Complaint>(&humidity)) return *complaint;
    return MoistureState(materials::AtHumidity{std::get<double>(humidity)});
  }
  const auto written = written_number(whole);
  if (const auto* complaint = std::get_if<Complaint>(&written)) {
    if (complaint->what != "this is not a number") return *complaint;
    return Complaint{"this is not a moisture", std::string(whole), wanted,
                     did_you_mean(whole, names)};
  }
  const WrittenNumber& number = std::get<WrittenNumber>(written);
  if (number.unit.empty() && number.value == 0.0) return MoistureState(materials::VolumeFraction{});
  if (number.unit.empty() || number.unit == "%") {
    const bool percent = number.unit == "%" || number.value > 1.0;
    return Complaint{"the moisture does not say of what: of the volume, or of the dry mass",
                     std::string(whole), wanted,
                     percent ? fmt::format("write {0} vol-% or {0} mass-%", number.digits)
                             : fmt::format("write {0} m3/m3 or {0} kg/kg", number.digits)};
  }
  if (fitting_unit(number, Measure::water_mass) != nullptr) {
    const auto value = quantity_of(whole, Measure::water_mass, {0.0, 10.0});
    if (const auto* complaint = std::get_if<Complaint>(&value)) return *complaint;
    return MoistureState(materials::MassRatio{std::get<double>(value)});
  }
  if (fitting_unit(number, Measure::water_density) != nullptr) {
    const auto value = quantity_of(whole, Measure::water_density, {0.0, 1000.0});
    if (const auto* complaint = std::get_if<Complaint>(&value)) return *complaint;
    return MoistureState(materials::Concentration{std::get<double>(value)});
  }
  const auto value = quantity_of(whole, Measure::water_volume, {0.0, 1.0});
  if (const auto* complaint = std::get_if<Complaint>(&value)) return *complaint;
  return MoistureState(materials::VolumeFraction{std::get<double>(value)});
}

}  // namespace quoin::cases
