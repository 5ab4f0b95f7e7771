// SPDX-License-Identifier: Apache-2.0
#include "tools/html_report.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cstdint>
#include <vector>

#include "cases/sha256.hpp"
#include "cases/utf8.hpp"
#include "tools/base64.hpp"
#include "tools/draw/canvas/xml.hpp"
#include "tools/html_basis.hpp"
#include "tools/html_parts.hpp"
#include "tools/html_pictures.hpp"
#include "tools/html_vapour.hpp"
#include "tools/html_verdicts.hpp"
#include "tools/page_data.hpp"
#include "tools/page_files.hpp"

namespace quoin::tools {
namespace {

/// The digest of a script or style sheet as a browser asks for it.
std::string digest(std::string_view text) {
  const std::string hex = cases::sha256(text);
  std::vector<std::uint8_t> bytes(hex.size() / 2);
  for (std::size_t k = 0; k < bytes.size(); ++k)
    std::from_chars(hex.data() + 2 * k, hex.data() + 2 * k + 2, bytes[k], 16);
  return "sha256-" + base64(bytes);
}

/// The scripts or the style sheets of the page, one after the other.
std::string all_of(std::string_view ending) {
  std::string text;
  for (const EmbeddedFile& file : page_files()) {
    if (file.name.ends_with(ending)) text += file.text;
  }
  return text;
}

/// What a printed page has at its head and foot.
std::string paper_style(std::string_view title) {
  return fmt::format(
      "@page {{ @top-left {{ font: 8pt sans-serif; content: {}; }} @bottom-right {{ font: 8pt "
      "sans-serif; content: counter(page) \" / \" counter(pages); }} }}\n",
      css_string(cases::shortened(title, 80)));
}

/// Nothing is loaded, and nothing runs but the script whose digest stands here.
std::string head(const std::string& title, const std::string& style, std::string_view script) {
  return fmt::format(
      "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\n"
      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; img-src data:; "
      "style-src '{}'; script-src '{}'; base-uri 'none'; form-action 'none'\">\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
      "<title>{}</title>\n<style>{}</style></head>\n",
      digest(style), digest(script), escaped(title), style);
}

/// Filled and shown by the script.
constexpr std::string_view thermocouple = R"(<section id="thermocouple" hidden>
<h2>Read off and try</h2>
<p id="thermocouple-help">Point at the picture to read a temperature, on the surface of a room the humidity too, or move the cross-hair with the arrow keys
(with Shift 1 mm a step; Home goes to the coldest spot). Change the air and all numbers follow at once. Nothing
here is saved or printed: the rest of the page stays as solved.</p>
<div class="controls">
<p><label for="variant">Variant</label> <select id="variant"></select></p>
<div id="airs"></div>
<p><button type="button" id="as-solved">Air as solved</button></p>
</div>
<div id="bench">
<canvas id="field" tabindex="0" role="application" aria-label="Temperature field with a cross-hair"
aria-describedby="thermocouple-help"></canvas>
<div id="beside">
<output id="reading" aria-live="polite"></output>
<p id="places"></p>
<div id="sentences" aria-live="polite"></div>
</div>
</div>
<p id="no-field" hidden>The grid of this variant is too fine to be shipped with the page: open its field in a
viewer.</p>
<div id="conditions"></div>
</section>
)";

}  // namespace

std::string report_page(const Results& results) {
  return report_page(results, pictures_of(results));
}

std::string report_page(const Results& results, const Pictures& pictures) {
  if (results.variants.empty()) return "";
  const std::string style = all_of(".css") + paper_style(results.title);
  const std::string script = all_of(".js");
  std::string page = head(results.title, style, script);
  page += fmt::format("<body><main>\n<h1>{}</h1>\n", escaped(results.title));
  if (!results.note.empty())
    page += fmt::format("<p class=\"note\">{}</p>\n", escaped(results.note));
  page += html_section("verdict", "Verdict", html_verdicts(results)) +
          html_section("side-by-side", "Side by side",
                       html_overview(pictures) + html_side_by_side(results)) +
          std::string(thermocouple) +
          html_section("section", "The section", html_drawings(results, pictures)) +
          html_section("fields", "Temperatures", html_fields(results, pictures)) +
          html_section("surface", "Along the inside surface", html_surface(pictures)) +
          html_section("flow", "Where heat flows", html_flow_lines(results, pictures)) +
          html_section("year", "Over the year", html_year(results)) +
          html_section("enough", "What would be enough", html_enough(results)) +
          html_section("readings", "Readings against the model", html_readings(results)) +
          html_section("materials", "Materials", html_materials(results)) +
          html_section("boundaries", "Air and surfaces", html_boundaries(results)) +
          html_section("heat", "Heat flow", html_heat(results)) +
          html_section("vapour", "Vapour and drying", vapour_html(results)) +
          html_section("doubts", "Doubts", html_doubts(results)) +
          html_section("checks", "Checks and bands", html_checks(results)) +
          html_section("assumptions", "Assumptions, and what is left out", html_assumptions()) +
          html_section("cautions", "Cautions", html_cautions()) +
          html_section("made-from", "Made from", html_made_from(results)) +
          html_section("remarks", "Remarks of the surveyor", "<div class=\"blank\"></div>\n");
  page += "</main>\n<script type=\"application/json\" id=\"data\">" + page_data(results) +
          "</script>\n<script>" + script + "</script>\n</body></html>\n";
  return page;
}

}  // namespace quoin::tools
