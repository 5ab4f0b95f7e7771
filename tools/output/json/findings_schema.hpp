// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <span>
#include <string_view>

#include "tools/disk/embedded_file.hpp"

namespace quoin::tools {

/// tools/findings.schema.json.
[[nodiscard]] std::span<const EmbeddedFile> schema_files();

/// The JSON schema of findings.json.
[[nodiscard]] inline std::string_view findings_schema() { return schema_files().front().text; }

}  // namespace quoin::tools
