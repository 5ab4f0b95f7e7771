// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <functional>

#include "tools/command/command.hpp"

namespace quoin::tools {

/// Runs something and tells in words what it throws: InputError, SolveError, PartError, no memory,
/// DiskError, or anything else. The exit that belongs to it.
[[nodiscard]] Exit told(const Terminal& terminal, const std::function<Exit()>& run);

/// The worse of two exits.
[[nodiscard]] Exit worse(Exit one, Exit other);

/// What was promised to the output must have arrived. A reader who has gone (`| head -1`) does not
/// want the rest: that is no fault.
[[nodiscard]] Exit flushed(const Terminal& terminal, Exit exit);

/// Whether the standard output is a pipe that nobody reads any more.
[[nodiscard]] bool reader_has_gone();

}  // namespace quoin::tools
