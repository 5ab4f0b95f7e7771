// SPDX-License-Identifier: Apache-2.0
#include "tools/text_report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "cases/utf8.hpp"
#include "tools/answer/survey/text_survey.hpp"
#include "tools/judge.hpp"
#include "tools/readings.hpp"
#include "tools/text_enough.hpp"
#include "tools/text_vapour.hpp"
#include "tools/text_words.hpp"
#include "tools/text_year.hpp"

namespace quoin::tools {
namespace {

using Cell = TextTable::Cell;

std::string fixed(double value, int decimals) {
  if (!std::isfinite(value)) return "-";
  const std::string digits = fmt::format("{:.{}f}", value, decimals);
  return digits.find_first_not_of("-0.") == std::string::npos && digits[0] == '-' ? digits.substr(1)
                                                                                  : digits;
}

std::string heading(std::string_view words, const TextStyle& style) {
  return "\n" + toned(cut_to(harmless(words, style), style.width, style), Tone::strong, style) +
         "\n";
}

std::vector<Cell> spot_row(std::string name, const SolvedVariant& solved,
                           const solver::AirSurface& surface) {
  const solver::Spot& spot = surface.coldest;
  const AirHumidity* air = humidity_of(solved, surface.air);
  const ShortVerdict verdict = short_verdict(solved, surface.air);
  const std::string factor =
      std::isfinite(spot.factor.value)
          ? fmt::format("{}±{}", fixed(spot.factor.value, 3),
                        fixed(std::max(std::ceil(spot.factor.band * 1000.0), 1.0) / 1000.0, 3))
          : "-";
  return {{std::move(name)},
          {fixed(spot.temperature.value, 1)},
          {fmt::format("{:.0f}, {:.0f}", 1000.0 * spot.place.x + 0.0, 1000.0 * spot.place.y + 0.0)},
          {factor},
          {air != nullptr ? fixed(100.0 * air->surface_humidity, 0) + " %" : "-"},
          {air != nullptr ? fixed(std::floor(100.0 * air->highest_safe_humidity), 0) + " %" : "-"},
          {std::string(verdict.words), verdict.tone}};
}

std::string spots_table(const Results& results, const TextStyle& style) {
  TextTable table("lrlrrrl");
  const auto strong = [](std::string_view words) { return Cell{std::string(words), Tone::strong}; };
  table.add({strong("variant"), strong("coldest"), strong("at"), strong("fRsi"), strong("humidity"),
             strong("safe"), strong("verdict")});
  table.add({{""}, {"°C"}, {"mm"}, {""}, {"there"}, {"up to"}, {""}});
  for (const SolvedVariant& solved : results.variants) {
    std::vector<const solver::AirSurface*> rooms;
    for (const solver::AirSurface& surface : solved.surface.airs) {
      if (solved.variant.spaces[surface.air].is == cases::SpaceKind::inside) {
        rooms.push_back(&surface);
      }
    }
    if (rooms.size() != 1) table.add({{solved.variant.name}});
    for (const solver::AirSurface* room : rooms) {
      table.add(spot_row(
          rooms.size() == 1 ? solved.variant.name : "  " + solved.variant.spaces[room->air].name,
          solved, *room));
    }
  }
  return table.text(style);
}

std::string verdicts_text(const Results& results, const TextStyle& style) {
  std::string text;
  for (const SolvedVariant& solved : results.variants) {
    text += heading(solved.variant.name, style) + paragraph(solved.summary, 2, style);
  }
  return text;
}

std::string changes_text(const Results& results, const TextStyle& style) {
  if (results.changes.empty()) return "";
  std::string text = heading(
      fmt::format("What changes against \"{}\"", results.variants.front().variant.name), style);
  for (const Change& change : results.changes) text += paragraph(change.words, 2, style);
  return text;
}

/// Warnings, each once, with the variants that share it.
std::string warnings_text(const Results& results, const TextStyle& style) {
  std::vector<std::pair<std::string, std::vector<std::string>>> all;
  for (const SolvedVariant& solved : results.variants) {
    for (const std::string& warning : solved.warnings) {
      auto known = std::find_if(all.begin(), all.end(),
                                [&](const auto& each) { return each.first == warning; });
      if (known == all.end()) known = all.insert(all.end(), {warning, {}});
      if (known->second.empty() || known->second.back() != solved.variant.name) {
        known->second.push_back(solved.variant.name);
      }
    }
  }
  if (all.empty()) return "";
  std::string text = heading("Warnings", style);
  for (const auto& [warning, variants] : all) {
    const bool everywhere = variants.size() == results.variants.size();
    const std::string where = everywhere ? "" : fmt::format(" ({})", fmt::join(variants, ", "));
    text += paragraph(warning + where, 2, style);
  }
  return text;
}

std::string heat_text(const Results& results, const TextStyle& style) {
  TextTable couplings("llrrr");
  couplings.add({{"variant"}, {"between"}, {"W/(m·K)"}, {"at least"}, {"at most"}});
  TextTable flows("llr");
  flows.add({{"variant"}, {"from"}, {"W/m"}});
  bool any = false;
  for (const SolvedVariant& solved : results.variants) {
    const auto& spaces = solved.variant.spaces;
    const auto short_name = [&](SpaceId id) { return cases::shortened(spaces[id].name, 16); };
    std::string name = solved.variant.name;
    for (const solver::Coupling& coupling : solved.heat.couplings) {
      any = true;
      couplings.add({{std::exchange(name, "")},
                     {short_name(coupling.a) + " - " + short_name(coupling.b)},
                     {fixed(coupling.value, 4)},
                     {fixed(coupling.low, 4)},
                     {fixed(coupling.high, 4)}});
    }
    name = solved.variant.name;
    for (const SpaceId id : geometry::ids(solved.heat.flows)) {
      flows.add({{std::exchange(name, "")}, {short_name(id)}, {fixed(solved.heat.flows[id], 2)}});
    }
  }
  if (!any) return "";
  return heading("Thermal coupling L2D", style) + couplings.text(style) +
         heading("Heat flow into the section", style) + flows.text(style);
}

std::string psi_text(const Results& results, const TextStyle& style) {
  std::vector<std::vector<Cell>> rows;
  for (const SolvedVariant& solved : results.variants) {
    std::string name = solved.variant.name;
    for (const solver::LinearTransmittance& psi : solved.psi) {
      rows.push_back({{std::exchange(name, "")},
                      {words_for(psi)},
                      {fixed(psi.value.value, 4)},
                      {"±" + fixed(psi.value.band, 4)}});
    }
  }
  if (rows.empty()) return "";
  TextTable table("llrr");
  table.add({{"variant"}, {"by"}, {"W/(m·K)"}, {""}});
  for (auto& row : rows) table.add(std::move(row));
  return heading("Linear thermal transmittance ψ", style) + table.text(style);
}

std::string plain_text(const Results& results, const TextStyle& style) {
  TextTable table("llrrr");
  table.add({{"variant"}, {"part"}, {"U W/(m²·K)"}, {"fRsi"}, {"surface °C"}});
  bool any = false;
  for (const SolvedVariant& solved : results.variants) {
    std::string name = solved.variant.name;
    for (const solver::PlainPart& part : solved.plain) {
      any = true;
      table.add({{std::exchange(name, "")},
                 {cases::shortened(part.name, 24)},
                 {fixed(part.transmittance, 3)},
                 {fixed(part.surface_factor, 3)},
                 {fixed(part.surface_temperature, 1)}});
    }
  }
  return any ? heading("Away from the detail", style) + table.text(style) : "";
}

}  // namespace

ShortVerdict short_verdict(const SolvedVariant& solved, SpaceId air) {
  bool fails = false, close = false, gated = false, any = false, humidity_fails = false;
  for (const Verdict& verdict : solved.verdicts) {
    if (verdict.space != air) continue;
    any = true;
    gated = gated || !verdict.gate.empty();
    if (verdict.certainty == Certainty::too_close) {
      close = true;
    } else if (!verdict.holds) {
      fails = true;
      humidity_fails = humidity_fails || verdict.unit == "%RH";
    }
  }
  const AirHumidity* humidity = humidity_of(solved, air);
  if (humidity != nullptr && humidity->surface_humidity >= 1.0) return {"wet", Tone::bad};
  if (humidity_fails) return {"mould", Tone::bad};
  if (fails) return {"fRsi low", Tone::bad};
  if (close) return {"too close", Tone::doubtful};
  if (gated) return {"dry first", Tone::doubtful};
  return any ? ShortVerdict{"safe", Tone::good} : ShortVerdict{"-", Tone::plain};
}

namespace {

/// What was read, as a survey tells it or else beside the model.
std::string readings_part(const Results& results, const TextStyle& style) {
  return results.survey ? survey_text(*results.survey, style) : readings_text(results, style);
}

std::string chances_part(const Results& results, const TextStyle& style) {
  std::vector<NamedChances> all;
  for (const SolvedVariant& solved : results.variants)
    all.push_back({solved.variant.name, &solved.chances});
  return chance_text(all, style);
}

}  // namespace

std::string text_report(const Results& results, const TextStyle& style) {
  return toned(cut_to(harmless(results.title, style), style.width, style), Tone::strong, style) +
         "\n" + paragraph(results.note, 0, style) + "\n" + spots_table(results, style) +
         verdicts_text(results, style) + changes_text(results, style) +
         readings_part(results, style) + chances_part(results, style) +
         enough_text(results, style) + year_text(results, style) + vapour_text(results, style) +
         warnings_text(results, style) + heat_text(results, style) + psi_text(results, style) +
         plain_text(results, style);
}

}  // namespace quoin::tools
