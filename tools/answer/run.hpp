// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <functional>
#include <string>
#include <string_view>

#include "cases/model/case.hpp"
#include "solver/solution.hpp"
#include "tools/answer/results/results.hpp"
#include "tools/answer/survey/chances.hpp"

namespace quoin::tools {

/// Called with the name of the variant about to be solved, its number from 0 and how many there
/// are.
using Progress = std::function<void(const std::string&, std::size_t, std::size_t)>;

/// The whole pipeline for one case: every variant solved for both purposes, judged and compared.
/// `file` names the case in the results; `only` the one variant that is wanted, where not all are:
/// it comes out as it would among the others, but nothing is compared.
/// Throws: SolveError.
[[nodiscard]] Results results_of(const cases::Case& source, const std::string& file,
                                 const solver::Effort& effort, const Progress& progress = {},
                                 std::string_view only = {});

/// One variant of it. Throws: SolveError.
[[nodiscard]] SolvedVariant solved(const cases::Variant& variant, const solver::Effort& effort,
                                   const ChanceGround& ground = {});

}  // namespace quoin::tools
