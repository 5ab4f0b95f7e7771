// SPDX-License-Identifier: Apache-2.0
#include "cases/text/files.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

namespace quoin::cases {
namespace {

/// Whether a name stays within the folder it is named from.
bool stays_within(const std::filesystem::path& name) {
  return !name.has_root_path() &&
         std::none_of(name.begin(), name.end(), [](const auto& part) { return part == ".."; });
}

}  // namespace

std::optional<std::string> table_of(const std::string& name, Mark mark, const Files& files,
                                    FaultList& faults) {
  if (!stays_within(name)) {
    faults.add(mark,
               {fmt::format("the table '{}' lies outside the folder of the case file", name), name,
                "a CSV file in the folder of the case file, or below it", "copy the table there"});
    return std::nullopt;
  }
  std::optional<std::string> text = files ? files(name) : std::nullopt;
  if (!text) {
    faults.add(mark, {fmt::format("the table '{}' cannot be read", name), name,
                      "a CSV file in the folder of the case file, or below it",
                      "check its name, and that you may read it"});
  }
  return text;
}

}  // namespace quoin::cases
