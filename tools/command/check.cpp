// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <CLI/App.hpp>
#include <map>
#include <memory>
#include <ostream>
#include <string>

#include "cases/write_sheet.hpp"
#include "tools/command/arguments.hpp"
#include "tools/command/case_files.hpp"
#include "tools/command/command.hpp"
#include "tools/output/text/section.hpp"

namespace quoin::tools {
namespace {

struct CheckOptions {
  std::vector<std::string> cases;
  bool sheet = false;  ///< print each variant as a case file in sheet form instead
};

/// Prints each variant as a document of its own; `first`: nothing was printed before.
void print_sheets(const cases::Case& source, bool& first, const Terminal& terminal) {
  for (const cases::Variant& variant : source.variants) {
    if (!first) terminal.out << "---\n";
    first = false;
    terminal.out << cases::sheet_text(variant);
  }
}

/// Draws each variant, one that is drawn like an earlier one by its name only.
void show(const std::string& file, const cases::Case& source, const Terminal& terminal) {
  std::map<std::string, std::string> drawn;  // sketch: name of the first variant with it
  for (const cases::Variant& variant : source.variants) {
    const std::string sketch = section_sketch(variant, terminal.style);
    const auto [first, is_new] = drawn.emplace(sketch, variant.name);
    terminal.out << paragraph(fmt::format("{}: {}, {}", file, source.title, variant.name), 0,
                              terminal.style)
                 << '\n'
                 << (is_new ? sketch
                            : paragraph(fmt::format("drawn like '{}'", first->second), 2,
                                        terminal.style))
                 << '\n'
                 << section_legend(variant, terminal.style) << '\n';
    for (const cases::Remark& remark : variant.remarks) {
      terminal.notes << paragraph(
          remark.line > 0 ? fmt::format("line {}: {}", remark.line, remark.text) : remark.text, 2,
          terminal.style);
    }
  }
}

Exit check(const CheckOptions& options, const Terminal& terminal) {
  EachCase each(options.cases, terminal);
  bool first = true;
  const auto tell = [&](const std::string& file, const cases::Case& source) {
    if (options.sheet) {
      print_sheets(source, first, terminal);
    } else {
      show(file, source, terminal);
    }
  };
  for (std::size_t c = 0; c < options.cases.size(); ++c) {
    each.run(c, [&] {
      const CaseOrHouse read = case_or_house_in(options.cases[c]);
      if (!read.house) tell(options.cases[c], read.source);
      if (read.house) {
        for (const cases::HousePart& part : read.house->parts) tell(part.file, part.source);
      }
      return Exit::done;
    });
  }
  return each.end();
}

}  // namespace

Command check_command(CLI::App& program) {
  CLI::App* words =
      program.add_subcommand("check", "read, check and draw cases without solving them");
  const auto options = std::make_shared<CheckOptions>();
  add_cases(*words, options->cases);
  words->add_flag("--sheet", options->sheet,
                  "print each variant as a case file in sheet form, --- between them");
  return {words, [options](const Terminal& terminal) { return check(*options, terminal); }};
}

}  // namespace quoin::tools
