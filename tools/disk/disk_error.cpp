// SPDX-License-Identifier: Apache-2.0
#include "tools/disk/disk_error.hpp"

#include <fmt/format.h>

#include <system_error>
#include <utility>

namespace quoin::tools {

DiskError::DiskError(std::filesystem::path where, int error_number)
    : DiskError(std::move(where), std::system_category().message(error_number)) {}

DiskError::DiskError(std::filesystem::path where, const std::string& reason)
    : std::runtime_error(fmt::format("{}: {}", where.string(), reason)), path(std::move(where)) {}

}  // namespace quoin::tools
