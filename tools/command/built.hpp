// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

namespace quoin::tools {

/// What the program was built from: "commit 1a2b3c4d", with what was changed since said so; "no
/// commit known" where it was built outside of its repository.
[[nodiscard]] std::string built_from();

/// The compiler with its version: "g++ 12.2.0".
[[nodiscard]] std::string built_by();

}  // namespace quoin::tools
