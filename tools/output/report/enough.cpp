// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "tools/answer/words/choices.hpp"
#include "tools/output/report/parts.hpp"

namespace quoin::tools::report {
namespace {

Tone tone_of(Threshold::Kind kind) {
  switch (kind) {
    case Threshold::Kind::found:
    case Threshold::Kind::up_to:
    case Threshold::Kind::between:
      return Tone::plain;
    case Threshold::Kind::holds_always:
    case Threshold::Kind::up_to_damp:
      return Tone::good;
    case Threshold::Kind::dry_first:
      return Tone::doubtful;
    case Threshold::Kind::holds_never:
      return Tone::bad;
  }
  return Tone::plain;
}

/// Millimetres rounded so that they still hold: up the least, down the most.
std::string least_mm(double metres) {
  return fmt::format("{:.0f}", std::ceil(1e3 * metres - 1e-6));
}
std::string most_mm(double metres) {
  return fmt::format("{:.0f}", std::floor(1e3 * metres + 1e-6));
}

/// Thicknesses that hold, in figures that hold: tenths where no whole millimetre lies between.
std::string interval(const Threshold& threshold) {
  if (std::ceil(1e3 * threshold.value - 1e-6) <= std::floor(1e3 * threshold.until + 1e-6))
    return least_mm(threshold.value) + " to " + most_mm(threshold.until) + " mm only";
  return fmt::format("{:.1f} to {:.1f} mm only", 1e3 * threshold.value, 1e3 * threshold.until);
}

Cell thickness_cell(const std::optional<Threshold>& thickness) {
  if (!thickness) return figure_cell("–");
  const Tone tone = tone_of(thickness->kind);
  switch (thickness->kind) {
    case Threshold::Kind::found:
    case Threshold::Kind::holds_always:
    case Threshold::Kind::up_to_damp:
      return figure_cell(least_mm(thickness->value) + " mm", tone);
    case Threshold::Kind::up_to:
    case Threshold::Kind::between:
      return figure_cell(interval(*thickness), tone);
    case Threshold::Kind::holds_never:
      return figure_cell(thickness->more == Threshold::More::helps
                             ? fmt::format("not even {} mm", most_mm(thickness->value))
                             : fmt::format("none: more {}", words_for(thickness->more)),
                         tone);
    case Threshold::Kind::dry_first:
      return figure_cell("dry first", tone);
  }
  return figure_cell("–");
}

Cell moisture_cell(const std::optional<Threshold>& moisture) {
  if (!moisture) return figure_cell("–");
  const Tone tone = tone_of(moisture->kind);
  // What is left after rounding down: 10 % must not become 9.9 %.
  const std::string most =
      fmt::format("{:.1f} vol-%", std::floor(1e3 * moisture->value + 1e-9) / 10);
  switch (moisture->kind) {
    case Threshold::Kind::holds_always:
      return figure_cell("any", tone);
    case Threshold::Kind::holds_never:
      return figure_cell("not even dry", tone);
    case Threshold::Kind::up_to_damp:
      return figure_cell(most + ", damp", tone);
    case Threshold::Kind::dry_first:
      return figure_cell("dry first", tone);
    default:
      return figure_cell(most, tone);
  }
}

/// Rooms are not heated beyond what people live at.
Cell temperature_cell(const std::optional<double>& lowest) {
  constexpr double hottest = 26.0;  // degC; common practice, no source
  if (!lowest) return figure_cell("–");
  if (*lowest > hottest) return figure_cell("none that people live at", Tone::bad);
  return figure_cell(fmt::format("{:.1f} °C", std::ceil(10 * *lowest - 1e-9) / 10));
}

Cell humidity_cell(const std::optional<double>& highest) {
  if (!highest) return figure_cell("–");
  if (*highest >= 1.0) return figure_cell("any");
  return figure_cell(fmt::format("{:.0f} %", std::floor(100 * *highest)));
}

void add_once(std::vector<std::string>& list, const std::string& name) {
  if (std::find(list.begin(), list.end(), name) == list.end()) list.push_back(name);
}

}  // namespace

Blocks enough_part(const Results& results) {
  // What the variants ask for, each material once, in the order of the variants.
  std::vector<std::string> thickness, moisture;
  for (const SolvedVariant& solved : results.variants) {
    const cases::Enough& enough = solved.variant.enough;
    if (enough.thickness) add_once(thickness, enough.thickness->of);
    if (!enough.moisture_of.empty()) add_once(moisture, enough.moisture_of);
  }
  Table table{"For each criterion to hold: any one of these, all else as it is.",
              {{"variant", 2},
               {"room"},
               {"criterion", 1.4},
               {"humidity up to"},
               {"or the room from, no moisture added", 1.3}},
              {},
              3};
  for (const std::string& of : thickness) table.columns.push_back({"or " + of + " from", 1.2});
  for (const std::string& of : moisture) table.columns.push_back({"or " + of + " up to", 1.2});
  for (const SolvedVariant& solved : results.variants) {
    const cases::Enough& own = solved.variant.enough;
    for (const EnoughFor& enough : solved.enough) {
      if (!enough.highest_humidity && !enough.thickness && !enough.moisture) continue;
      Row row{words_cell(solved.variant.name), words_cell(solved.variant.spaces[enough.space].name),
              words_cell(enough.criterion), humidity_cell(enough.highest_humidity),
              temperature_cell(enough.lowest_temperature)};
      for (const std::string& of : thickness) {
        const bool is_own = own.thickness && own.thickness->of == of;
        row.push_back(is_own ? thickness_cell(enough.thickness) : figure_cell("–"));
      }
      for (const std::string& of : moisture)
        row.push_back(own.moisture_of == of ? moisture_cell(enough.moisture) : figure_cell("–"));
      table.rows.push_back(std::move(row));
    }
  }
  Blocks blocks;
  add(blocks, std::move(table));
  return blocks;
}

}  // namespace quoin::tools::report
