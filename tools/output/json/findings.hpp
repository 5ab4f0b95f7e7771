// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// The findings of a case as JSON text, for scripts: units in the names of the keys, numbers as
/// short as they can be read back to the same value, null where there is none.
[[nodiscard]] std::string findings_json(const Results& results);

/// The same in one line, for a stream of several cases.
[[nodiscard]] std::string findings_line(const Results& results);

}  // namespace quoin::tools
