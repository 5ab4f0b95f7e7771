// SPDX-License-Identifier: Apache-2.0
// The law for words: every sentence is a claim, held against the numbers of its run.
#pragma once

#include <string>
#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::testing {

/// What is wrong with figures in words: bands of nothing, changes from a number to itself, minus
/// nothing, powers of ten, units as programs write them.
[[nodiscard]] std::vector<std::string> faults_of_figures(const std::string& text);

/// What is wrong with the outcomes of findings.json beside the numbers and verdicts there.
[[nodiscard]] std::vector<std::string> faults_of_outcomes(const std::string& findings);

/// What is wrong with the sentence that answers first, beside the outcomes.
[[nodiscard]] std::vector<std::string> faults_of_sentence(const std::string& sentence,
                                                          const tools::Results& results);

/// What is told to get colder and does not, or does and is not told. Places are looked up in the
/// fields of both variants where they are drawn alike.
[[nodiscard]] std::vector<std::string> faults_of_changes(const tools::Results& results);

/// Tables that the terminal or the page do not show as the document states them, and outcomes that
/// the first table and findings.json tell differently.
[[nodiscard]] std::vector<std::string> faults_of_tables(const tools::Results& results,
                                                        const std::string& text);

/// All of these for one run, its terminal report made by the program.
[[nodiscard]] std::vector<std::string> faults_of(const tools::Results& results);

}  // namespace quoin::testing
