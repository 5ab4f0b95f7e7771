// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <CLI/App.hpp>
#include <filesystem>
#include <memory>
#include <ostream>
#include <string>

#include "cases/text/faults.hpp"
#include "cases/text/yaml_text.hpp"
#include "tools/command/arguments.hpp"
#include "tools/command/case_files.hpp"
#include "tools/command/command.hpp"
#include "tools/sweep/gathered.hpp"
#include "tools/sweep/map.hpp"

namespace quoin::tools {
namespace {

struct GatherOptions {
  std::string folder;
  bool csv = false;
  std::string picture;  ///< axes, separated by commas; empty: none is wanted
  std::string result;
  std::optional<std::size_t> row;  ///< whose case is wanted
};

[[noreturn]] void refuse(const std::string& what, const std::string& found,
                         const std::string& expected) {
  cases::Fault fault;
  fault.file = "quoin gather";
  fault.what = what;
  fault.found = harmless(found, {});
  fault.expected = expected;
  throw cases::InputError({fault});
}

MapWish wish_of(const GatherOptions& options) {
  MapWish wish{{}, options.result};
  for (std::size_t at = 0; at <= options.picture.size();) {
    const std::size_t end = std::min(options.picture.find(',', at), options.picture.size());
    wish.axes.push_back(options.picture.substr(at, end - at));
    at = end + 1;
  }
  if (wish.axes.size() < 2 || wish.axes.size() > 3)
    refuse("--picture takes two axes, or three", options.picture,
           "ends of paths, as in thickness,moisture");
  return wish;
}

void tell(const GatheredCount& count, const Gathered& gathered, const Terminal& terminal) {
  if (terminal.quiet) return;
  for (const std::string& file : gathered.left_aside())
    terminal.notes << fmt::format("{} is of another state of the sweep and left aside\n", file);
  for (const std::string& remark : count.remarks)
    terminal.notes << harmless(remark, terminal.style) << '\n';
  terminal.notes << fmt::format("{} rows: {} solved, {} could not be, {} missing\n", count.rows,
                                count.solved, count.wrong + count.failed, count.missing);
}

/// One thing is printed at a time.
void check(const GatherOptions& options) {
  const bool picture = !options.picture.empty();
  if (int{options.csv} + int{picture} + int{options.row.has_value()} > 1)
    refuse("one thing is printed at a time", "several", "one of --csv, --picture and --case");
  if (!options.result.empty() && !picture)
    refuse("--result says what a picture shows", "no picture", "--picture, too");
}

/// Rows lie in a folder; a file in its place is told by what it is.
void refuse_file(const std::string& name) {
  std::error_code unknown;  // what cannot be asked is not there, which is told where it is read
  if (!std::filesystem::is_regular_file(name, unknown)) return;
  const cases::FileKind kind = cases::kind_of(text_of_file(name));
  cases::Fault fault;
  fault.file = name;
  fault.what = kind == cases::FileKind::unknown
                   ? "this is a file, not a folder of rows"
                   : fmt::format("this is {}, not a folder of rows", cases::words_for(kind));
  fault.expected = "the folder that `quoin vary FILE -o DIR` wrote";
  fault.remedy = cases::use_of(kind);
  throw cases::InputError({fault});
}

Exit gather(const GatherOptions& options, const Terminal& terminal) {
  check(options);
  refuse_file(options.folder);
  Gathered gathered(options.folder);
  if (options.row) {
    const cases::Vary& vary = gathered.vary();
    if (*options.row >= vary.rows())
      refuse("there is no such row", fmt::format("{}", *options.row),
             fmt::format("0 to {}", vary.rows() - 1));
    terminal.out << cases::yaml_text(vary.merged(vary.choice(*options.row)));
    return Exit::done;
  }
  if (!options.picture.empty()) {
    terminal.out << map_of(gathered, wish_of(options)).svg();
    return Exit::done;
  }
  const GatheredCount count =
      write_csv(gathered, [&](const std::string& line) { terminal.out << line; });
  terminal.out.flush();
  tell(count, gathered, terminal);
  return Exit::done;
}

}  // namespace

Command gather_command(CLI::App& program) {
  CLI::App* words = program.add_subcommand(
      "gather", "the rows that `vary` left in a folder as CSV, and what is missing or failed");
  const auto options = std::make_shared<GatherOptions>();
  words->add_option("DIR", options->folder, "folder of the rows")->required()->type_name("");
  words->add_flag("--csv", options->csv, "the rows as CSV, as without any option");
  words
      ->add_option("--picture", options->picture,
                   "a map (SVG) over two or three axes instead: ends of paths, as in "
                   "thickness,moisture")
      ->type_name("X,Y[,PANELS]");
  words
      ->add_option("--result", options->result,
                   "the column that the map shows, the first with numbers if left out")
      ->type_name("COLUMN");
  add_whole_number(*words, {"--case", "the case of one row instead", 0, 1'000'000'000, {}},
                   [options](std::size_t row) { options->row = row; });
  return {words, [options](const Terminal& terminal) { return gather(*options, terminal); }};
}

}  // namespace quoin::tools
