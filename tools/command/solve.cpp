// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <CLI/App.hpp>
#include <algorithm>
#include <filesystem>
#include <iterator>
#include <memory>
#include <optional>
#include <ostream>

#include "solver/solution.hpp"
#include "tools/answer/house_run.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/run.hpp"
#include "tools/command/arguments.hpp"
#include "tools/command/case_files.hpp"
#include "tools/command/command.hpp"
#include "tools/command/errors.hpp"
#include "tools/disk/folder_names.hpp"
#include "tools/disk/memory.hpp"
#include "tools/disk/output_folder.hpp"
#include "tools/output/json/findings.hpp"
#include "tools/output/outputs.hpp"
#include "tools/output/overview.hpp"
#include "tools/output/text/report.hpp"
#include "tools/sweep/beside.hpp"

namespace quoin::tools {
namespace {

namespace fs = std::filesystem;

struct SolveOptions {
  std::vector<std::string> cases;     ///< files; "-" is standard input
  std::optional<std::string> folder;  ///< where files go; absent: none are written
  bool replace = false;               ///< files there that no run wrote
  bool all = false;                   ///< the whole report rather than its first page
  bool json = false;                  ///< findings to the output instead of the text report
  bool png = false;                   ///< pictures as PNG files too
  bool fail_on_risk = false;
  solver::Effort effort;

  [[nodiscard]] Foreign foreign() const { return replace ? Foreign::replaced : Foreign::refused; }
  [[nodiscard]] Png pngs() const { return png ? Png::too : Png::no; }
};

/// A case that was read, and its place in the order of the command line.
struct Read : CaseOrHouse {
  std::size_t number = 0;
};

/// One folder for one case; for several a folder each within it, named after the case file.
std::vector<fs::path> folders(const SolveOptions& options) {
  if (!options.folder) return {};
  if (options.cases.size() == 1) return {*options.folder};
  std::vector<fs::path> each;
  for (const std::string& name : folder_names(options.cases)) {
    each.push_back(options.folder->empty() ? fs::path() : fs::path(*options.folder) / name);
  }
  return each;
}

Progress progress_on(const Terminal& terminal) {
  if (!terminal.progress || terminal.quiet) return {};
  return [&terminal](const std::string& variant, std::size_t number, std::size_t all) {
    terminal.notes << fmt::format("\r\x1b[Ksolving {} of {}: {}", number + 1, all,
                                  harmless(variant, terminal.style))
                   << std::flush;
  };
}

void end_progress(const Terminal& terminal) {
  if (terminal.progress && !terminal.quiet) terminal.notes << "\r\x1b[K" << std::flush;
}

void see_that_writable(const cases::Case& source, const fs::path& folder,
                       const SolveOptions& options) {
  std::vector<std::string> variants;
  for (const cases::Variant& variant : source.variants) variants.push_back(variant.name);
  check_folder(folder, possible_names(variants, options.pngs()), options.foreign());
}

/// The folder of a section of a house within that of the house.
fs::path folder_of(const cases::House& house, std::size_t part, const fs::path& folder) {
  std::vector<std::string> files;
  for (const cases::HousePart& one : house.parts) files.push_back(one.file);
  return folder / folder_names(files)[part];
}

/// Reads a case or a house and sees that its files can be written, before anything is solved.
Read ready(std::size_t number, const fs::path* folder, const SolveOptions& options) {
  const std::string& file = options.cases[number];
  const Read read{case_or_house_in(file), number};
  if (folder == nullptr) return read;
  if (!read.house) see_that_writable(read.source, *folder, options);
  for (std::size_t p = 0; read.house && p < read.house->parts.size(); ++p)
    see_that_writable(read.house->parts[p].source, folder_of(*read.house, p, *folder), options);
  return read;
}

/// Results that were told, for the overview of several.
using Overview = std::vector<OverviewRow>;

/// Where a report stands as seen from the folder of all.
std::string beside(const fs::path& folder, const SolveOptions& options) {
  return folder.lexically_relative(*options.folder).generic_string();
}

/// Writes and prints the results of one section. `alone`: nothing else is printed.
Exit tell(const Results& results, const fs::path* folder, bool alone, const SolveOptions& options,
          const Terminal& terminal, Overview& overview) {
  if (folder != nullptr) {
    write_folder(*folder, files_of(results, options.pngs()), options.foreign());
    if (!alone) {
      Overview rows = overview_rows(results, beside(*folder, options));
      std::move(rows.begin(), rows.end(), std::back_inserter(overview));
    }
  }
  if (options.json) {
    terminal.out << (alone ? findings_json(results) : findings_line(results));
  } else if (!terminal.quiet) {
    terminal.out << text_report(results, terminal.style, options.all ? Told::all : Told::first);
    if (const std::string like = beside_catalogue(results.variants.front()); !like.empty())
      terminal.out << '\n' << paragraph(like, 0, terminal.style);
    if (!options.all) terminal.out << "\nEverything else: quoin solve --all\n";
    if (folder != nullptr) {
      terminal.out << "\nFiles: " << harmless(folder->string(), terminal.style) << '\n';
    }
  }
  terminal.out.flush();
  return options.fail_on_risk && any_bad(results) ? Exit::does_not_hold : Exit::done;
}

Exit solve_one(const Read& read, const fs::path* folder, const SolveOptions& options,
               const Terminal& terminal, Overview& overview) {
  if (read.house) {
    const std::vector<Results> each =
        results_of(*read.house, options.effort, progress_on(terminal));
    end_progress(terminal);
    Exit exit = Exit::done;
    for (std::size_t p = 0; p < each.size(); ++p) {
      const fs::path place = folder != nullptr ? folder_of(*read.house, p, *folder) : fs::path();
      exit = std::max(exit, tell(each[p], folder != nullptr ? &place : nullptr, false, options,
                                 terminal, overview));
    }
    return exit;
  }
  const Results results =
      results_of(read.source, options.cases[read.number], options.effort, progress_on(terminal));
  end_progress(terminal);
  return tell(results, folder, options.cases.size() == 1, options, terminal, overview);
}

/// One table of all that was written, where that is more than one report.
Exit tell_overview(const Overview& overview, const SolveOptions& options) {
  if (!overview.empty()) write_folder(*options.folder, overview_files(overview), options.foreign());
  return Exit::done;
}

/// Reads all, then solves what could be read, however many of the others fail.
Exit solve(const SolveOptions& options, const Terminal& terminal) {
  const std::vector<fs::path> places = folders(options);
  const auto place = [&](std::size_t c) { return places.empty() ? nullptr : &places[c]; };
  EachCase each(options.cases, terminal);
  std::vector<Read> all;
  if (places.size() > 1) {
    if (const Exit exit = told(terminal,
                               [&] {
                                 check_folder(*options.folder, overview_names(), options.foreign());
                                 return Exit::done;
                               });
        exit != Exit::done)
      return exit;
  }
  for (std::size_t c = 0; c < options.cases.size(); ++c) {
    each.run(c, [&] {
      all.push_back(ready(c, place(c), options));
      return Exit::done;
    });
  }
  Overview overview;
  for (const Read& read : all) {
    each.run(read.number,
             [&] { return solve_one(read, place(read.number), options, terminal, overview); });
  }
  return worse(each.end(), told(terminal, [&] { return tell_overview(overview, options); }));
}

/// Why a limit of nodes is more than this machine can hold; empty where it is not.
std::string fits_memory(std::size_t nodes) {
  const std::size_t fit = nodes_that_fit();
  if (nodes <= fit) return "";
  return fmt::format("{} nodes take about {:.1f} GB; this machine holds {} nodes, choose fewer",
                     nodes, static_cast<double>(nodes) * solver::bytes_per_node / 1e9, fit);
}

}  // namespace

Command solve_command(CLI::App& program) {
  CLI::App* words =
      program.add_subcommand("solve", "solve cases with all their variants and judge them");
  const auto options = std::make_shared<SolveOptions>();
  options->effort.node_limit = std::min(options->effort.node_limit, nodes_that_fit());
  add_cases(*words, options->cases);
  // By a function: an empty name is a name, not none.
  const std::function<void(const std::string&)> to_folder = [options](const std::string& name) {
    options->folder = name;
  };
  words->add_option_function("-o,--output", to_folder, "folder for findings, pictures and fields")
      ->type_name("DIR");
  words->add_flag("--replace", options->replace, "replace files there that no run wrote");
  words->add_flag("--png", options->png, "pictures as PNG files too");
  words->add_flag("--all", options->all, "print the whole report, not its first page only");
  words->add_flag("--json", options->json,
                  "print findings.json instead of the report, of several cases one a line");
  words->add_flag("--fail-on-risk", options->fail_on_risk,
                  "exit 1 where an outcome is bad: wet, mould, or a criterion fails");
  add_whole_number(*words,
                   {"--node-limit", "no grid larger than this", 1000, 1'000'000'000, fits_memory},
                   [options](std::size_t nodes) {
                     options->effort.node_limit = options->effort.patience = nodes;
                   });
  add_whole_number(*words, {"--threads", "for the linear solver", 1, 256, {}},
                   [options](std::size_t threads) {
                     options->effort.linear.threads = static_cast<int>(threads);
                   });
  add_choice(*words, "--linear-solver", "how the equations are solved", {"multigrid", "direct"},
             [options](std::size_t choice) {
               options->effort.linear.method =
                   choice == 0 ? solver::LinearMethod::multigrid : solver::LinearMethod::direct;
             });
  return {words, [options](const Terminal& terminal) { return solve(*options, terminal); }};
}

}  // namespace quoin::tools
