// SPDX-License-Identifier: Apache-2.0
#include "tools/output/html/report.hpp"

#include <fmt/format.h>

#include <cstdint>
#include <variant>
#include <vector>

#include "cases/text/utf8.hpp"
#include "tools/disk/base64.hpp"
#include "tools/draw/canvas/xml.hpp"
#include "tools/output/html/page_data.hpp"
#include "tools/output/html/parts.hpp"
#include "tools/output/report/figure.hpp"
#include "tools/output/report/report.hpp"

namespace quoin::tools {
namespace {

/// What a printed page has at its head and foot.
std::string paper_style(std::string_view title) {
  return fmt::format(
      "@page {{ @top-left {{ font: 8pt sans-serif; content: {}; }} @bottom-right {{ font: 8pt "
      "sans-serif; content: counter(page) \" / \" counter(pages); }} }}\n",
      css_string(cases::shortened(title, 80)));
}

/// Filled and shown by the script.
constexpr std::string_view thermocouple = R"(<section id="thermocouple" hidden>
<h2>Read off and try</h2>
<p id="thermocouple-help">Point at the picture to read a temperature, on the surface of a room the humidity too, or move the cross-hair with the arrow keys
(with Shift 1 mm a step; Home goes to the coldest spot). A click pins the reading, another frees it. Change the air
and all numbers follow at once: humidity by a household too, stated temperatures of unheated spaces only as you set
them. Nothing here is saved or printed: the rest of the page stays as solved.</p>
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

/// Before and after on one scale; filled and shown by the script.
constexpr std::string_view before_and_after = R"(<div id="before-after" hidden>
<canvas id="both" role="img" aria-label="Temperatures before and after, on one scale"></canvas>
<p><label for="split">before</label> <input type="range" id="split" min="0" max="100" value="50"
aria-label="How much of the picture is as found"> <label for="after">after</label>
<select id="after"></select></p>
</div>
)";

/// Shows one block after the other.
struct Shown {
  const Pictures& pictures;

  std::string operator()(const report::Heading& heading) const {
    std::string text = "<h3>" + escaped(heading.words);
    for (const report::Badge& badge : heading.badges) text += " " + html_badge(badge);
    return text + "</h3>\n";
  }
  std::string operator()(const report::Paragraph& paragraph) const {
    return html_paragraph(paragraph.words);
  }
  std::string operator()(const report::List& list) const { return html_list(list); }
  std::string operator()(const report::Table& table) const { return html_table(table); }
  std::string operator()(const report::Figure& figure) const {
    const Picture& picture = report::picture_of(figure, pictures);
    return picture.is_empty() ? "" : html_figure(picture.svg(), figure.says);
  }
  std::string operator()(const report::Verbatim& verbatim) const {
    return fmt::format(
        "<h3>{0}</h3>\n<pre class=\"wide\" role=\"region\" aria-label=\"{0}\">{1}</pre>\n",
        escaped(verbatim.caption), escaped(verbatim.text));
  }
  std::string operator()(const report::Blank& blank) const {
    std::string text = "<div class=\"blank\">\n";
    for (const std::string& line : blank.lines) text += html_paragraph(line);
    return text + "</div>\n";
  }
};

std::string section_of(const report::Section& section, const Pictures& pictures) {
  std::string content;
  for (const report::Block& block : section.blocks) content += std::visit(Shown{pictures}, block);
  return html_section(section.name, section.title, content);
}

std::string contents(const report::Document& document, const std::string& case_text) {
  std::string text = "<nav aria-label=\"Contents\"><p><a href=\"#thermocouple\">Try</a>";
  for (const report::Section& section : document.sections)
    text += fmt::format(" · <a href=\"#{}\">{}</a>", section.name, escaped(section.title));
  text +=
      "</p>\n<p>Beside this page: <a href=\"findings.json\">JSON</a> · <a "
      "href=\"surface.csv\">CSV</a> · <a href=\"compare.svg\">SVG</a>";
  if (!case_text.empty()) {
    const std::vector<std::uint8_t> bytes(case_text.begin(), case_text.end());
    text +=
        fmt::format(" · <a download=\"case.yaml\" href=\"data:text/plain;base64,{}\">case file</a>",
                    base64(bytes));
  }
  return text + " <button type=\"button\" id=\"print\" hidden>Print this page</button></p></nav>\n";
}

std::string first_screen(const report::Document& document, const std::string& case_text) {
  const report::FirstScreen& first = document.first;
  std::string text = "<section id=\"first\">\n";
  text += fmt::format("<h1>{}</h1>\n<p class=\"place\">{}</p>\n", escaped(document.title),
                      escaped(first.place));
  if (!document.note.empty())
    text += fmt::format("<p class=\"note\">{}</p>\n", escaped(document.note));
  text += fmt::format("<p class=\"answer\">{}</p>\n<div id=\"answers\"><div>\n",
                      escaped(first.sentence));
  if (!first.steps.items.empty())
    text += "<h2>What to do, in this order</h2>\n" + html_list(first.steps);
  text += "<h2>How it comes out</h2>\n" + html_table(first.variants) +
          fmt::format("<p class=\"sure\">{}</p>\n</div>\n", escaped(first.sure)) +
          std::string(before_and_after) + "</div>\n";
  return text + contents(document, case_text) + "</section>\n";
}

}  // namespace

std::string report_page(const Results& results) {
  return report_page(results, pictures_of(results));
}

std::string report_page(const Results& results, const Pictures& pictures) {
  if (results.variants.empty()) return "";
  const report::Document document = report::document_of(results);
  const std::string style = page_text(".css") + paper_style(results.title);
  const std::string script = page_text(".js");
  std::string page = html_head(results.title, style, script) + "<body><main>\n" +
                     first_screen(document, results.text) + std::string(thermocouple);
  for (const report::Section& section : document.sections) page += section_of(section, pictures);
  page += "</main>\n<script type=\"application/json\" id=\"data\">" + page_data(results) +
          "</script>\n<script>" + script + "</script>\n</body></html>\n";
  return page;
}

}  // namespace quoin::tools
