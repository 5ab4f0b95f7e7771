// SPDX-License-Identifier: Apache-2.0
#include "tools/sweep/gathered.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <optional>
#include <system_error>

#include "tools/disk/disk_error.hpp"
#include "tools/output/field/csv_surface.hpp"
#include "tools/sweep/sweep.hpp"

namespace quoin::tools {
namespace {

constexpr std::size_t most_remarks = 20;

std::vector<SweepColumn> wanted(const cases::Vary& vary) {
  std::vector<SweepColumn> columns;
  for (const std::string& name : vary.columns) columns.push_back(sweep_column(name));
  return columns;
}

/// What an axis is set to: a number as written, or words.
std::string field(const std::string& text) {
  double value = 0.0;
  const auto [end, failed] = std::from_chars(text.data(), text.data() + text.size(), value);
  return failed == std::errc() && end == text.data() + text.size() ? text : csv_cell(text);
}

std::string field(const Cell& cell) {
  if (const auto* number = std::get_if<double>(&cell)) return printed(*number);
  const auto* words = std::get_if<std::string>(&cell);
  return words == nullptr ? "" : csv_cell(*words);
}

std::string head(const cases::Vary& vary) {
  std::string line = "row";
  for (const cases::Axis& axis : vary.axes) line += "," + csv_cell(axis.path);
  for (const std::string& column : vary.columns) line += "," + csv_cell(column);
  return line + ",fault\n";
}

std::string line_of(const cases::Vary& vary, const StoredRow& row) {
  std::string line = fmt::format("{}", row.number);
  const std::vector<std::size_t> choice = vary.choice(row.number);
  for (std::size_t a = 0; a < vary.axes.size(); ++a)
    line += "," + field(vary.axes[a].texts[choice[a]]);
  for (std::size_t c = 0; c < vary.columns.size(); ++c)
    line += "," + (row.cells.empty() ? std::string() : field(row.cells[c]));
  return line + "," + csv_cell(row.fault) + "\n";
}

/// When a file was last written; the time of a sweep that goes on is that of its latest part.
std::filesystem::file_time_type written(const std::filesystem::path& file) {
  std::error_code unknown;
  return std::filesystem::last_write_time(file, unknown);
}

/// The file of a part, what it notes of itself, and when it was written.
struct Opened {
  std::unique_ptr<SweepStore> store;
  SweepStore::Notes notes;
  std::filesystem::file_time_type written;
};

/// Whether all that was noted once is noted still, and alike.
bool holds(const SweepStore::Notes& once, const SweepStore::Notes& now) {
  return std::all_of(once.begin(), once.end(), [&](const auto& note) {
    const auto found = now.find(note.first);
    return found != now.end() && found->second == note.second;
  });
}

/// Whether two parts are of one sweep in one state, solved by one program with the same files.
bool belong_together(const SweepStore::Notes& one, const SweepStore::Notes& other) {
  return std::all_of(one.begin(), one.end(), [&](const auto& note) {
    const auto found = other.find(note.first);
    const bool may_lack = note.first.starts_with(sweep_notes::table);
    return found == other.end() ? may_lack : found->second == note.second;
  });
}

std::vector<Opened> parts_in(const std::filesystem::path& folder) {
  std::vector<Opened> parts;
  for (const std::filesystem::path& file : part_files(folder)) {
    Opened part{std::make_unique<SweepStore>(file, SweepStore::Use::read), {}, written(file)};
    part.store->at_once([&] { part.notes = part.store->notes(); });
    if (part.notes.contains(sweep_notes::vary))
      parts.push_back(std::move(part));  // else just begun
  }
  return parts;
}

}  // namespace

/// The rows of one part in order, some at a time, so that its file is free for others in between.
class PartWalk {
 public:
  PartWalk(SweepStore& store, const SweepStore::Notes& notes) : store_(store), notes_(notes) {
    read();
  }

  /// The row it stands at; null after the last.
  [[nodiscard]] const StoredRow* row() const { return at_ < page_.size() ? &page_[at_] : nullptr; }
  void step() {
    const std::uint64_t next = page_[at_].number + 1;
    if (++at_ < page_.size() || page_.size() < rows_of_a_page) return;
    read(next);
  }

 private:
  static constexpr std::size_t rows_of_a_page = 1000;

  void read(std::uint64_t from = 0) {
    store_.at_once([&] {
      if (!holds(notes_, store_.notes()))
        throw DiskError(store_.file(),
                        "another state of the sweep was begun while it was read; "
                        "gather again");
      page_ = store_.rows_from(from, rows_of_a_page);
    });
    at_ = 0;
  }

  SweepStore& store_;
  const SweepStore::Notes& notes_;
  std::vector<StoredRow> page_;
  std::size_t at_ = 0;
};

Gathered::Gathered(const std::filesystem::path& folder) {
  std::vector<Opened> parts = parts_in(folder);
  if (parts.empty()) throw DiskError(folder, "holds no rows of a sweep; `quoin vary` writes them");
  const auto latest =
      std::max_element(parts.begin(), parts.end(),
                       [](const auto& a, const auto& b) { return a.written < b.written; });
  const SweepStore::Notes notes = latest->notes;
  vary_ = cases::vary_of(
      notes.at(sweep_notes::vary), latest->store->file().filename().string(),
      [&](const std::string&) { return std::optional(notes.at(sweep_notes::case_text)); },
      sweep_column_names());
  for (Opened& part : parts) {
    if (!belong_together(part.notes, notes)) {
      left_aside_.push_back(part.store->file().filename().string());
      continue;
    }
    part.store->ask_for(wanted(vary_));
    parts_.push_back({std::move(part.store), std::move(part.notes)});
  }
}

void Gathered::each(const std::function<void(const StoredRow&)>& take,
                    const std::function<void(std::uint64_t, std::uint64_t)>& missing) {
  std::vector<PartWalk> walks;
  for (const Part& part : parts_) walks.emplace_back(*part.store, part.notes);
  std::uint64_t due = 0;
  for (;;) {
    PartWalk* first = nullptr;
    for (PartWalk& walk : walks) {
      if (walk.row() != nullptr &&
          (first == nullptr || walk.row()->number < first->row()->number)) {
        first = &walk;
      }
    }
    const std::uint64_t end = first != nullptr ? first->row()->number : vary_.rows();
    if (end > due) missing(due, end);
    if (first == nullptr) return;
    if (end >= due) take(*first->row());  // else another part had it, too
    due = std::max(due, end + 1);
    first->step();
  }
}

GatheredCount write_csv(Gathered& gathered, const std::function<void(const std::string&)>& write) {
  const cases::Vary& vary = gathered.vary();
  GatheredCount count;
  count.rows = vary.rows();
  const auto remark = [&](const std::string& line) {
    if (count.remarks.size() < most_remarks) count.remarks.push_back(line);
  };
  write(head(vary));
  gathered.each(
      [&](const StoredRow& row) {
        write(line_of(vary, row));
        ++(row.end == RowEnd::solved            ? count.solved
           : row.end == RowEnd::numerics_failed ? count.failed
                                                : count.wrong);
        if (!row.fault.empty()) remark(fmt::format("row {}: {}", row.number, row.fault));
      },
      [&](std::uint64_t first, std::uint64_t end) {
        count.missing += end - first;
        remark(end - first == 1 ? fmt::format("row {} is missing", first)
                                : fmt::format("rows {} to {} are missing", first, end - 1));
      });
  return count;
}

}  // namespace quoin::tools
