// SPDX-License-Identifier: Apache-2.0
#include "tools/html_pictures.hpp"

#include <fmt/format.h>

#include "tools/html_parts.hpp"
#include "tools/svg_canvas.hpp"
#include "tools/svg_compare.hpp"
#include "tools/svg_field.hpp"
#include "tools/svg_flow.hpp"
#include "tools/svg_section.hpp"
#include "tools/svg_surface.hpp"

namespace quoin::tools {
namespace {

/// A picture under a heading of its own; empty where there is none.
std::string titled(std::string_view title, const std::string& picture, std::string_view says) {
  if (picture.empty()) return "";
  return fmt::format("<h3>{}</h3>\n", escaped(title)) + html_figure(picture, says);
}

}  // namespace

std::string html_overview(const Results& results) {
  const std::string picture = compare_picture(results);
  if (picture.empty()) return "";
  return html_figure(picture,
                     "All variants side by side, with the same colours for the same temperatures, "
                     "each with its coldest spot and verdict");
}

std::string html_drawings(const Results& results) {
  SharedRows shared;
  for (const SolvedVariant& solved : results.variants) {
    const std::string picture =
        section_picture(solved.variant, solved.conductivity, results.title, "");
    shared.add(solved.variant.name,
               {{html_figure(picture,
                             "The section as drawn, with materials, spaces, dimensions and cut "
                             "planes"),
                 false}});
  }
  std::string text;
  for (const HtmlRow& row : shared.rows(results.variants.size()))
    text += fmt::format("<h3>{}</h3>\n{}", row[0].markup, row[1].markup);
  return text;
}

std::string html_fields(const Results& results) {
  std::string text;
  for (const SolvedVariant& solved : results.variants) {
    text += titled(
        solved.variant.name, field_picture(solved, results.title, ""),
        fmt::format("Temperatures in the section, {}. {}", solved.variant.name, solved.summary));
  }
  return text;
}

std::string html_surface(const Results& results) {
  const std::string picture = surface_picture(results);
  if (picture.empty()) return "";
  return html_figure(picture,
                     "Temperature along the inside surface, a curve for each variant, with the dew "
                     "point and the mould limit; the numbers stand in surface.csv");
}

std::string html_flow_lines(const Results& results) {
  const double step = flow_step(results);
  std::string text;
  for (const SolvedVariant& solved : results.variants) {
    text += titled(solved.variant.name, flow_picture(solved, step, results.title, ""),
                   fmt::format("Lines along which heat flows, {}; every two of them carry the same "
                               "between them",
                               solved.variant.name));
  }
  return text;
}

}  // namespace quoin::tools
