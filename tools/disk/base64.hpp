// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace quoin::tools {

/// Bytes as text. Source: RFC 4648.
[[nodiscard]] std::string base64(const std::vector<std::uint8_t>& bytes);

}  // namespace quoin::tools
