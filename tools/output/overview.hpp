// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "tools/answer/results/results.hpp"
#include "tools/disk/file.hpp"

namespace quoin::tools {

/// One room of one variant of one of several cases.
struct OverviewRow {
  std::string title;   ///< of the case
  std::string folder;  ///< of its report, beside the overview
  std::string variant;
  std::string room;
  std::string outcome;  ///< in a few words
  Tone tone = Tone::plain;
  std::optional<double> chance;  ///< that a limit of humidity is passed, 0 to 1
  double coldest = 0.0;          ///< degC
  double factor = 0.0;           ///< fRsi, with the resistance for surface temperature
  double transmittance = 0.0;    ///< U of the first plain part, W/(m2 K); NaN: none
  double coupling = 0.0;         ///< L2D of the first pair of airs, W/(m K)
  double psi = 0.0;              ///< by the first way of measuring, W/(m K); NaN: none
  std::string psi_by;            ///< that way
};

/// The rows of a case whose report stands in a folder beside the overview.
[[nodiscard]] std::vector<OverviewRow> overview_rows(const Results& results,
                                                     const std::string& folder);

/// overview.html and overview.csv of several cases.
[[nodiscard]] std::vector<File> overview_files(const std::vector<OverviewRow>& rows);

/// Their names, known before anything is solved.
[[nodiscard]] std::vector<std::string> overview_names();

}  // namespace quoin::tools
