// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>
#include <unistd.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdlib>
#include <cstring>
#include <iostream>
#include <new>

#include "cases/faults.hpp"
#include "cases/schema.hpp"
#include "solver/errors.hpp"
#include "solver/solution.hpp"
#include "tools/commands.hpp"
#include "tools/findings_schema.hpp"
#include "tools/memory.hpp"
#include "tools/output_folder.hpp"
#include "tools/version.hpp"

namespace {

using namespace quoin;
using tools::Exit;

bool speaks_utf8() {
  for (const char* name : {"LC_ALL", "LC_CTYPE", "LANG"}) {
    const char* value = std::getenv(name);
    if (value != nullptr && *value != '\0') {
      return std::strstr(value, "UTF-8") != nullptr || std::strstr(value, "utf8") != nullptr;
    }
  }
  return false;
}

tools::Terminal terminal() {
  const bool person = isatty(STDOUT_FILENO) != 0;
  tools::Terminal result{std::cout, std::cerr, {}, isatty(STDERR_FILENO) != 0, false};
  result.style.colour = person && std::getenv("NO_COLOR") == nullptr;
  result.style.ascii = person && !speaks_utf8();  // files and pipes get UTF-8
  return result;
}

void tell(const cases::InputError& error) {
  for (const cases::Fault& fault : error.faults) std::cerr << cases::text_of(fault) << '\n';
  if (error.faults.size() > 1) std::cerr << fmt::format("{} faults\n", error.faults.size());
}

/// What a command promised to write must have arrived.
Exit flushed(Exit exit) {
  std::cout.flush();
  if (std::cout.good()) return exit;
  std::cerr << "quoin: the output cannot be written\n";
  return Exit::disk_failed;
}

template <class Command>
Exit guarded(Command command) {
  try {
    return flushed(command());
  } catch (const cases::InputError& error) {
    tell(error);
    return Exit::wrong_input;
  } catch (const solver::SolveError& error) {
    std::cerr << "quoin: the numerics failed: " << error.what() << '\n';
    return Exit::numerics_failed;
  } catch (const std::bad_alloc&) {
    std::cerr << "quoin: the memory of this machine is not enough; ask for less accuracy or set "
                 "--node-limit lower\n";
    return Exit::numerics_failed;
  } catch (const tools::DiskError& error) {
    std::cerr << "quoin: " << error.what() << '\n';
    return Exit::disk_failed;
  }
}

/// Why a limit of nodes is more than this machine can hold; empty where it is not.
std::string fits_memory(const std::string& limit) {
  const std::size_t fit = tools::nodes_that_fit();
  const double nodes = std::stod(limit);
  if (nodes <= static_cast<double>(fit)) return "";
  return fmt::format("{} nodes take about {:.1f} GB; this machine holds {} nodes, choose fewer",
                     limit, nodes * solver::bytes_per_node / 1e9, fit);
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app{"Quoin: heat, damp and mould at the cold places of old walls"};
  app.set_version_flag("--version", std::string("quoin ") + QUOIN_VERSION);
  app.require_subcommand(1);
  app.fallthrough();
  tools::Terminal io = terminal();
  app.add_flag("--quiet", io.quiet, "neither notes nor the text report");
  app.add_flag("--ascii", io.style.ascii, "nothing beyond ASCII on the terminal");

  tools::SolveOptions solving;
  solving.effort.node_limit = std::min(solving.effort.node_limit, tools::nodes_that_fit());
  auto* solve = app.add_subcommand("solve", "solve cases with all their variants and judge them");
  solve->add_option("CASE", solving.cases, "case files; - is standard input")->required();
  solve->add_option("-o,--output", solving.folder, "folder for findings, pictures and fields");
  solve->add_flag("--png", solving.png, "pictures as PNG files too");
  solve->add_flag("--all", solving.all, "print the whole report, not its first page only");
  solve->add_flag("--json", solving.json, "print findings.json instead of the report");
  solve->add_flag("--fail-on-risk", solving.fail_on_risk,
                  "exit 1 where an outcome is bad: wet, mould, or a criterion fails");
  solve->add_option("--node-limit", solving.effort.node_limit, "no grid larger than this")
      ->check(CLI::Range(std::size_t{1000}, std::size_t{1'000'000'000}))
      ->check(fits_memory);
  solve->add_option("--threads", solving.effort.linear.threads, "for the linear solver")
      ->check(CLI::Range(1, 256));
  solve->add_option("--linear-solver", solving.effort.linear.method, "multigrid or direct")
      ->transform(CLI::CheckedTransformer(std::map<std::string, solver::LinearMethod>{
          {"multigrid", solver::LinearMethod::multigrid},
          {"direct", solver::LinearMethod::direct}}));

  tools::CheckOptions checking;
  auto* check = app.add_subcommand("check", "read, check and draw cases without solving them");
  check->add_option("CASE", checking.cases, "case files; - is standard input")->required();
  check->add_flag("--sheet", checking.sheet, "print each variant as a case file in sheet form");

  std::string recipe;
  auto* start = app.add_subcommand("new", "print a commented case file to start from");
  start->add_option("RECIPE", recipe, "wall, corner, reveal, sheet ...")->required();

  std::optional<std::string> material;
  auto* materials = app.add_subcommand("materials", "the catalogue: values, laws and sources");
  materials->add_option("NAME", material, "one material in full");

  auto* verify = app.add_subcommand("verify", "run the published cases and compare");
  auto* schema = app.add_subcommand("schema", "JSON schema of the case file, for editors");
  bool of_findings = false;
  schema->add_flag("--findings", of_findings, "that of findings.json, for scripts");

  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return app.exit(error) == 0 ? 0 : static_cast<int>(Exit::wrong_input);
  }
  return static_cast<int>(guarded([&] {
    if (*solve) return tools::solve(solving, io);
    if (*check) return tools::check(checking, io);
    if (*start) return tools::start(recipe, io);
    if (*materials) return tools::materials(material, io);
    if (*verify) return tools::verification(io);
    if (*schema && of_findings) {
      std::cout << tools::findings_schema();
    } else if (*schema) {
      std::cout << cases::schema_text() << '\n';
    }
    return Exit::done;
  }));
}
