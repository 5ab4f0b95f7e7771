// SPDX-License-Identifier: Apache-2.0
#include <unistd.h>
#ifdef __GLIBC__
#include <malloc.h>
#endif

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <algorithm>
#include <charconv>
#include <csignal>
#include <cstdlib>
#include <cstring>
#include <iostream>

#include "tools/command/arguments.hpp"
#include "tools/command/command.hpp"
#include "tools/command/errors.hpp"

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

/// The width that the surroundings ask for; narrower than 60 columns no table can be read.
std::size_t columns() {
  constexpr std::size_t usual = 80, least = 60, most = 400;
  const char* wanted = std::getenv("COLUMNS");
  if (wanted == nullptr) return usual;
  std::size_t count = 0;
  const auto [end, error] = std::from_chars(wanted, wanted + std::strlen(wanted), count);
  return error == std::errc{} && *end == '\0' ? std::clamp(count, least, most) : usual;
}

tools::Terminal terminal() {
  const bool person = isatty(STDOUT_FILENO) != 0;
  tools::Terminal result{std::cout, std::cerr, {}, isatty(STDERR_FILENO) != 0, false};
  result.style.width = columns();
  result.style.colour = person && std::getenv("NO_COLOR") == nullptr;
  result.style.ascii = person && !speaks_utf8();  // files and pipes get UTF-8
  return result;
}

/// Grids are solved one after the other in much the same memory: given back to the system between
/// them, it would have to be asked for, page by page, each time.
void keep_memory() {
#ifdef __GLIBC__
  constexpr int most_kept = 256 << 20, largest_piece = 32 << 20;  // bytes
  mallopt(M_TRIM_THRESHOLD, most_kept);
  mallopt(M_MMAP_THRESHOLD, largest_piece);
#endif
}

Exit run(int argc, char** argv, tools::Terminal& io) {
  CLI::App program{"Quoin: heat, damp and mould at the cold places of old walls"};
  tools::describe(program);
  program.add_flag("--quiet", io.quiet, "neither notes nor the text report");
  program.add_flag("--ascii", io.style.ascii, "nothing beyond ASCII on the terminal");
  const tools::Command commands[] = {
      tools::solve_command(program),  tools::check_command(program),
      tools::new_command(program),    tools::materials_command(program),
      tools::vary_command(program),   tools::gather_command(program),
      tools::verify_command(program), tools::schema_command(program),
      tools::trace_command(program),  tools::pages_command(program)};
  std::string answer;
  if (!tools::read_arguments(program, argc, argv, answer)) {
    io.out << answer;
    return Exit::done;
  }
  for (const tools::Command& command : commands) {
    if (command.words->parsed()) return command.run(io);
  }
  return Exit::done;
}

}  // namespace

int main(int argc, char** argv) {
  keep_memory();
  std::signal(SIGPIPE, SIG_IGN);  // a reader who goes does not stop the files of later cases
  tools::Terminal io = terminal();
  const Exit exit = tools::told(io, [&] { return run(argc, argv, io); });
  return static_cast<int>(tools::flushed(io, exit));
}
