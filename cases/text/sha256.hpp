// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

namespace quoin::cases {

/// The SHA-256 digest of a text, lower-case hexadecimal. Source: FIPS 180-4.
[[nodiscard]] std::string sha256(std::string_view text);

}  // namespace quoin::cases
