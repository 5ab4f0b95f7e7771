// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <span>

#include "tools/disk/embedded_file.hpp"

namespace quoin::tools {

/// The scripts and the style sheet of the report page, from tools/page, in the order in which the
/// page holds them.
[[nodiscard]] std::span<const EmbeddedFile> page_files();

}  // namespace quoin::tools
