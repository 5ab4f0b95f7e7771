// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

#include "tools/results.hpp"

namespace quoin::tools {

/// Values that are a choice of few, in the words all outputs use for them.
[[nodiscard]] std::string_view words_for(Degree degree);
[[nodiscard]] std::string_view words_for(Threshold::Kind kind);
[[nodiscard]] std::string_view words_for(geometry::Dimensions dimensions);
[[nodiscard]] std::string_view words_for(materials::Confidence confidence);
/// By which dimensions, and with which floor on the ground taken off.
[[nodiscard]] std::string words_for(const solver::LinearTransmittance& psi);

}  // namespace quoin::tools
