// SPDX-License-Identifier: Apache-2.0
#include "tools/door/case_text.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "cases/read.hpp"
#include "cases/text/words.hpp"

namespace quoin::door {
namespace {

// What names a text in faults that has no file.
constexpr const char* unnamed = "case";

}  // namespace

cases::Files files_of(const Beside& beside) {
  return [&beside](const std::string& name) -> std::optional<std::string> {
    const auto found = beside.find(name);
    return found == beside.end() ? std::nullopt : std::optional(found->second);
  };
}

cases::Case case_in(std::string_view text, const Beside& beside, bool of_house) {
  return of_house ? cases::case_of_house(text, unnamed, files_of(beside))
                  : cases::case_of(text, unnamed, files_of(beside));
}

const cases::Variant& variant_in(const cases::Case& source, std::string_view name) {
  if (name.empty()) return source.variants.front();
  std::vector<std::string> names;
  for (const cases::Variant& variant : source.variants) {
    if (variant.name == name) return variant;
    names.push_back(variant.name);
  }
  cases::Fault fault;
  fault.file = unnamed;
  fault.what = fmt::format("the case has no variant {}", cases::quoted(name));
  fault.found = name;
  fault.expected = "one of: " + cases::joined(names, ", ");
  fault.remedy = cases::did_you_mean(name, names);
  throw cases::InputError({fault});
}

std::string faults_json(const std::vector<cases::Fault>& faults) {
  nlohmann::ordered_json list = nlohmann::ordered_json::array();
  for (const cases::Fault& fault : faults) {
    list.push_back({{"line", fault.line},
                    {"column", fault.column},
                    {"what", fault.what},
                    {"found", fault.found},
                    {"expected", fault.expected},
                    {"remedy", fault.remedy},
                    {"source", fault.source},
                    {"file", fault.file}});
  }
  return list.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
}

}  // namespace quoin::door
