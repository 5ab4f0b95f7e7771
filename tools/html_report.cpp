// SPDX-License-Identifier: Apache-2.0
#include "tools/html_report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "tools/physics.hpp"
#include "tools/places.hpp"
#include "tools/readings.hpp"
#include "tools/svg_canvas.hpp"
#include "tools/svg_field.hpp"
#include "tools/svg_section.hpp"
#include "tools/text_report.hpp"
#include "tools/text_words.hpp"
#include "tools/version.hpp"

namespace quoin::tools {
namespace {

constexpr std::string_view style = R"(
:root { color-scheme: light; }
body { font: 1rem/1.5 "DejaVu Sans", Verdana, sans-serif; color: #1a1a1a; background: #fff;
  max-width: 60rem; margin: 0 auto; padding: 1rem; }
h1 { font-size: 1.6rem; line-height: 1.2; }
h2 { font-size: 1.2rem; margin-top: 2rem; border-bottom: 2px solid #1a1a1a; }
h3 { font-size: 1rem; margin-bottom: 0.2rem; }
h1, h2, h3, p, li { overflow-wrap: anywhere; }
td, th { overflow-wrap: break-word; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; min-width: 44rem; font-size: 0.9rem; }
th, td { text-align: left; vertical-align: top; padding: 0.3rem 0.5rem; border-bottom: 1px solid #767676; }
td.n, th.n { text-align: right; }
td.n { white-space: nowrap; }
figure { margin: 1rem 0; }
img { max-width: 100%; height: auto; }
.note { border-left: 4px solid #8a5a00; padding-left: 0.7rem; }
.blank { border: 1px solid #767676; min-height: 8rem; }
@media print { body { max-width: none; padding: 0; font-size: 9.5pt; }
  table { min-width: 0; font-size: 8pt; }
  h2, h3 { break-after: avoid; } figure, tr, .blank { break-inside: avoid; } @page { size: A4; margin: 18mm; } }
)";

constexpr std::string_view assumptions = R"(<ul>
<li>Calculated following ISO 10211 two-dimensional rules; surface resistances per ISO 13788 for surface moisture
and ISO 6946 for heat flow. Readings are outside any standard.</li>
<li>Steady heat conduction in one section. Left out: the third dimension, air movement, heat storage, sun, the
movement of vapour and liquid water, salts.</li>
<li>Each band covers grid and solver only. What is not known of the house, its materials and its air moves the
answer more: compare variants.</li>
<li>80 % humidity at a surface stands for mould over weeks, not for one cold hour.</li>
</ul>)";

constexpr std::string_view cautions = R"(<ul>
<li>This is a calculation aid. Local codes, licensed practitioners and judgement on site govern.</li>
<li>Find and stop the source of water, and let masonry dry, before anything is insulated.</li>
<li>Lead paint: test before stripping, no dry sanding, no hot air. Asbestos: survey before you drill, cut or
strip.</li>
<li>Lime burns eyes and skin; chasing and grinding masonry frees silica dust; clearing mould needs protection.
Medical advice belongs to clinicians.</li>
<li>Live cables in chases and behind linings. Rooms with a fire or boiler need their air.</li>
<li>Lowering the ground can undermine shallow footings: take structural advice. Work at height needs proper
access.</li>
<li>Linings have a fire class; listed buildings, conservation areas and party walls need consent.</li>
</ul>)";

std::string cell(std::string_view text, bool number = false) {
  return fmt::format("<td{}>{}</td>", number ? " class=\"n\"" : "", escaped(text));
}

std::string number(double value, int decimals) {
  return cell(std::isfinite(value) ? fmt::format("{:.{}f}", value, decimals) : "-", true);
}

/// A table from its headings and rows of finished cells. A heading that begins with '#' stands over
/// numbers.
std::string table(const std::vector<std::string>& headings, const std::vector<std::string>& rows) {
  if (rows.empty()) return "";
  std::string text = "<div class=\"wide\"><table><thead><tr>";
  for (const std::string& heading : headings) {
    const bool numbers = heading.front() == '#';
    text += fmt::format("<th scope=\"col\"{}>{}</th>", numbers ? " class=\"n\"" : "",
                        escaped(heading.substr(numbers ? 1 : 0)));
  }
  text += "</tr></thead><tbody>\n";
  for (const std::string& row : rows) text += "<tr>" + row + "</tr>\n";
  return text + "</tbody></table></div>\n";
}

std::string section(std::string_view title, const std::string& content) {
  return content.empty() ? "" : fmt::format("<section><h2>{}</h2>\n{}</section>\n", title, content);
}

/// A picture as part of the page. Its text is coded byte by byte, so that nothing in it can end the
/// attribute.
std::string figure(const std::string& svg, std::string_view says) {
  std::string coded;
  for (const char c : svg) {
    const auto byte = static_cast<unsigned char>(c);
    const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                       std::string_view(" =.;,()-+_").find(c) != std::string_view::npos;
    coded += plain ? std::string(1, c) : fmt::format("%{:02X}", byte);
  }
  return fmt::format(
      "<figure><img alt=\"{}\" src=\"data:image/svg+xml;charset=utf-8,{}\"></figure>\n",
      escaped(says), coded);
}

std::string verdicts_html(const Results& results) {
  std::string text;
  for (const SolvedVariant& solved : results.variants) {
    text += fmt::format("<h3>{}</h3>\n<p>{}</p>\n", escaped(solved.variant.name),
                        escaped(solved.summary));
  }
  return text;
}

std::string side_by_side(const Results& results) {
  std::vector<std::string> rows;
  for (const SolvedVariant& solved : results.variants) {
    for (const solver::AirSurface& surface : solved.surface.airs) {
      const AirHumidity* air = nullptr;
      for (const AirHumidity& humidity : solved.humidity) {
        if (humidity.air == surface.air) air = &humidity;
      }
      const solver::Spot& spot = surface.coldest;
      rows.push_back(
          cell(solved.variant.name) + cell(solved.variant.spaces[surface.air].name) +
          cell(words_for(solved, spot)) + number(spot.temperature.value, 1) +
          cell(fmt::format("{:.3f} ± {:.3f}", spot.factor.value, spot.factor.band), true) +
          (air != nullptr ? number(air->factor_needed, 3) + number(air->surface_humidity * 100, 0) +
                                number(std::floor(air->highest_safe_humidity * 100), 0)
                          : cell("-", true) + cell("-", true) + cell("-", true)) +
          cell(short_verdict(solved, surface.air).words));
    }
  }
  std::string text = table({"variant", "room", "coldest spot", "#°C", "#fRsi", "#fRsi needed here",
                            "#humidity there %", "#safe up to % in the room", "verdict"},
                           rows);
  if (!results.changes.empty()) text += "<ul>\n";
  for (const Change& change : results.changes)
    text += fmt::format("<li>{}</li>\n", escaped(change.words));
  return results.changes.empty() ? text : text + "</ul>\n";
}

std::string pictures(const Results& results) {
  const SolvedVariant& first = results.variants.front();
  std::string text =
      figure(section_picture(first.variant, first.conductivity, results.title, ""),
             "The section as drawn, with materials, spaces, dimensions and cut planes");
  for (const SolvedVariant& solved : results.variants) {
    text += figure(
        field_picture(solved, results.title, ""),
        fmt::format("Temperatures in the section, {}. {}", solved.variant.name, solved.summary));
  }
  return text;
}

std::string readings_html(const Results& results) {
  std::vector<std::string> rows;
  for (const SolvedVariant& solved : results.variants) {
    for (const ComparedReading& reading : compared_readings(solved)) {
      const auto [low, high] = std::minmax(reading.with_surface, reading.with_heat);
      rows.push_back(cell(solved.variant.name) + cell(reading.probe) +
                     cell(fmt::format("{:.1f} ± {:.1f}", reading.read, reading.plus_minus), true) +
                     cell(fmt::format("{:.1f} to {:.1f}", low, high), true) +
                     cell(reading.explained ? "explained" : "not explained"));
    }
  }
  return table({"variant", "probe", "#read °C", "#computed °C", ""}, rows);
}

std::string materials_html(const Results& results) {
  std::vector<std::string> rows;
  for (const SolvedVariant& solved : results.variants) {
    for (const RegionId id : geometry::ids(solved.variant.regions)) {
      const cases::Region& region = solved.variant.regions[id];
      const materials::Sourced& dry = region.material.conductivity;
      rows.push_back(cell(solved.variant.name) + cell(region.name) +
                     cell(region.state.empty() ? "dry" : region.state) + number(dry.value, 3) +
                     number(solved.conductivity[id].value, 3) + cell(solved.conductivity[id].law) +
                     cell(fmt::format("{}: {}", words_for(dry.confidence), dry.source)));
    }
  }
  return table({"variant", "material", "moisture", "#W/(m·K) dry", "#W/(m·K) as used",
                "moisture law", "source of the dry value"},
               rows);
}

std::string air_html(const Results& results) {
  std::vector<std::string> rows;
  for (const SolvedVariant& solved : results.variants) {
    const auto resistance = [&](const solver::Physics& physics, SpaceId id) {
      double low = 1e300, high = -1e300;
      for (const auto& by_facing : physics.resistance[id]) {
        for (const double r : by_facing) {
          low = std::min(low, r);
          high = std::max(high, r);
        }
      }
      return cell(
          low == high ? fmt::format("{:.3g}", low) : fmt::format("{:.3g} to {:.3g}", low, high),
          true);
    };
    const solver::Physics surface =
        physics_of(solved.variant, materials::Purpose::surface_temperature);
    const solver::Physics heat = physics_of(solved.variant, materials::Purpose::heat_flow);
    for (const SpaceId id : geometry::ids(solved.variant.spaces)) {
      const cases::Space& space = solved.variant.spaces[id];
      rows.push_back(cell(solved.variant.name) + cell(space.name) + number(space.temperature, 1) +
                     (space.humidity ? number(*space.humidity * 100, 0) : cell("-", true)) +
                     resistance(surface, id) + resistance(heat, id));
    }
  }
  return table({"variant", "space", "#°C", "#humidity %",
                "#resistance for surface temperature m²K/W", "#for heat flow m²K/W"},
               rows);
}

std::string heat_html(const Results& results) {
  std::vector<std::string> couplings, psis;
  for (const SolvedVariant& solved : results.variants) {
    for (const solver::Coupling& coupling : solved.heat.couplings) {
      couplings.push_back(cell(solved.variant.name) +
                          cell(fmt::format("{} – {}", solved.variant.spaces[coupling.a].name,
                                           solved.variant.spaces[coupling.b].name)) +
                          number(coupling.value, 4) + number(coupling.low, 4) +
                          number(coupling.high, 4));
    }
    for (const solver::LinearTransmittance& psi : solved.psi) {
      psis.push_back(cell(solved.variant.name) + cell(words_for(psi)) +
                     cell(fmt::format("{:.4f} ± {:.4f}", psi.value.value, psi.value.band), true));
    }
  }
  return table({"variant", "between", "#L2D W/(m·K)", "#at least", "#at most"}, couplings) +
         table({"variant", "linear transmittance ψ by", "#W/(m·K)"}, psis);
}

std::string doubts_html(const Results& results) {
  std::string text;
  for (const SolvedVariant& solved : results.variants) {
    for (const std::string& warning : solved.warnings) {
      text += fmt::format("<li>{}: {}</li>\n", escaped(solved.variant.name), escaped(warning));
    }
  }
  return text.empty() ? text : "<ul>\n" + text + "</ul>\n";
}

std::string checks_html(const Results& results) {
  std::vector<std::string> rows;
  for (const SolvedVariant& solved : results.variants) {
    for (const solver::Check& check : solved.surface.checks) {
      rows.push_back(cell(solved.variant.name) + cell(check.name) +
                     cell(fmt::format("{:.1e}", check.value), true) +
                     cell(fmt::format("{:.0e}", check.limit), true) +
                     cell(check.holds ? "holds" : "does not hold"));
    }
  }
  return table({"variant", "check", "#value", "#limit", ""}, rows);
}

}  // namespace

std::string report_page(const Results& results) {
  if (results.variants.empty()) return "";
  const std::string title = escaped(results.title);
  std::string page = fmt::format(
      "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
      "<title>{}</title>\n<style>{}</style></head>\n<body><main>\n<h1>{}</h1>\n",
      title, style, title);
  if (!results.note.empty())
    page += fmt::format("<p class=\"note\">{}</p>\n", escaped(results.note));
  page +=
      section("Verdict", verdicts_html(results)) + section("Side by side", side_by_side(results)) +
      section("Pictures", pictures(results)) +
      section("Readings against the model", readings_html(results)) +
      section("Materials", materials_html(results)) +
      section("Air and surfaces", air_html(results)) + section("Heat flow", heat_html(results)) +
      section("Doubts", doubts_html(results)) + section("Checks", checks_html(results)) +
      section("Assumptions, and what is left out", std::string(assumptions)) +
      section("Cautions", std::string(cautions)) +
      section("Made from",
              fmt::format(
                  "<p>Case file {}, SHA-256 {}, by Quoin {}. The same file and program give the "
                  "same numbers; every number stands in findings.json.</p>\n",
                  escaped(results.file), escaped(results.sha256), QUOIN_VERSION)) +
      section("Remarks of the surveyor", "<div class=\"blank\"></div>\n");
  return page + "</main></body></html>\n";
}

}  // namespace quoin::tools
