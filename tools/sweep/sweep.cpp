// SPDX-License-Identifier: Apache-2.0
#include "tools/sweep/sweep.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <system_error>

#include "cases/text/sha256.hpp"
#include "tools/disk/disk_error.hpp"
#include "tools/disk/locks.hpp"
#include "tools/sweep/beginning.hpp"
#include "tools/sweep/keeper.hpp"
#include "tools/sweep/workers.hpp"

namespace quoin::tools {
namespace {

using Clock = std::chrono::steady_clock;

constexpr const char* beginning = "part-";
constexpr const char* ending = ".sqlite";

void count(RowEnd end, SweepProgress& progress) {
  ++progress.done;
  if (end == RowEnd::wrong_input) ++progress.wrong;
  if (end == RowEnd::numerics_failed) ++progress.failed;
}

std::string lock_file(const SweepPart& part) {
  return fmt::format("{}{}-of-{}.lock", beginning, part.number, part.of);
}

/// Solves what is left of a part.
void solve_rest(const SweepRun& run, const std::vector<SweepColumn>& columns, const Rows& rows,
                Keeper& keeper, SweepProgress& progress, const std::function<void()>& tell,
                const std::function<bool()>& stop) {
  SolvedRows solved;
  Workers workers(run, columns, rows);
  while (workers.take(solved)) {
    for (const StoredRow& row : solved.rows) {
      keeper.add(row);
      count(row.end, progress);
      if (row.end == RowEnd::solved) ++progress.solved_now;
    }
    keeper.note(solved.tables);
    keeper.now_and_then();
    tell();
    if (stop()) workers.stop();
  }
}

}  // namespace

SweepProgress run_sweep(const SweepRun& run, const std::function<void(const SweepProgress&)>& tell,
                        const std::function<bool()>& stop) {
  std::error_code failed;
  std::filesystem::create_directories(run.folder, failed);
  if (failed) throw DiskError(run.folder, failed.value());
  SweepProgress progress;
  const FileLock lock(run.folder / lock_file(run.part), [&] {
    SweepProgress waiting;
    waiting.waiting = true;
    tell(waiting);
  });
  const Clock::time_point start = Clock::now();
  const auto tell_now = [&] {
    progress.seconds = std::chrono::duration<double>(Clock::now() - start).count();
    tell(progress);
  };

  SweepStore store(run.folder / part_file(run.part), SweepStore::Use::write);
  Keeper keeper(store);
  const std::vector<SweepColumn> columns = all_columns(store, run.vary);
  store.ask_for(columns);
  Rows rows(run.vary.rows(), run.part);
  progress.rows = rows.count();
  Beginning begun(run, store);
  keeper.to_the_end(tell_now, stop);
  begun.look_at_others(columns);
  begun.note_done(
      rows, keeper,
      [&](std::uint64_t, RowEnd end) {
        ++progress.were_there;
        count(end, progress);
      },
      stop);
  keeper.to_the_end(tell_now, stop);
  begun.forget_others();
  solve_rest(run, columns, rows, keeper, progress, tell_now, stop);
  keeper.to_the_end(tell_now, stop);
  progress.stopped = progress.done < progress.rows;
  return progress;
}

std::string part_file(const SweepPart& part) {
  return fmt::format("{}{}-of-{}{}", beginning, part.number, part.of, ending);
}

std::vector<std::filesystem::path> part_files(const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> files;
  std::error_code failed;
  for (const auto& entry : std::filesystem::directory_iterator(folder, failed)) {
    const std::string name = entry.path().filename().string();
    if (name.rfind(beginning, 0) == 0 && entry.path().extension() == ending)
      files.push_back(entry.path());
  }
  if (failed) throw DiskError(folder, failed.value());
  std::sort(files.begin(), files.end());
  return files;
}

std::string state_of(const cases::Vary& vary) {
  return cases::sha256(vary.sha256 + cases::sha256(vary.case_text));
}

}  // namespace quoin::tools
