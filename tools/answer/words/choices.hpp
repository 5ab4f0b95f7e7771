// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// Values that are a choice of few, in the words all outputs use for them.
[[nodiscard]] std::string_view words_for(Degree degree);
[[nodiscard]] std::string_view words_for(Threshold::Kind kind);
[[nodiscard]] std::string_view words_for(Threshold::More more);
[[nodiscard]] std::string_view words_for(geometry::Dimensions dimensions);
[[nodiscard]] std::string_view words_for(materials::Confidence confidence);
/// By which dimensions, and with which floor on the ground taken off.
[[nodiscard]] std::string words_for(const solver::LinearTransmittance& psi);
/// The same of a variant: the lengths of a sheet's parts are as its author states them.
[[nodiscard]] std::string psi_by(const SolvedVariant& solved,
                                 const solver::LinearTransmittance& psi);

}  // namespace quoin::tools
