// SPDX-License-Identifier: Apache-2.0
#include "tools/commands.hpp"
#include "tools/answer/judge/outcome.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <set>

#include "cases/faults.hpp"
#include "cases/read.hpp"
#include "cases/recipe_words.hpp"
#include "cases/starting_case.hpp"
#include "cases/words.hpp"
#include "cases/write_sheet.hpp"
#include "tools/json_findings.hpp"
#include "tools/output/text/text_report.hpp"
#include "tools/output_folder.hpp"
#include "tools/outputs.hpp"
#include "tools/run.hpp"
#include "tools/text_section.hpp"

namespace quoin::tools {
namespace {

struct Read {
  std::string file;
  cases::Case source;
};

cases::Fault fault_of_file(const std::string& file, std::string what, std::string remedy) {
  cases::Fault fault;
  fault.file = file;
  fault.what = std::move(what);
  fault.remedy = std::move(remedy);
  return fault;
}

std::string text_of_file(const std::string& file) {
  if (file == "-") return {std::istreambuf_iterator<char>(std::cin), {}};
  if (std::filesystem::is_directory(file)) {
    throw cases::InputError(
        {fault_of_file(file, "this is a folder, not a case file", "name the .yaml file in it")});
  }
  std::ifstream stream(file, std::ios::binary);
  std::string text{std::istreambuf_iterator<char>(stream), {}};
  if (!stream.is_open() || stream.bad()) {
    throw cases::InputError({fault_of_file(file, "this file cannot be read",
                                           "check its name, and that you may read it")});
  }
  return text;
}

/// The tables a case file may name: from its folder, that of standard input being the current one.
cases::Files tables_beside(const std::string& file) {
  const std::filesystem::path folder = std::filesystem::path(file).parent_path();
  return [folder](const std::string& name) -> std::optional<std::string> {
    if (!std::filesystem::is_regular_file(folder / name)) return std::nullopt;
    std::ifstream stream(folder / name, std::ios::binary);
    std::string text{std::istreambuf_iterator<char>(stream), {}};
    if (!stream.is_open() || stream.bad()) return std::nullopt;
    return text;
  };
}

/// All cases, or all faults of all of them.
std::vector<Read> read_all(const std::vector<std::string>& files) {
  std::vector<Read> all;
  std::vector<cases::Fault> faults;
  for (const std::string& file : files) {
    try {
      all.push_back({file, cases::case_of(text_of_file(file), file, tables_beside(file))});
    } catch (const cases::InputError& error) {
      faults.insert(faults.end(), error.faults.begin(), error.faults.end());
    }
  }
  if (!faults.empty()) throw cases::InputError(std::move(faults));
  return all;
}

/// One folder for one case; for several a folder each within it, named after the case file.
std::vector<std::filesystem::path> folders(const std::filesystem::path& folder,
                                           const std::vector<Read>& all) {
  if (all.size() == 1) return {folder};
  std::vector<std::filesystem::path> each;
  std::set<std::string> taken;
  for (const Read& read : all) {
    const std::string stem =
        read.file == "-" ? "case" : std::filesystem::path(read.file).stem().string();
    std::string name = stem;
    for (int n = 2; !taken.insert(name).second; ++n) name = fmt::format("{}-{}", stem, n);
    each.push_back(folder / name);
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

}  // namespace

Exit solve(const SolveOptions& options, const Terminal& terminal) {
  const std::vector<Read> all = read_all(options.cases);
  const auto places =
      options.folder ? folders(*options.folder, all) : std::vector<std::filesystem::path>();
  bool at_risk = false;
  for (std::size_t c = 0; c < all.size(); ++c) {
    const Results results =
        results_of(all[c].source, all[c].file, options.effort, progress_on(terminal));
    if (terminal.progress && !terminal.quiet) terminal.notes << "\r\x1b[K" << std::flush;
    at_risk = at_risk || any_bad(results);
    if (options.folder) {
      std::vector<File> files = files_of(results);
      if (options.png) {
        for (File& png : pngs_of(files)) files.push_back(std::move(png));
      }
      write_folder(places[c], files);
    }
    if (options.json) {
      terminal.out << findings_json(results);
    } else if (!terminal.quiet) {
      terminal.out << text_report(results, terminal.style, options.all ? Told::all : Told::first);
      if (!options.all) terminal.out << "\nEverything else: quoin solve --all\n";
      if (options.folder) terminal.out << fmt::format("\nFiles: {}\n", places[c].string());
    }
  }
  return options.fail_on_risk && at_risk ? Exit::does_not_hold : Exit::done;
}

Exit check(const CheckOptions& options, const Terminal& terminal) {
  for (const Read& read : read_all(options.cases)) {
    for (const cases::Variant& variant : read.source.variants) {
      if (options.sheet) {
        terminal.out << cases::sheet_text(variant);
        continue;
      }
      terminal.out << harmless(
                          fmt::format("{}: {}, {}", read.file, read.source.title, variant.name),
                          terminal.style)
                   << "\n\n"
                   << section_drawing(variant, terminal.style) << "\n";
      for (const cases::Remark& remark : variant.remarks) {
        terminal.notes << paragraph(
            remark.line > 0 ? fmt::format("line {}: {}", remark.line, remark.text) : remark.text, 2,
            terminal.style);
      }
    }
  }
  return Exit::done;
}

Exit start(const std::string& recipe, const Terminal& terminal) {
  const auto text = cases::starting_case(recipe);
  if (!text) {
    std::vector<std::string> known;
    for (const cases::StartingPoint& point : cases::starting_points())
      known.emplace_back(point.name);
    cases::Fault fault = fault_of_file("quoin new", "no recipe has this name", "");
    fault.found = recipe;
    fault.expected = cases::joined(known, ", ");
    if (const std::string_view drawn_by = cases::recipes_for(recipe); !drawn_by.empty()) {
      fault.remedy = fmt::format("a {} is drawn by: {}", recipe, drawn_by);
    } else if (const std::string like = cases::nearest(recipe, known); !like.empty()) {
      fault.remedy = "did you mean " + like + "?";
    }
    throw cases::InputError({fault});
  }
  terminal.out << *text;
  return Exit::done;
}

}  // namespace quoin::tools
