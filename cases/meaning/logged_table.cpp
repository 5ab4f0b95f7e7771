// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/logged_table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>
#include <string>

#include "cases/grammar/csv.hpp"
#include "cases/grammar/logger_times.hpp"
#include "cases/grammar/quantity.hpp"
#include "cases/text/plain_text.hpp"
#include "cases/text/words.hpp"
#include "materials/moist_air.hpp"

namespace quoin::cases {
namespace {

using materials::LoggedReading;
using Rows = std::vector<std::vector<CsvCell>>;

double mean(const std::vector<double>& values) {
  double sum = 0.0;
  for (const double value : values) sum += value;
  return sum / static_cast<double>(values.size());
}

/// The humidity that the mean vapour pressure has at the mean temperature.
double mean_humidity(const std::vector<double>& temperatures,
                     const std::vector<double>& humidities) {
  std::vector<double> pressures;
  for (std::size_t k = 0; k < temperatures.size(); ++k)
    pressures.push_back(humidities[k] * materials::saturation_pressure(temperatures[k]));
  return mean(pressures) / materials::saturation_pressure(mean(temperatures));
}

/// A visitor that reads the columns a logged reading asks for.
class LogColumns : public Vocabulary<LogColumns> {
 public:
  LogColumns(const Rows& rows, FaultList& faults) : rows_(rows), faults_(faults) {}

  void text(std::string_view, std::string&, std::string_view) {}

  void quantity(std::string_view key, std::optional<double>&, Measure measure, Range /*of means*/,
                std::string_view /*about*/) {
    const auto& heading = rows_.front();
    const auto found = std::find_if(heading.begin(), heading.end(),
                                    [&](const CsvCell& cell) { return cell.text == key; });
    if (found == heading.end()) {
      faults_.add(heading.front().mark,
                  {fmt::format("the column '{}' is missing", key), "",
                   "temperature,humidity,outside temperature,outside humidity", ""});
      return;
    }
    const auto column = static_cast<std::size_t>(found - heading.begin());
    const Range plausible = measure == Measure::humidity ? Range{0.05, 1.0} : Range{-40.0, 50.0};
    for (std::size_t row = 1; row < rows_.size(); ++row) {
      const CsvCell& cell = rows_[row][column];
      const auto value = quantity_of(cell.text, measure, plausible);
      if (const auto* complaint = std::get_if<Complaint>(&value)) {
        faults_.add(cell.mark, *complaint);
        return;  // the first of a column tells enough
      }
      columns_[std::string(key)].push_back(std::get<double>(value));
    }
  }

  [[nodiscard]] const std::vector<double>& column(const std::string& key) const {
    return columns_.at(key);
  }

 private:
  const Rows& rows_;
  FaultList& faults_;
  std::map<std::string, std::vector<double>> columns_;
};

/// Hours from the first time of a column to the last, in one order of the day; nothing where a cell
/// is no time or the times do not ascend.
std::optional<double> span_of(const Rows& rows, std::size_t column, DateOrder order) {
  std::optional<double> first, last;
  for (std::size_t row = 1; row < rows.size(); ++row) {
    const auto written = written_time_of(rows[row][column].text);
    const bool fits = written && written->year_first == (order == DateOrder::year_first);
    const auto hours = fits ? hours_of(*written, order) : std::nullopt;
    if (!hours || (last && *hours < *last)) return std::nullopt;
    if (!first) first = hours;
    last = hours;
  }
  return *last - *first;
}

/// Hours that a log covers, where a column of it holds times.
std::optional<double> hours_covered(const Rows& rows) {
  for (std::size_t column = 0; column < rows.front().size(); ++column) {
    for (const DateOrder order :
         {DateOrder::year_first, DateOrder::day_first, DateOrder::month_first}) {
      if (const auto span = span_of(rows, column, order)) return span;
    }
  }
  return std::nullopt;
}

/// Refuses what is no log of a household: it takes days to tell its air from an hour's.
bool is_long_enough(const Rows& rows, FaultList& faults) {
  constexpr std::size_t fewest = 7;      // readings
  constexpr double shortest = 3 * 24.0;  // h; a week is asked for, common practice
  const std::size_t readings = rows.size() - 1;
  const std::optional<double> hours = hours_covered(rows);
  if (readings >= fewest && hours.value_or(shortest) >= shortest) return true;
  faults.add(rows.front().front().mark,
             {"these readings are too few to tell how humid the household keeps its air",
              hours ? fmt::format("{} readings over {:.3g} hours", readings, *hours)
                    : fmt::format("{} readings", readings),
              "readings over a week or more, on three days at least", "state `humidity` instead"});
  return false;
}

/// The means of the text of a table. Returns how many readings they are of; 0 with a fault.
std::size_t read_log(std::string_view text, LoggedReading& logged, FaultList& faults) {
  if (!plain_text_of(text, faults)) return 0;
  const Rows rows = csv_rows(text);
  if (rows.size() < 2) {
    faults.add({}, {"a table of readings has a heading and rows",
                    fmt::format("{} rows with the heading", rows.size()),
                    "temperature,humidity,outside temperature,outside humidity", ""});
    return 0;
  }
  if (!rows_fit(rows, faults) || !is_long_enough(rows, faults)) return 0;
  LogColumns columns(rows, faults);
  describe(columns, logged);
  if (!faults.empty()) return 0;
  const auto& inside = columns.column("temperature");
  const auto& outside = columns.column("outside temperature");
  logged.temperature = mean(inside);
  logged.humidity = mean_humidity(inside, columns.column("humidity"));
  logged.outside_temperature = mean(outside);
  logged.outside_humidity = mean_humidity(outside, columns.column("outside humidity"));
  return inside.size();
}

bool states_means(const LoggedReading& logged) {
  return logged.temperature || logged.humidity || logged.outside_temperature ||
         logged.outside_humidity;
}

void fetch_log(const Named<WrittenSpace>& space, LoggedReading& logged, const Files& files,
               FaultList& faults, std::vector<Remark>& remarks) {
  constexpr double warmest = 15.0;  // degC, as for means that are stated
  const Mark mark = space.node->find(LoggedReading::name)->value.find("table")->value.mark;
  if (states_means(logged)) {
    faults.add(mark, {"what was logged is given twice: as a table and as means", "",
                      "either `table` or the means", "remove one of them"});
    return;
  }
  const std::optional<std::string> text = table_of(logged.table, mark, files, faults);
  if (!text) return;
  FaultList of_table(logged.table, *text);
  const std::size_t readings = read_log(*text, logged, of_table);
  faults.take(of_table);
  if (readings == 0) return;
  if (*logged.outside_temperature > warmest) {
    faults.add(mark, {"the readings were taken in weather that tells nothing of winter",
                      fmt::format("{:.1f} °C outside in the mean", *logged.outside_temperature),
                      fmt::format("a mean of at most {} °C", warmest), ""});
    return;
  }
  remarks.push_back(
      {fmt::format("'{}' holds {} readings; their means: {:.1f} °C and {:.0f} % inside, {:.1f} °C "
                   "and {:.0f} % outside",
                   logged.table, readings, *logged.temperature, 100 * *logged.humidity,
                   *logged.outside_temperature, 100 * *logged.outside_humidity),
       mark.line});
  logged.table.clear();
}

}  // namespace

void fetch_logs(std::vector<Named<WrittenSpace>>& spaces, const Files& files, FaultList& faults,
                std::vector<Remark>& remarks) {
  for (Named<WrittenSpace>& space : spaces) {
    if (!space.value.moisture) continue;
    auto* logged = std::get_if<LoggedReading>(&*space.value.moisture);
    if (logged == nullptr || logged->table.empty()) continue;
    const std::size_t faults_before = faults.met();
    fetch_log(space, *logged, files, faults, remarks);
    if (faults.met() != faults_before) space.value.moisture.reset();  // said already
  }
}

}  // namespace quoin::cases
