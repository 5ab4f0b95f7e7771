// SPDX-License-Identifier: Apache-2.0
#include "tools/sweep/gathered.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <optional>
#include <system_error>

#include "tools/answer/results/version.hpp"
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

}  // namespace

Gathered::Gathered(const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> files = part_files(folder);
  std::erase_if(files, [](const std::filesystem::path& file) {  // only just begun
    SweepStore part(file, SweepStore::Use::read);
    return !part.is_made() || part.note(sweep_notes::vary).empty();
  });
  if (files.empty()) throw DiskError(folder, "holds no rows of a sweep; `quoin vary` writes them");
  const auto latest =
      std::max_element(files.begin(), files.end(),
                       [](const auto& a, const auto& b) { return written(a) < written(b); });
  SweepStore first(*latest, SweepStore::Use::read);
  const std::string state = first.note(sweep_notes::state);
  const std::string case_text = first.note(sweep_notes::case_text);
  vary_ = cases::vary_of(
      first.note(sweep_notes::vary), latest->filename().string(),
      [&](const std::string&) { return std::optional(case_text); }, sweep_column_names());
  const std::string program = first.note(sweep_notes::program);
  for (const std::filesystem::path& file : files) {
    auto part = std::make_unique<SweepStore>(file, SweepStore::Use::read);
    if (part->note(sweep_notes::state) != state || part->note(sweep_notes::program) != program) {
      left_aside_.push_back(file.filename().string());
      continue;
    }
    part->ask_for(wanted(vary_));
    parts_.push_back(std::move(part));
  }
}

void Gathered::each(const std::function<void(const StoredRow&)>& take,
                    const std::function<void(std::uint64_t, std::uint64_t)>& missing) {
  std::vector<std::optional<StoredRow>> next;
  for (const auto& part : parts_) next.push_back(part->next_row());
  std::uint64_t due = 0;
  for (;;) {
    std::optional<std::size_t> first;
    for (std::size_t p = 0; p < parts_.size(); ++p) {
      if (next[p] && (!first || next[p]->number < next[*first]->number)) first = p;
    }
    const std::uint64_t end = first ? next[*first]->number : vary_.rows();
    if (end > due) missing(due, end);
    if (!first) return;
    if (end >= due) take(*next[*first]);  // else another part had it, too
    due = std::max(due, end + 1);
    next[*first] = parts_[*first]->next_row();
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
