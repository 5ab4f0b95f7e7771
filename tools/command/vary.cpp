// SPDX-License-Identifier: Apache-2.0
#include "cases/vary.hpp"

#include <fmt/format.h>

#include <CLI/App.hpp>
#include <algorithm>
#include <charconv>
#include <chrono>
#include <filesystem>
#include <memory>
#include <ostream>
#include <thread>

#include "cases/text/faults.hpp"
#include "tools/command/arguments.hpp"
#include "tools/command/case_files.hpp"
#include "tools/command/command.hpp"
#include "tools/disk/held_signals.hpp"
#include "tools/disk/memory.hpp"
#include "tools/disk/output_folder.hpp"
#include "tools/sweep/sweep.hpp"

namespace quoin::tools {
namespace {

struct VaryOptions {
  std::string file;
  std::string folder;
  SweepPart part;
  std::size_t workers = std::max(1u, std::thread::hardware_concurrency());
};

/// "3/8": the third of eight.
SweepPart part_of(const std::string& text) {
  SweepPart part{0, 0};
  const char* end = text.data() + text.size();
  const auto [slash, failed] = std::from_chars(text.data(), end, part.number);
  if (failed == std::errc() && slash != end && *slash == '/') {
    const auto [stop, wrong] = std::from_chars(slash + 1, end, part.of);
    if (wrong == std::errc() && stop == end && part.number >= 1 && part.number <= part.of)
      return part;
  }
  cases::Fault fault;
  fault.file = "quoin vary";
  fault.what = "--part has no such value";
  fault.found = harmless(text, {});
  fault.expected = "K/N: two whole numbers, K from 1 to N";
  throw cases::InputError({fault});
}

std::string duration(double seconds) {
  const auto whole = static_cast<long>(seconds + 0.5);
  if (whole < 60) return fmt::format("{} s", whole);
  if (whole < 3600) return fmt::format("{} min {} s", whole / 60, whole % 60);
  return fmt::format("{} h {} min", whole / 3600, whole / 60 % 60);
}

/// The line that says how far a run is.
std::string line_of(const SweepProgress& progress) {
  const std::uint64_t solved = progress.done - progress.were_there;
  std::string line = fmt::format("{} of {} rows", progress.done, progress.rows);
  if (solved > 0 && progress.seconds > 0.0 && progress.done < progress.rows) {
    const double pace = static_cast<double>(solved) / progress.seconds;
    line += fmt::format(", {} left",
                        duration(static_cast<double>(progress.rows - progress.done) / pace));
  }
  if (progress.wrong + progress.failed > 0)
    line += fmt::format(", {} could not be solved", progress.wrong + progress.failed);
  return line;
}

/// Says now and then how far a run is: often to a person, seldom to a file.
class Told {
 public:
  explicit Told(const Terminal& terminal) : terminal_(terminal) {}

  void operator()(const SweepProgress& progress) {
    if (progress.waiting && !terminal_.quiet)
      terminal_.notes << "another run writes the same rows; this one goes on when that has ended"
                      << std::endl;
    const double pause = terminal_.progress ? 0.5 : 10.0;  // s
    if (terminal_.quiet || progress.seconds < last_ + pause) return;
    last_ = progress.seconds;
    if (terminal_.progress) {
      terminal_.notes << "\r\x1b[K" << line_of(progress) << std::flush;
    } else {
      terminal_.notes << line_of(progress) << std::endl;
    }
  }

  void end() const {
    if (terminal_.progress && !terminal_.quiet) terminal_.notes << "\r\x1b[K" << std::flush;
  }

 private:
  const Terminal& terminal_;
  double last_ = 0.0;
};

Exit vary(const VaryOptions& options, const Terminal& terminal) {
  const std::string text = text_of_file(options.file);
  const cases::Files beside = files_beside(options.file);
  const cases::Vary sweep = cases::vary_of(text, options.file, beside, sweep_column_names());
  const std::filesystem::path folder = std::filesystem::path(options.file).parent_path();
  SweepRun run{sweep,
               text,
               files_beside((folder / sweep.file).string()),
               options.folder,
               options.part,
               options.workers,
               {}};
  run.effort.node_limit = std::min(run.effort.node_limit, nodes_that_fit());
  check_place(run.folder);
  Told told(terminal);
  SweepProgress end;
  {
    // Asked to end, it first keeps what it has; then the signal takes its course.
    const HeldSignals held;
    end = run_sweep(run, std::ref(told), [] { return HeldSignals::noted(); });
    told.end();
    if (!terminal.quiet) {
      terminal.notes << fmt::format("{} of {} rows are there, {} of them solved now in {}",
                                    end.done, end.rows, end.solved_now, duration(end.seconds));
      if (end.wrong + end.failed > 0)
        terminal.notes << fmt::format("; {} could not be solved, `quoin gather {}` tells why",
                                      end.wrong + end.failed, options.folder);
      terminal.notes << (end.stopped ? "; the same command goes on from here\n" : "\n")
                     << std::flush;
    }
  }
  return end.failed > 0 ? Exit::numerics_failed : end.wrong > 0 ? Exit::wrong_input : Exit::done;
}

}  // namespace

Command vary_command(CLI::App& program) {
  CLI::App* words = program.add_subcommand(
      "vary",
      "solve a case with every combination of some of its values, and go on where it ended");
  const auto options = std::make_shared<VaryOptions>();
  words->add_option("FILE", options->file, "what is varied: case, paths and values, wanted columns")
      ->required()
      ->type_name("");
  words->add_option("-o,--output", options->folder, "folder for the rows")
      ->required()
      ->type_name("DIR");
  const std::function<void(const std::string&)> part = [options](const std::string& text) {
    options->part = part_of(text);
  };
  words->add_option_function("--part", part, "part K of N alone, for several machines")
      ->type_name("K/N");
  add_whole_number(*words,
                   {"--workers", "rows solved at a time; all cores if left out", 1, 256, {}},
                   [options](std::size_t workers) { options->workers = workers; });
  return {words, [options](const Terminal& terminal) { return vary(*options, terminal); }};
}

}  // namespace quoin::tools
