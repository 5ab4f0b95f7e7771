// SPDX-License-Identifier: Apache-2.0
#include "tools/output/overview.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "tools/answer/judge/judge.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/words/choices.hpp"
#include "tools/answer/words/figures.hpp"
#include "tools/answer/words/outcome_words.hpp"
#include "tools/draw/canvas/xml.hpp"
#include "tools/output/field/csv_surface.hpp"
#include "tools/output/html/parts.hpp"

namespace quoin::tools {
namespace {

constexpr std::string_view page_name = "overview.html", table_name = "overview.csv";

std::string number(double value, int decimals) {
  return std::isfinite(value) ? fixed(value, decimals) : "";
}

/// A chance of draws as a number; never none and never all, which no number of draws shows.
std::string percent(double chance) { return number(std::clamp(100 * chance, 0.5, 99.5), 1); }

std::string csv(const std::vector<OverviewRow>& rows) {
  std::string text =
      "case,variant,room,outcome,chance_percent,coldest_C,fRsi,U_W_m2K,L2D_W_mK,psi_W_mK,psi_by,"
      "report\r\n";
  for (const OverviewRow& row : rows) {
    text += fmt::format("{},{},{},{},{},{},{},{},{},{},{},{}\r\n", csv_cell(row.title),
                        csv_cell(row.variant), csv_cell(row.room), csv_cell(row.outcome),
                        row.chance ? percent(*row.chance) : std::string(), number(row.coldest, 2),
                        number(row.factor, 3), number(row.transmittance, 3),
                        number(row.coupling, 4), number(row.psi, 4), csv_cell(row.psi_by),
                        csv_cell(row.folder + "/report.html"));
  }
  return text;
}

/// A row of the page; the variant leads to its report.
std::string markup(const OverviewRow& row) {
  const auto figure = [](double value, int decimals) {
    return fmt::format("<td class=\"n\">{}</td>", fixed(value, decimals));
  };
  return fmt::format(
             "<tr><td>{}</td><td><a href=\"{}/report.html\">{}</a></td><td>{}</td><td>{}</td>"
             "<td class=\"n\">{}</td>",
             escaped(row.title), escaped(row.folder), escaped(row.variant), escaped(row.room),
             html_badge({row.outcome, row.tone}),
             row.chance ? cases_of_100(*row.chance) : std::string("–")) +
         figure(row.coldest, 1) + figure(row.factor, 3) + figure(row.transmittance, 3) +
         figure(row.coupling, 4) + figure(row.psi, 4) +
         fmt::format("<td>{}</td></tr>\n", escaped(row.psi_by));
}

std::string page(const std::vector<OverviewRow>& rows) {
  std::string text =
      html_head("Overview", page_text(".css"), "") +
      "<body><main>\n<h1>Overview</h1>\n<p>One row a room of each variant; each leads "
      "to its report. U is that of the first plain part, L2D that of the first pair of "
      "airs, ψ by the way that stands beside it.</p>\n"
      "<div class=\"wide cases\" role=\"region\" aria-label=\"All cases\" "
      "tabindex=\"0\">\n<table><thead><tr>";
  for (const std::string_view heading :
       {"case", "variant", "room", "outcome", "times passed in 100", "coldest °C", "fRsi",
        "U W/(m²·K)", "L2D W/(m·K)", "ψ W/(m·K)", "by"})
    text += fmt::format("<th scope=\"col\">{}</th>", heading);
  text += "</tr></thead>\n<tbody>\n";
  for (const OverviewRow& row : rows) text += markup(row);
  return text + "</tbody></table></div>\n</main></body></html>\n";
}

}  // namespace

std::vector<OverviewRow> overview_rows(const Results& results, const std::string& folder) {
  std::vector<OverviewRow> rows;
  for (const SolvedVariant& solved : results.variants) {
    for (const solver::AirSurface* surface : judged_surfaces(solved)) {
      OverviewRow row;
      row.title = results.title;
      row.folder = folder;
      row.variant = solved.variant.name;
      row.room = solved.variant.spaces[surface->air].name;
      if (const Outcome* outcome = outcome_of(solved, surface->air)) {
        row.outcome = badge(*outcome);
        row.tone = tone_of(outcome->kind);
        row.chance = outcome->chance;
      }
      row.coldest = surface->coldest.temperature.value;
      row.factor = surface->coldest.factor.value;
      row.transmittance = solved.plain.empty() ? std::nan("") : solved.plain.front().transmittance;
      row.coupling =
          solved.heat.couplings.empty() ? std::nan("") : solved.heat.couplings.front().value;
      row.psi = solved.psi.empty() ? std::nan("") : solved.psi.front().value.value;
      if (!solved.psi.empty()) row.psi_by = psi_by(solved, solved.psi.front());
      rows.push_back(std::move(row));
    }
  }
  return rows;
}

std::vector<File> overview_files(const std::vector<OverviewRow>& rows) {
  return {{std::string(page_name), page(rows)}, {std::string(table_name), csv(rows)}};
}

std::vector<std::string> overview_names() {
  return {std::string(page_name), std::string(table_name)};
}

}  // namespace quoin::tools
