// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/canvas/xml.hpp"
#include "tools/html_basis.hpp"
#include "tools/report_words.hpp"

namespace quoin::tools {
namespace {

std::string html_list(std::span<const std::string_view> items) {
  std::string text = "<ul>\n";
  for (const std::string_view item : items) text += "<li>" + escaped(item) + "</li>\n";
  return text + "</ul>\n";
}

}  // namespace

std::string html_assumptions() { return html_list(assumptions()); }

std::string html_cautions() { return html_list(cautions()); }

}  // namespace quoin::tools
