// SPDX-License-Identifier: Apache-2.0
#include "tools/command/errors.hpp"

#include <fmt/format.h>
#include <poll.h>
#include <unistd.h>

#include <algorithm>
#include <new>
#include <ostream>

#include "cases/faults.hpp"
#include "solver/errors.hpp"
#include "tools/disk/disk_error.hpp"
#include "tools/parts.hpp"

namespace quoin::tools {
namespace {

void say(const Terminal& terminal, const std::string& what) {
  terminal.notes << "quoin: " << harmless(what, terminal.style) << '\n';
}

}  // namespace

Exit told(const Terminal& terminal, const std::function<Exit()>& run) {
  try {
    return run();
  } catch (const cases::InputError& error) {
    for (const cases::Fault& fault : error.faults) terminal.notes << cases::text_of(fault) << '\n';
    if (error.faults.size() > 1) {
      terminal.notes << fmt::format("{} faults\n", error.faults.size());
    }
    return Exit::wrong_input;
  } catch (const solver::SolveError& error) {
    say(terminal, fmt::format("the numerics failed: {}", error.what()));
    return Exit::numerics_failed;
  } catch (const PartError& error) {
    say(terminal, error.what());
    return Exit::numerics_failed;
  } catch (const std::bad_alloc&) {
    say(terminal,
        "the memory that this machine gives the program is not enough; ask for less accuracy or "
        "set --node-limit lower");
    return Exit::numerics_failed;
  } catch (const DiskError& error) {
    say(terminal, error.what());
    return Exit::disk_failed;
  } catch (const std::exception& error) {
    say(terminal, fmt::format("stopped by what should not happen: {}", error.what()));
    return Exit::numerics_failed;
  }
}

Exit worse(Exit one, Exit other) { return std::max(one, other); }

Exit flushed(const Terminal& terminal, Exit exit) {
  terminal.out.flush();
  if (terminal.out.good() || reader_has_gone()) return exit;
  say(terminal, "the output cannot be written");
  return Exit::disk_failed;
}

bool reader_has_gone() {
  pollfd out{STDOUT_FILENO, POLLOUT, 0};
  return poll(&out, 1, 0) == 1 && (out.revents & POLLERR) != 0;
}

}  // namespace quoin::tools
