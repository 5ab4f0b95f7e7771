// SPDX-License-Identifier: Apache-2.0
#include "tools/sweep/beginning.hpp"

#include <algorithm>
#include <string_view>
#include <utility>

#include "cases/text/sha256.hpp"
#include "tools/answer/results/version.hpp"
#include "tools/sweep/row.hpp"

namespace quoin::tools {
namespace {

std::string note_of(const SweepStore::Notes& notes, const char* name) {
  const auto found = notes.find(name);
  return found == notes.end() ? "" : found->second;
}

bool has_all(const std::vector<std::string>& present, const std::vector<SweepColumn>& columns) {
  return std::all_of(columns.begin(), columns.end(), [&](const SweepColumn& column) {
    return std::find(present.begin(), present.end(), column.name) != present.end();
  });
}

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

/// Notes of files that rows name: their names.
std::vector<std::string> tables_in(const SweepStore::Notes& notes) {
  constexpr std::string_view start = sweep_notes::table;
  std::vector<std::string> names;
  for (const auto& [name, digest] : notes) {
    if (name.starts_with(start)) names.push_back(name.substr(start.size()));
  }
  return names;
}

}  // namespace

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

Beginning::Beginning(const SweepRun& run, SweepStore& store)
    : run_(run), store_(store), state_(state_of(run.vary)) {
  const SweepStore::Notes notes = store.notes();
  if (note_of(notes, sweep_notes::program) != QUOIN_VERSION) store.forget_answers();
  if (!is_current(notes)) {
    stale_ = !note_of(notes, sweep_notes::state).empty();
    store.forget_numbers();
  }
  store.set_note(sweep_notes::program, QUOIN_VERSION);
  store.set_note(sweep_notes::state, state_);
  store.set_note(sweep_notes::vary, run.vary_text);
  store.set_note(sweep_notes::case_text, run.vary.case_text);
  for (const std::string& name : tables_in(notes))
    store.set_note(sweep_notes::table + name, digest_of_table(run.files, name));
  store.show(shown_axes(run.vary));
}

void Beginning::look_at_others(const std::vector<SweepColumn>& columns) {
  columns_ = columns;
  for (const std::filesystem::path& file : part_files(run_.folder)) {
    if (file.filename() == part_file(run_.part)) continue;
    auto other = std::make_unique<SweepStore>(file, SweepStore::Use::read);
    SweepStore::Notes notes;
    std::vector<std::string> present;
    other->at_once([&] {
      notes = other->notes();
      present = other->columns();
    });
    if (note_of(notes, sweep_notes::program) != QUOIN_VERSION || !has_all(present, columns))
      continue;
    other->ask_for(columns);
    (is_current(notes) ? fellows_ : stale_others_).push_back(std::move(other));
  }
}

void Beginning::note_done(Rows& rows, Keeper& keeper,
                          const std::function<void(std::uint64_t, RowEnd)>& tell,
                          const std::function<bool()>& stop) {
  const auto note = [&](std::uint64_t row, RowEnd end) {
    if (rows.note_done(row)) tell(row, end);
  };
  store_.each_number(note);
  for (const auto& fellow : fellows_) fellow->each_number(note);
  if (!stale_ && stale_others_.empty()) return;
  SweepSolver solver(run_.vary, columns_, run_.files, run_.effort);
  for (std::uint64_t row = rows.from(0); row < rows.all() && !stop(); row = rows.from(row + 1)) {
    if (rows.is_done(row)) continue;
    const SweepCase read = solver.read(row);
    std::optional<StoredRow> found = known(read.key);
    if (!found) continue;
    found->number = row;
    keeper.add(*found);
    keeper.note(read.tables);
    keeper.now_and_then();
    note(row, found->end);
  }
}

void Beginning::forget_others() {
  fellows_.clear();
  stale_others_.clear();
}

bool Beginning::is_current(const SweepStore::Notes& notes) const {
  if (note_of(notes, sweep_notes::state) != state_) return false;
  const std::vector<std::string> tables = tables_in(notes);
  return std::all_of(tables.begin(), tables.end(), [&](const std::string& name) {
    return notes.at(sweep_notes::table + name) == digest_of_table(run_.files, name);
  });
}

std::optional<StoredRow> Beginning::known(const std::string& key) {
  std::optional<StoredRow> found = store_.find(key);
  for (const auto& other : stale_others_) {
    if (!found) found = other->find(key);
  }
  return found;
}

}  // namespace quoin::tools
