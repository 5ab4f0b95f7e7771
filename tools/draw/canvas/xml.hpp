// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

namespace quoin::tools {

/// Text without what XML cannot hold and what would not be what it seems (cases/text/harmless.hpp):
/// that becomes U+FFFD.
[[nodiscard]] std::string printable(std::string_view text);

/// Text that is safe between tags and in attributes; what is not printable becomes U+FFFD.
[[nodiscard]] std::string escaped(std::string_view text);

}  // namespace quoin::tools
