// SPDX-License-Identifier: Apache-2.0
#include "cases/text/faults.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "cases/text/harmless.hpp"
#include "cases/text/utf8.hpp"

namespace quoin::cases {
namespace {

std::string summary(const std::vector<Fault>& faults) {
  std::string text;
  for (const Fault& fault : faults) {
    if (!text.empty()) text += '\n';
    text += text_of(fault);
  }
  return text;
}

/// Blanks as wide as the first `count` characters of a text; tabs stay tabs.
std::string blanks(std::string_view text, std::size_t count) {
  std::string result;
  while (count-- > 0 && !text.empty()) {
    const Character next = first_character(text);
    if (next.code == '\t') {
      result += '\t';
    } else {
      result.append(width(next.code), ' ');
    }
    text.remove_prefix(std::max<std::size_t>(next.bytes, 1));
  }
  result.append(count + 1, ' ');  // a place behind the end of the line
  return result;
}

}  // namespace

InputError::InputError(std::vector<Fault> all)
    : std::runtime_error(summary(all)), faults(std::move(all)) {}

std::string text_of(const Fault& told) {
  Fault fault = told;
  for (std::string* text :
       {&fault.file, &fault.source, &fault.what, &fault.found, &fault.expected, &fault.remedy}) {
    *text = harmless(*text);
    std::replace(text->begin(), text->end(), '\n', ' ');
  }
  std::string text = fault.line == 0 ? fmt::format("{}: {}\n", fault.file, fault.what)
                                     : fmt::format("{}:{}:{}: {}\n", fault.file, fault.line,
                                                   fault.column, fault.what);
  if (fault.line != 0) {
    text += fmt::format("{:>5} | {}\n", fault.line, fault.source);
    text += fmt::format("      | {}^\n", blanks(fault.source, fault.caret - 1));
  }
  const auto add = [&](const char* label, const std::string& value) {
    if (!value.empty()) text += fmt::format("  {:<9} {}\n", label, value);
  };
  add("found", fault.found);
  add("expected", fault.expected);
  add("remedy", fault.remedy);
  return text;
}

}  // namespace quoin::cases
