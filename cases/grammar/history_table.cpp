// SPDX-License-Identifier: Apache-2.0
#include "cases/grammar/history_table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "cases/grammar/logger_rows.hpp"
#include "cases/grammar/logger_times.hpp"
#include "cases/grammar/quantity.hpp"
#include "cases/grammar/units.hpp"
#include "cases/text/plain_text.hpp"
#include "cases/text/words.hpp"

namespace quoin::cases {
namespace {

constexpr double longest_gap = 3.0;           // h
constexpr std::size_t longest_preamble = 40;  // rows above the heading
constexpr double most_hours = 24.0 * 60;
constexpr std::string_view hours_before = "hours before";
constexpr std::array<std::string_view, 7> time_names{
    "time", "date", "datetime", "date time", "date/time", "date-time", "timestamp"};

using Row = std::vector<LoggerCell>;

struct Columns {
  std::size_t heading = 0;  ///< row
  std::size_t value = 0;
  std::optional<std::size_t> before;      ///< hours before
  std::optional<std::size_t> day, clock;  ///< a time, or a day and its time
};

/// One temperature and when it was.
struct Logged {
  double before = 0.0;  ///< h
  double temperature = 0.0;
  Mark mark;
};

std::optional<std::size_t> column_of(const Row& row, const std::vector<std::string>& names) {
  for (const std::string& name : names) {
    for (std::size_t c = 0; c < row.size(); ++c) {
      if (column_name(row[c].text) == column_name(name)) return c;
    }
  }
  return std::nullopt;
}

std::optional<Columns> columns_of(const LoggerTable& table, const HistoryQuestion& question,
                                  FaultList& faults) {
  for (std::size_t r = 0; r < std::min(table.rows.size(), longest_preamble); ++r) {
    const Row& row = table.rows[r];
    const auto value = column_of(row, question.columns);
    if (!value) continue;
    Columns columns{r, *value, column_of(row, {std::string(hours_before)}), {}, {}};
    for (std::size_t c = 0; c < row.size() && !columns.before; ++c) {
      const std::string name = column_name(row[c].text);
      if (std::find(time_names.begin(), time_names.end(), name) == time_names.end()) continue;
      if (!columns.day) {
        columns.day = c;
      } else if (!columns.clock) {
        columns.clock = c;
      }
    }
    if (columns.day && columns.clock && column_name(row[*columns.day].text) == "time")
      std::swap(columns.day, columns.clock);
    if (!columns.before && !columns.day) {
      faults.add(row.front().mark,
                 {"the table does not say when", "",
                  "a column `hours before`, or `time` with `dates` stated in the case", ""});
      return std::nullopt;
    }
    return columns;
  }
  const Mark mark = table.rows.empty() ? Mark{} : table.rows.front().front().mark;
  faults.add(mark, {fmt::format("the column '{}' is missing", question.columns.front()), "",
                    "one of: " + joined(question.columns, ", "),
                    "or name the column in the case: `column: ...`"});
  return std::nullopt;
}

bool unit_fits(const LoggerCell& heading, FaultList& faults) {
  const std::string unit = normal_unit(column_unit(heading.text));
  if (unit.empty() || unit == "°C" || unit == "C" || unit == "degC" || unit == "Celsius" ||
      unit == "celsius" || unit == "oC")
    return true;
  faults.add(heading.mark, {"temperatures are in degrees Celsius", unit, "°C",
                            "export the log in °C, or convert the column"});
  return false;
}

/// A number as the table writes it; nothing for a blank.
bool is_blank(const std::string& text) {
  return text.empty() || text == "-" || text == "--" || text == "---" || text == "NaN" ||
         text == "nan" || text == "n/a" || text == "N/A" || text == "NA" || text == "null";
}

std::optional<double> number_of(const LoggerCell& cell, char separator, Measure measure,
                                Range plausible, FaultList& faults) {
  std::string text = cell.text;
  if (separator != ',') std::replace(text.begin(), text.end(), ',', '.');
  const auto value = quantity_of(text, measure, plausible);
  if (const auto* complaint = std::get_if<Complaint>(&value)) {
    faults.add(cell.mark, *complaint);
    return std::nullopt;
  }
  return std::get<double>(value);
}

/// How the days of a table are written: as stated, or as its own days allow.
std::optional<DateOrder> order_of(const std::vector<WrittenTime>& times, Mark mark,
                                  const std::optional<DateOrder>& stated, FaultList& faults) {
  if (times.empty()) return DateOrder::year_first;
  if (times.front().year_first) {
    if (!stated || *stated == DateOrder::year_first) return DateOrder::year_first;
    faults.add(mark, {"the table writes the year first, other than the case states", "",
                      "dates: year first", ""});
    return std::nullopt;
  }
  if (stated && *stated != DateOrder::year_first) return stated;
  const bool day_first = std::any_of(times.begin(), times.end(),
                                     [](const WrittenTime& time) { return time.first > 12; });
  const bool month_first = std::any_of(times.begin(), times.end(),
                                       [](const WrittenTime& time) { return time.second > 12; });
  if (day_first != month_first) return day_first ? DateOrder::day_first : DateOrder::month_first;
  faults.add(mark, {"whether day or month comes first cannot be told from this table", "",
                    "dates: day first", "say in the case, beside `history`: `dates: day first`"});
  return std::nullopt;
}

std::string time_text(const Row& row, const Columns& columns) {
  std::string text = row[*columns.day].text;
  if (columns.clock && *columns.clock < row.size()) text += ' ' + row[*columns.clock].text;
  return text;
}

/// Hours of each row since a fixed day; nothing, with a fault, where any cannot be told.
std::optional<std::vector<double>> stamps_of(const std::vector<const Row*>& rows,
                                             const Columns& columns,
                                             const HistoryQuestion& question, double& read_at,
                                             FaultList& faults) {
  std::vector<WrittenTime> times;
  for (const Row* row : rows) {
    const auto time = written_time_of(time_text(*row, columns));
    if (!time) {
      faults.add((*row)[*columns.day].mark,
                 {"this is no time", time_text(*row, columns),
                  "2026-01-28 07:00, or 28/01/2026 07:00 with `dates: day first`", ""});
      return std::nullopt;
    }
    times.push_back(*time);
  }
  const Mark mark = (*rows.front())[*columns.day].mark;
  const auto order = order_of(times, mark, question.dates, faults);
  if (!order) return std::nullopt;
  std::vector<double> stamps;
  for (std::size_t r = 0; r < times.size(); ++r) {
    const auto stamp = hours_of(times[r], *order);
    if (!stamp) {
      faults.add((*rows[r])[*columns.day].mark,
                 {"there is no such day", time_text(*rows[r], columns), "a day of the calendar",
                  "check `dates` in the case"});
      return std::nullopt;
    }
    stamps.push_back(*stamp);
  }
  read_at = *std::max_element(stamps.begin(), stamps.end());
  if (question.read_at.empty()) return stamps;
  const auto wanted = written_time_of(question.read_at);
  const auto at = wanted ? hours_of(*wanted, wanted->year_first ? DateOrder::year_first : *order)
                         : std::nullopt;
  if (!at) {
    faults.add(mark, {fmt::format("'read at: {}' is no time", question.read_at), question.read_at,
                      "a time as the table writes it", ""});
    return std::nullopt;
  }
  read_at = *at;
  return stamps;
}

/// The rows below the heading that hold a temperature.
std::vector<const Row*> filled_rows(const LoggerTable& table, const Columns& columns,
                                    FaultList& faults) {
  std::vector<const Row*> rows;
  for (std::size_t r = columns.heading + 1; r < table.rows.size(); ++r) {
    const Row& row = table.rows[r];
    const std::size_t needed_cells =
        std::max({columns.value, columns.before.value_or(0), columns.day.value_or(0)}) + 1;
    if (row.size() < needed_cells) {
      faults.add(row.front().mark,
                 {"this row has fewer values than the heading", fmt::format("{}", row.size()),
                  fmt::format("{} at least", needed_cells), ""});
      return {};
    }
    if (!is_blank(row[columns.value].text)) rows.push_back(&row);
  }
  if (rows.empty())
    faults.add(table.rows[columns.heading].front().mark,
               {"the table holds no temperatures", "", "rows below the heading", ""});
  return rows;
}

/// All temperatures up to the readings, the latest first.
std::optional<std::vector<Logged>> logged_of(const LoggerTable& table, const Columns& columns,
                                             const HistoryQuestion& question, FaultList& faults) {
  const std::vector<const Row*> rows = filled_rows(table, columns, faults);
  if (rows.empty()) return std::nullopt;
  std::vector<double> before;
  if (columns.before) {
    for (const Row* row : rows) {
      const auto hours = number_of((*row)[*columns.before], table.separator, Measure::number,
                                   {-1000.0, most_hours}, faults);
      if (!hours) return std::nullopt;
      before.push_back(*hours);
    }
  } else {
    double read_at = 0.0;
    const auto stamps = stamps_of(rows, columns, question, read_at, faults);
    if (!stamps) return std::nullopt;
    for (const double stamp : *stamps) before.push_back(read_at - stamp);
  }
  std::vector<Logged> logged;
  for (std::size_t r = 0; r < rows.size(); ++r) {
    const LoggerCell& cell = (*rows[r])[columns.value];
    const auto value =
        number_of(cell, table.separator, Measure::temperature, {-60.0, 60.0}, faults);
    if (!value) return std::nullopt;
    logged.push_back({before[r], *value, (*rows[r]).front().mark});
  }
  const bool ascending = logged.front().before < logged.back().before;
  for (std::size_t r = 1; r < logged.size(); ++r) {
    const double step = logged[r].before - logged[r - 1].before;
    if (ascending ? step > 0.0 : step < 0.0) continue;
    faults.add(logged[r].mark, {"this row is out of order in time", "",
                                "rows in the order of time, each once", ""});
    return std::nullopt;
  }
  if (!ascending) std::reverse(logged.begin(), logged.end());
  return logged;
}

bool without_gaps(const std::vector<Logged>& logged, FaultList& faults) {
  if (logged.back().before < 0.0 || logged.front().before > longest_gap) {
    faults.add(
        logged.front().mark,
        {"the history does not reach to the readings",
         fmt::format("its last row is {:.0f} h before them",
                     logged.back().before < 0.0 ? logged.back().before : logged.front().before),
         fmt::format("at most {:.0f} h", longest_gap), ""});
    return false;
  }
  for (std::size_t r = 1; r < logged.size(); ++r) {
    const double gap = logged[r].before - logged[r - 1].before;
    if (gap <= longest_gap || logged[r].before < 0.0) continue;
    faults.add(logged[r].mark,
               {fmt::format("the history has a gap of {:.0f} h, from {:.0f} to {:.0f} h before the "
                            "readings",
                            gap, logged[r].before, logged[r - 1].before),
                "", fmt::format("a temperature every {:.0f} h at least", longest_gap),
                "leave out all that lies before the gap, or fill it"});
    return false;
  }
  return true;
}

}  // namespace

std::vector<double> hourly_history(std::string_view text, const HistoryQuestion& question,
                                   FaultList& faults) {
  const std::optional<std::string> plain = plain_text_of(text, faults);
  if (!plain) return {};
  const LoggerTable table = logger_table(*plain);
  const auto columns = columns_of(table, question, faults);
  if (!columns || !unit_fits(table.rows[columns->heading][columns->value], faults)) return {};
  const auto logged = logged_of(table, *columns, question, faults);
  if (!logged || !without_gaps(*logged, faults)) return {};
  std::vector<double> hourly;
  std::size_t r = 0;
  for (double before = 0.0; before <= logged->back().before; before += 1.0) {
    while (r + 1 < logged->size() && (*logged)[r + 1].before < before) ++r;
    const Logged& late = (*logged)[r];
    const Logged& early = (*logged)[std::min(r + 1, logged->size() - 1)];
    const double span = early.before - late.before;
    const double share = span > 0.0 ? std::clamp((before - late.before) / span, 0.0, 1.0) : 0.0;
    hourly.push_back(late.temperature + share * (early.temperature - late.temperature));
  }
  if (hourly.empty()) hourly.push_back(logged->front().temperature);
  return hourly;
}

}  // namespace quoin::cases
