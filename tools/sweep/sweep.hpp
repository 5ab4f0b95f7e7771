// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <string>
#include <vector>

#include "cases/vary.hpp"
#include "solver/solution.hpp"
#include "tools/sweep/columns.hpp"

namespace quoin::tools {

/// Which share of a sweep a run takes on: of the blocks of rows those whose number leaves this part
/// when divided by how many parts there are.
struct SweepPart {
  std::uint64_t number = 1;  ///< from 1
  std::uint64_t of = 1;
};

/// Rows that differ in the air alone stand together in blocks of this many.
inline constexpr std::uint64_t rows_of_a_block = 64;

/// A sweep and where its rows go.
struct SweepRun {
  const cases::Vary& vary;
  std::string vary_text;  ///< the vary file as read
  cases::Files files;     ///< tables that the case names
  std::filesystem::path folder;
  SweepPart part;
  std::size_t workers = 1;
  solver::Effort effort;
};

/// How far a run is.
struct SweepProgress {
  std::uint64_t rows = 0;  ///< of its part
  std::uint64_t done = 0;  ///< of them, with those that were there
  std::uint64_t were_there = 0;
  std::uint64_t solved_now = 0;  ///< by this run, without a fault
  std::uint64_t wrong = 0;       ///< done, but with a fault of the input
  std::uint64_t failed = 0;      ///< done, but the numerics failed
  double seconds = 0.0;          ///< since it began
  bool stopped = false;          ///< before all were done
  bool waiting = false;          ///< until another run that writes the same part has ended
};

/// Solves the rows of a part that its folder does not hold yet, and puts them into the part's file
/// there at least once a second. `tell` hears of it from time to time; `stop` is asked whether to
/// leave off. A row that cannot be solved is kept with its fault. Run twice it goes on where it was
/// left, at any moment by any signal, and takes over rows of an earlier state of the vary file and
/// of other parts. Two runs of one part take turns. Throws: DiskError.
SweepProgress run_sweep(const SweepRun& run, const std::function<void(const SweepProgress&)>& tell,
                        const std::function<bool()>& stop);

/// The name of the file of a part.
[[nodiscard]] std::string part_file(const SweepPart& part);
/// The files of the parts in a folder, in the order of their names.
[[nodiscard]] std::vector<std::filesystem::path> part_files(const std::filesystem::path& folder);

/// What the file of a part says of its sweep.
namespace sweep_notes {
inline constexpr const char* program = "program";  ///< version of the program that solved it
inline constexpr const char* vary = "vary";        ///< the text of the vary file
inline constexpr const char* case_text = "case";   ///< of the case it names
inline constexpr const char* state = "state";      ///< digest of both
inline constexpr const char* table = "table ";     ///< and a name: digest of a file that rows name
}  // namespace sweep_notes

/// The digest of a vary file and its case.
[[nodiscard]] std::string state_of(const cases::Vary& vary);

}  // namespace quoin::tools
