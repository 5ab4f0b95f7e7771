// SPDX-License-Identifier: Apache-2.0
#include "tools/command/case_files.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <system_error>

#include "cases/read.hpp"
#include "cases/text/faults.hpp"
#include "cases/text/yaml_tree.hpp"
#include "tools/command/errors.hpp"
#include "tools/sweep/sweep.hpp"

namespace quoin::tools {
namespace {

cases::Fault fault_of_file(const std::string& file, std::string what, std::string remedy) {
  cases::Fault fault;
  fault.file = file;
  fault.what = std::move(what);
  fault.remedy = std::move(remedy);
  return fault;
}

/// What a stream holds, as far as a case may reach and one byte more, so that it shows where there
/// is too much.
std::string beginning_of(std::istream& stream) {
  constexpr std::size_t most = cases::limits::bytes + 1;
  std::string text;
  std::array<char, 16384> part{};
  while (text.size() < most && stream) {
    const std::size_t wanted = std::min(part.size(), most - text.size());
    stream.read(part.data(), static_cast<std::streamsize>(wanted));
    text.append(part.data(), static_cast<std::size_t>(stream.gcount()));
  }
  return text;
}

}  // namespace

std::string text_of_file(const std::string& file) {
  if (file == "-") return beginning_of(std::cin);
  std::error_code unknown;  // what cannot be asked cannot be read either
  if (std::filesystem::is_directory(file, unknown)) {
    throw cases::InputError(
        {fault_of_file(file, "this is a folder, not a case file",
                       part_files(file).empty() ? "name the .yaml file in it"
                                                : "`quoin gather` takes the rows in it")});
  }
  std::ifstream stream(file, std::ios::binary);
  std::string text = beginning_of(stream);
  if (!stream.is_open() || stream.bad()) {
    throw cases::InputError({fault_of_file(file, "this file cannot be read",
                                           "check its name, and that you may read it")});
  }
  return text;
}

void refuse_other_kind(const std::string& text, const std::string& file, cases::FileKind wanted) {
  if (auto other = cases::fault_of_kind(text, file, wanted)) throw cases::InputError({*other});
}

cases::Files files_beside(const std::string& file) {
  const std::filesystem::path beside = std::filesystem::path(file).parent_path();
  return [folder = beside.empty() ? "."
                                  : beside](const std::string& name) -> std::optional<std::string> {
    std::error_code unknown;
    const auto place = std::filesystem::canonical(folder / name, unknown);
    const auto root = std::filesystem::canonical(folder, unknown);
    if (unknown || !std::filesystem::is_regular_file(place, unknown)) return std::nullopt;
    if (std::mismatch(root.begin(), root.end(), place.begin(), place.end()).first != root.end())
      return std::nullopt;
    std::ifstream stream(place, std::ios::binary);
    std::string text = beginning_of(stream);
    if (!stream.is_open() || stream.bad()) return std::nullopt;
    return text;
  };
}

CaseOrHouse case_or_house_in(const std::string& file) {
  const std::string text = text_of_file(file);
  if (cases::is_house(text)) return {{}, cases::house_of(text, file, files_beside(file))};
  return {cases::case_of(text, file, files_beside(file)), std::nullopt};
}

bool EachCase::run(std::size_t number, const std::function<Exit()>& work) {
  const Exit exit = told(terminal_, work);
  exit_ = worse(exit_, exit);
  if (exit <= Exit::does_not_hold) return true;
  failed_.push_back(number);
  return false;
}

Exit EachCase::end() {
  if (files_.size() > 1 && !failed_.empty()) {
    std::sort(failed_.begin(), failed_.end());
    std::vector<std::string> names;
    for (const std::size_t number : failed_) names.push_back(files_[number]);
    terminal_.notes << harmless(fmt::format("quoin: {} of {} cases failed: {}", names.size(),
                                            files_.size(), fmt::join(names, ", ")),
                                terminal_.style)
                    << '\n';
  }
  return exit_;
}

}  // namespace quoin::tools
