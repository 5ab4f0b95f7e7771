// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "cases/model/case.hpp"
#include "cases/text/faults.hpp"
#include "cases/text/files.hpp"
#include "tools/door/door.hpp"

namespace quoin::door {

/// The tables and case files of a call, as reading asks for them.
[[nodiscard]] cases::Files files_of(const Beside& beside);

/// The case of a text; `of_house`: of one section of a house. Throws: InputError.
[[nodiscard]] cases::Case case_in(std::string_view text, const Beside& beside,
                                  bool of_house = false);

/// The variant of a name, the case as written where it is empty. Throws: InputError where the case
/// has none of that name.
[[nodiscard]] const cases::Variant& variant_in(const cases::Case& source, std::string_view name);

/// Faults as JSON, a list without a line feed.
[[nodiscard]] std::string faults_json(const std::vector<cases::Fault>& faults);

}  // namespace quoin::door
