// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "tools/draw/pictures.hpp"
#include "tools/output/report.hpp"

namespace quoin::tools::report {

/// The picture that a figure shows, without the author's note; empty where there is none.
[[nodiscard]] const Picture& picture_of(const Figure& figure, const Pictures& pictures);

}  // namespace quoin::tools::report
