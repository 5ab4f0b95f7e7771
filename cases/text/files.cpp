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

/// `what` a file is to the one that names it: "table", and which `kind` of file: "a CSV file".
std::optional<std::string> text_of(const std::string& name, Mark mark, const char* what,
                                   const char* kind, const Files& files, FaultList& faults) {
  const std::string expected = fmt::format("{} in the folder of this file, or below it", kind);
  if (!stays_within(name)) {
    faults.add(mark, {fmt::format("the {} '{}' lies outside the folder of this file", what, name),
                      name, expected, fmt::format("copy the {} there", what)});
    return std::nullopt;
  }
  std::optional<std::string> text = files ? files(name) : std::nullopt;
  if (!text) {
    faults.add(mark, {fmt::format("the {} '{}' cannot be read", what, name), name, expected,
                      "check its name, and that you may read it"});
  }
  return text;
}

}  // namespace

std::optional<std::string> table_of(const std::string& name, Mark mark, const Files& files,
                                    FaultList& faults) {
  return text_of(name, mark, "table", "a CSV file", files, faults);
}

std::optional<std::string> case_text_of(const std::string& name, Mark mark, const Files& files,
                                        FaultList& faults) {
  return text_of(name, mark, "case", "a case file", files, faults);
}

}  // namespace quoin::cases
