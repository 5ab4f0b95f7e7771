// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "cases/model/case.hpp"

namespace quoin::cases {

/// What a membrane is called: by its author, by what it is, or by its sd ("membrane of sd 100 m").
[[nodiscard]] std::string display_name(const Membrane& membrane);

}  // namespace quoin::cases
