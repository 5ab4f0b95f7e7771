// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <functional>

namespace quoin::python {

/// Does some work in a thread of its own, without Python's lock, so that other Python threads run
/// and Ctrl-C is heeded at once: then the work is told to leave off and left to itself. It must
/// hold all that it needs. What it throws is thrown here. Call with Python's lock.
void run_interruptible(std::function<void(const std::function<bool()>& left)> work);

/// Waits for work that was left to itself; before the interpreter ends.
void wait_for_left_work();

}  // namespace quoin::python
