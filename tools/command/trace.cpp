// SPDX-License-Identifier: Apache-2.0
#include "tools/trace/trace.hpp"

#include <fmt/format.h>

#include <CLI/App.hpp>
#include <charconv>
#include <functional>
#include <memory>
#include <ostream>

#include "cases/grammar/quantity.hpp"
#include "cases/text/faults.hpp"
#include "tools/command/arguments.hpp"
#include "tools/command/case_files.hpp"
#include "tools/command/command.hpp"

namespace quoin::tools {
namespace {

struct TraceOptions {
  std::string drawing;
  std::string layers;
  TraceWish wish;
};

/// A length such as "1mm" or "0.5", mm.
double millimetres(const std::string& option, const std::string& text) {
  const auto length = cases::quantity_of(text, cases::Measure::length, {0.0, 0.1});
  if (const auto* metres = std::get_if<double>(&length)) return *metres * 1e3;
  cases::Fault fault;
  fault.file = "quoin trace";
  fault.what = option + " has no such value";
  fault.found = harmless(text, {});
  fault.expected = "a length up to 100 mm, as in 1mm";
  throw cases::InputError({fault});
}

Exit trace(const TraceOptions& options, const Terminal& terminal) {
  if (options.drawing != "-")
    refuse_other_kind(text_of_file(options.drawing), options.drawing, cases::FileKind::drawing);
  const std::string layers = text_of_file(options.layers);
  refuse_other_kind(layers, options.layers, cases::FileKind::section);
  const Traced result =
      traced(drawing_in(options.drawing), options.drawing, layers, options.layers, options.wish);
  if (!terminal.quiet) {
    for (const std::string& note : result.notes)
      terminal.notes << harmless(note, terminal.style) << '\n';
  }
  terminal.out << result.text;
  return Exit::done;
}

}  // namespace

Command trace_command(CLI::App& program) {
  CLI::App* words =
      program.add_subcommand("trace", "print a case in sheet form that a DXF drawing shows");
  const auto options = std::make_shared<TraceOptions>();
  words->add_option("DRAWING", options->drawing, "DXF file in text form")
      ->required()
      ->type_name("");
  words
      ->add_option("--layers", options->layers,
                   "a case file without a section that says under `layers` what each layer is")
      ->required()
      ->type_name("FILE");
  constexpr double units[] = {1.0, 10.0, 1000.0, 25.4};
  add_choice(*words, "--unit", "of the drawing, where it does not say or says wrong",
             {"mm", "cm", "m", "in"},
             [options, units](std::size_t choice) { options->wish.unit = units[choice]; });
  const auto add_length = [&](const std::string& name, double* value, const std::string& about) {
    const std::function<void(const std::string&)> read =
        [options, name, value](const std::string& text) { *value = millimetres(name, text); };
    words->add_option_function(name, read, about)->type_name("LENGTH");
  };
  add_length("--close", &options->wish.close,
             "gaps and overlaps up to this are closed and told; 1mm if left out");
  add_length("--chord", &options->wish.chord,
             "how far a chord may be from its curve; 0.5mm if left out");
  return {words, [options](const Terminal& terminal) { return trace(*options, terminal); }};
}

}  // namespace quoin::tools
