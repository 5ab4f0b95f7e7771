// SPDX-License-Identifier: Apache-2.0
#include "tools/html_pictures.hpp"

#include <fmt/format.h>

#include "tools/draw/canvas/xml.hpp"
#include "tools/html_parts.hpp"

namespace quoin::tools {
namespace {

/// A picture under a heading of its own; empty where there is none.
std::string titled(std::string_view title, const std::string& picture, std::string_view says) {
  if (picture.empty()) return "";
  return fmt::format("<h3>{}</h3>\n", escaped(title)) + html_figure(picture, says);
}

}  // namespace

std::string html_overview(const Pictures& pictures) {
  if (pictures.compare.is_empty()) return "";
  return html_figure(pictures.compare.svg(),
                     "All variants side by side, with the same colours for the same temperatures, "
                     "each with its coldest spot and verdict");
}

std::string html_drawings(const Results& results, const Pictures& pictures) {
  SharedRows<std::string> shared;
  for (std::size_t v = 0; v < results.variants.size(); ++v)
    shared.add(results.variants[v].variant.name, pictures.sections[v].svg());
  std::string text;
  for (const auto& [names, picture] : shared.rows(results.variants.size())) {
    text += titled(names, picture,
                   "The section as drawn, with materials, spaces, dimensions and cut planes");
  }
  return text;
}

std::string html_fields(const Results& results, const Pictures& pictures) {
  std::string text;
  for (std::size_t v = 0; v < results.variants.size(); ++v) {
    const SolvedVariant& solved = results.variants[v];
    text += titled(
        solved.variant.name, pictures.fields[v].svg(),
        fmt::format("Temperatures in the section, {}. {}", solved.variant.name, solved.summary));
  }
  return text;
}

std::string html_surface(const Pictures& pictures) {
  if (pictures.surface.is_empty()) return "";
  return html_figure(pictures.surface.svg(),
                     "Temperature along the inside surface, a curve for each variant, with the dew "
                     "point and the mould limit; the numbers stand in surface.csv");
}

std::string html_flow_lines(const Results& results, const Pictures& pictures) {
  std::string text;
  for (std::size_t v = 0; v < results.variants.size(); ++v) {
    const std::string& name = results.variants[v].variant.name;
    text += titled(name, pictures.flows[v].svg(),
                   fmt::format("Lines along which heat flows, {}; every two of them carry the same "
                               "between them",
                               name));
  }
  return text;
}

}  // namespace quoin::tools
