// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

namespace quoin::cases {

/// The JSON schema (draft 7) of the case file, for editors, made from the same list of keys that
/// the reader follows.
[[nodiscard]] std::string schema_text();

}  // namespace quoin::cases
