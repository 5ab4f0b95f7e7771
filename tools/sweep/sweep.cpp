// SPDX-License-Identifier: Apache-2.0
#include "tools/sweep/sweep.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <condition_variable>
#include <exception>
#include <memory>
#include <mutex>
#include <optional>
#include <system_error>
#include <thread>
#include <utility>

#include "cases/text/sha256.hpp"
#include "tools/answer/results/version.hpp"
#include "tools/disk/disk_error.hpp"
#include "tools/sweep/row.hpp"
#include "tools/sweep/store.hpp"

namespace quoin::tools {
namespace {

using Clock = std::chrono::steady_clock;

constexpr auto between_commits = std::chrono::milliseconds(500);
constexpr auto between_looks = std::chrono::milliseconds(100);
constexpr const char* beginning = "part-";
constexpr const char* ending = ".sqlite";

/// The rows of a part, and which are done.
class Rows {
 public:
  Rows(std::uint64_t all, const SweepPart& part) : all_(all), part_(part), done_(all, false) {
    for (std::uint64_t row = from(0); row < all; row = from(row + 1)) ++count_;
  }

  [[nodiscard]] std::uint64_t all() const { return all_; }
  [[nodiscard]] std::uint64_t count() const { return count_; }
  [[nodiscard]] bool is_done(std::uint64_t row) const { return done_[row]; }
  /// Whether that is news of this part.
  bool note_done(std::uint64_t row) {
    if (row >= all_ || from(row) != row || done_[row]) return false;
    done_[row] = true;
    return true;
  }
  /// The first row of the part from this one on; `all` where there is none.
  [[nodiscard]] std::uint64_t from(std::uint64_t row) const {
    while (row < all_ && row / rows_of_a_block % part_.of != part_.number - 1)
      row = (row / rows_of_a_block + 1) * rows_of_a_block;
    return std::min(row, all_);
  }

 private:
  std::uint64_t all_;
  SweepPart part_;
  std::vector<bool> done_;
  std::uint64_t count_ = 0;
};

/// Workers that solve blocks of rows, each block by one of them, and hand the rows over.
class Workers {
 public:
  Workers(const SweepRun& run, const std::vector<SweepColumn>& columns, const Rows& rows)
      : rows_(rows), next_(rows.from(0)), working_(run.workers) {
    for (std::size_t w = 0; w < run.workers; ++w) {
      threads_.emplace_back([this, &run, columns] {
        std::exception_ptr failure;
        try {
          SweepSolver solver(run.vary, columns, run.files, run.effort);
          while (work_on_block(solver)) continue;
        } catch (...) {
          failure = std::current_exception();
        }
        const std::lock_guard guard(mutex_);
        if (failure) failure_ = failure;
        --working_;
        news_.notify_one();
      });
    }
  }
  Workers(const Workers&) = delete;
  Workers& operator=(const Workers&) = delete;
  ~Workers() {
    stop();
    for (std::thread& thread : threads_) thread.join();
  }

  void stop() { stopping_ = true; }

  /// What has been solved since, after a while. False once all is handed over.
  bool take(std::vector<StoredRow>& rows) {
    rows.clear();
    std::unique_lock guard(mutex_);
    news_.wait_for(guard, between_looks, [&] { return working_ == 0; });
    rows.swap(solved_);
    if (failure_) std::rethrow_exception(failure_);
    return !rows.empty() || working_ > 0;
  }

 private:
  /// Whether there was one to work on.
  bool work_on_block(SweepSolver& solver) {
    std::uint64_t row = 0;
    {
      const std::lock_guard guard(mutex_);
      row = next_;
      next_ = rows_.from((next_ / rows_of_a_block + 1) * rows_of_a_block);
    }
    const std::uint64_t end = std::min((row / rows_of_a_block + 1) * rows_of_a_block, rows_.all());
    if (row >= end) return false;
    for (; row < end; ++row) {
      if (stopping_) return false;
      if (rows_.is_done(row)) continue;
      SweepCase read = solver.read(row);
      SweepAnswer answer = solver.answer(read);
      const std::lock_guard guard(mutex_);
      solved_.push_back(
          {row, std::move(read.key), std::move(answer.cells), std::move(answer.fault), answer.end});
    }
    return true;
  }

  const Rows& rows_;
  std::uint64_t next_;
  std::size_t working_;
  std::vector<std::thread> threads_;
  std::mutex mutex_;
  std::condition_variable news_;
  std::vector<StoredRow> solved_;
  std::exception_ptr failure_;
  std::atomic<bool> stopping_ = false;
};

/// The columns a file has, then those that are missing in it: a row holds all of them.
std::vector<SweepColumn> all_columns(SweepStore& store, const cases::Vary& vary) {
  std::vector<std::string> names = store.columns();
  for (const std::string& wanted : vary.columns) {
    if (std::find(names.begin(), names.end(), wanted) == names.end()) names.push_back(wanted);
  }
  const std::vector<std::string> known = sweep_column_names();
  std::vector<SweepColumn> columns;
  for (const std::string& name : names) {
    if (std::find(known.begin(), known.end(), name) != known.end())
      columns.push_back(sweep_column(name));
  }
  return columns;
}

bool has_all(SweepStore& store, const std::vector<SweepColumn>& columns) {
  const std::vector<std::string> present = store.columns();
  return std::all_of(columns.begin(), columns.end(), [&](const SweepColumn& column) {
    return std::find(present.begin(), present.end(), column.name) != present.end();
  });
}

void count(RowEnd end, SweepProgress& progress) {
  ++progress.done;
  if (end == RowEnd::wrong_input) ++progress.wrong;
  if (end == RowEnd::numerics_failed) ++progress.failed;
}

/// What a run begins with: its own file, and what others have that it need not solve again.
class Beginning {
 public:
  Beginning(const SweepRun& run, SweepStore& store, const std::vector<SweepColumn>& columns)
      : run_(run), store_(store), columns_(columns) {
    const std::string state = state_of(run.vary);
    if (store.note(sweep_notes::program) != QUOIN_VERSION) store.forget_answers();
    if (store.note(sweep_notes::state) != state) {
      stale_ = !store.note(sweep_notes::state).empty();
      store.forget_numbers();
    }
    store.set_note(sweep_notes::program, QUOIN_VERSION);
    store.set_note(sweep_notes::state, state);
    store.set_note(sweep_notes::vary, run.vary_text);
    store.set_note(sweep_notes::case_text, run.vary.case_text);
    for (const std::filesystem::path& file : part_files(run.folder)) {
      if (file.filename() == part_file(run.part)) continue;
      auto other = std::make_unique<SweepStore>(file, SweepStore::Use::read);
      if (!other->is_made() || other->note(sweep_notes::program) != QUOIN_VERSION ||
          !has_all(*other, columns))
        continue;
      other->ask_for(columns);
      (other->note(sweep_notes::state) == state ? fellows_ : stale_others_)
          .push_back(std::move(other));
    }
  }

  /// Notes the rows that need not be solved.
  void note_done(Rows& rows, SweepProgress& progress) {
    const auto note = [&](std::uint64_t row, RowEnd end) {
      if (!rows.note_done(row)) return;
      ++progress.were_there;
      count(end, progress);
    };
    store_.each_number(note);
    for (const auto& fellow : fellows_) fellow->each_number(note);
    if (!stale_ && stale_others_.empty()) return;
    SweepSolver solver(run_.vary, columns_, run_.files, run_.effort);
    for (std::uint64_t row = rows.from(0); row < rows.all(); row = rows.from(row + 1)) {
      if (rows.is_done(row)) continue;
      if (const std::optional<RowEnd> end = known(row, solver.read(row).key)) note(row, *end);
    }
  }

 private:
  std::optional<RowEnd> known(std::uint64_t row, const std::string& key) {
    std::optional<StoredRow> found = store_.find(key);
    for (const auto& other : stale_others_) {
      if (!found) found = other->find(key);
    }
    if (!found) return std::nullopt;
    found->number = row;
    store_.add(*found);
    return found->end;
  }

  const SweepRun& run_;
  SweepStore& store_;
  const std::vector<SweepColumn>& columns_;
  bool stale_ = false;                                ///< the file holds rows of an earlier state
  std::vector<std::unique_ptr<SweepStore>> fellows_;  ///< parts of the same state
  std::vector<std::unique_ptr<SweepStore>> stale_others_;  ///< of another
};

/// For whoever opens the file with another program.
std::vector<SweepStore::ShownAxis> shown_axes(const cases::Vary& vary) {
  std::vector<SweepStore::ShownAxis> axes;
  for (const cases::Axis& axis : vary.axes) axes.push_back({axis.path, axis.texts, 1});
  std::uint64_t stride = 1;
  for (auto a = vary.order.rbegin(); a != vary.order.rend(); ++a) {
    axes[*a].stride = stride;
    stride *= vary.axes[*a].values.size();
  }
  return axes;
}

}  // namespace

SweepProgress run_sweep(const SweepRun& run, const std::function<void(const SweepProgress&)>& tell,
                        const std::function<bool()>& stop) {
  std::error_code failed;
  std::filesystem::create_directories(run.folder, failed);
  if (failed) throw DiskError(run.folder, failed.value());
  SweepStore store(run.folder / part_file(run.part), SweepStore::Use::write);
  const std::vector<SweepColumn> columns = all_columns(store, run.vary);
  store.ask_for(columns);
  Rows rows(run.vary.rows(), run.part);
  SweepProgress progress;
  progress.rows = rows.count();
  const Clock::time_point start = Clock::now();
  Beginning(run, store, columns).note_done(rows, progress);
  store.show(shown_axes(run.vary));
  store.commit();

  Clock::time_point committed = Clock::now();
  std::vector<StoredRow> solved;
  Workers workers(run, columns, rows);
  while (workers.take(solved)) {
    for (const StoredRow& row : solved) {
      store.add(row);
      count(row.end, progress);
      if (row.end == RowEnd::solved) ++progress.solved_now;
    }
    const Clock::time_point now = Clock::now();
    if (now - committed >= between_commits) {
      store.commit();
      committed = now;
    }
    progress.seconds = std::chrono::duration<double>(now - start).count();
    tell(progress);
    if (stop()) workers.stop();
  }
  store.commit();
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
