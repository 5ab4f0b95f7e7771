// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "tools/sweep/keeper.hpp"
#include "tools/sweep/store.hpp"
#include "tools/sweep/sweep.hpp"
#include "tools/sweep/workers.hpp"

namespace quoin::tools {

/// The columns a file has, then those that are missing in it: a row holds all of them.
[[nodiscard]] std::vector<SweepColumn> all_columns(SweepStore& store, const cases::Vary& vary);

/// What a run begins with: its own file, and what others have that it need not solve again. Rows of
/// another state of the sweep, of another program, or of files that have changed since, are known
/// by their keys alone.
class Beginning {
 public:
  /// Brings the file of the part to the state of this run. Throws: DiskError.
  Beginning(const SweepRun& run, SweepStore& store);

  /// Opens the files of the other parts. Nothing may be half written then: they do so, too.
  void look_at_others(const std::vector<SweepColumn>& columns);

  /// Notes the rows that need not be solved, until it is asked to stop.
  void note_done(Rows& rows, Keeper& keeper, const std::function<void(std::uint64_t, RowEnd)>& tell,
                 const std::function<bool()>& stop);
  /// Closes them.
  void forget_others();

 private:
  [[nodiscard]] bool is_current(const SweepStore::Notes& notes) const;
  [[nodiscard]] std::optional<StoredRow> known(const std::string& key);

  const SweepRun& run_;
  SweepStore& store_;
  std::string state_;
  std::vector<SweepColumn> columns_;
  bool stale_ = false;                                     ///< the file holds rows of another state
  std::vector<std::unique_ptr<SweepStore>> fellows_;       ///< parts of the same state
  std::vector<std::unique_ptr<SweepStore>> stale_others_;  ///< of another
};

}  // namespace quoin::tools
