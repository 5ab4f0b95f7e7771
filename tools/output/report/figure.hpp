// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "tools/output/report.hpp"
#include "tools/pictures.hpp"

namespace quoin::tools::report {

/// The finished picture that a figure shows, without the author's note; empty where there is none.
[[nodiscard]] std::string picture_of(const Figure& figure, const Pictures& pictures);

}  // namespace quoin::tools::report
