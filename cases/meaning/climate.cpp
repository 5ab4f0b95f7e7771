// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/climate.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "cases/grammar/csv.hpp"
#include "cases/grammar/month_column.hpp"
#include "cases/grammar/quantity.hpp"
#include "cases/text/plain_text.hpp"
#include "cases/text/sha256.hpp"
#include "cases/text/words.hpp"

namespace quoin::cases {
namespace {

constexpr std::size_t months = 12;

/// A visitor that fills the lists of a climate from the columns of a table.
class Columns : public Vocabulary<Columns> {
 public:
  /// `order`: which row holds which month.
  Columns(const std::vector<std::vector<CsvCell>>& rows, const std::array<std::size_t, 12>& order,
          FaultList& faults)
      : rows_(rows), order_(order), faults_(faults) {}

  void text(std::string_view, std::string&, std::string_view) {}

  void months(std::string_view key, std::optional<ByMonth>& values, Measure measure,
              Range plausible, std::string_view /*about*/) {
    known_.emplace_back(key);
    const auto& heading = rows_.front();
    const auto found = std::find_if(heading.begin(), heading.end(),
                                    [&](const CsvCell& cell) { return cell.text == key; });
    if (found == heading.end()) return;
    const auto column = static_cast<std::size_t>(found - heading.begin());
    ByMonth read{};
    for (std::size_t month = 0; month < read.size(); ++month) {
      const std::vector<CsvCell>& row = rows_[order_[month]];
      if (column >= row.size()) return;  // said already
      const auto value = quantity_of(row[column].text, measure, plausible);
      if (const auto* complaint = std::get_if<Complaint>(&value)) {
        faults_.add(row[column].mark, *complaint);
      } else {
        read[month] = std::get<double>(value);
      }
    }
    values = read;
  }

  /// Says which columns were not asked for, but for `month`.
  void finish() {
    for (const CsvCell& cell : rows_.front()) {
      if (cell.text == "month" ||
          std::find(known_.begin(), known_.end(), cell.text) != known_.end())
        continue;
      faults_.add(cell.mark, [&]() -> Complaint {
        return {fmt::format("unknown column '{}'", cell.text), std::string(cell.text),
                "month; " + joined(known_, ", "), did_you_mean(cell.text, known_)};
      });
    }
  }

 private:
  const std::vector<std::vector<CsvCell>>& rows_;
  const std::array<std::size_t, 12>& order_;
  FaultList& faults_;
  std::vector<std::string> known_;
};

/// Fills the lists of a climate from the text of a table.
void read_table(std::string_view text, WrittenClimate& climate, FaultList& faults) {
  const auto plain = plain_text_of(text, faults);
  if (!plain) return;
  const auto rows = csv_rows(text);
  if (!rows_fit(rows, faults)) return;
  if (rows.size() != months + 1) {
    faults.add({}, {"a table of a year has a heading and twelve rows",
                    fmt::format("{} rows with the heading", rows.size()),
                    "month,outside temperature,outside humidity", ""});
    return;
  }
  const auto order = rows_of_months(rows, faults);
  if (!order) return;
  Columns columns(rows, *order, faults);
  describe(columns, climate);
  columns.finish();
}

bool has_lists(const WrittenClimate& climate) {
  return climate.outside_temperature || climate.outside_humidity || climate.inside_temperature ||
         climate.inside_humidity;
}

Mark mark_of(const Entry& entry, std::string_view key) {
  const Entry* found = entry.value.find(key);
  return found == nullptr ? entry.mark : found->value.mark;
}

/// Replaces the name of a table by what it holds. Returns the SHA-256 of the file.
std::string fetch_table(WrittenClimate& climate, const Entry& entry, const Files& files,
                        FaultList& faults) {
  const Mark mark = mark_of(entry, "table");
  if (has_lists(climate)) {
    faults.add(mark, {"the climate is given twice: as a table and in lists", "",
                      "either `table` or the lists", "remove one of them"});
    return {};
  }
  const std::optional<std::string> text = table_of(climate.table, mark, files, faults);
  if (!text) return {};
  FaultList of_table(climate.table, *text);
  read_table(*text, climate, of_table);
  faults.take(of_table);
  return sha256(*text);
}

}  // namespace

std::optional<Climate> climate_of(const WrittenClimate& written, const Entry& entry,
                                  const Per<SpaceId, Space>& spaces, const Files& files,
                                  FaultList& faults) {
  const std::size_t faults_before = faults.met();
  WrittenClimate climate = written;
  Climate result;
  result.source = climate.source;
  result.table = climate.table;
  if (!climate.table.empty()) result.sha256 = fetch_table(climate, entry, files, faults);
  if (faults.met() != faults_before) return std::nullopt;
  for (const auto& [key, values] : {std::pair("outside temperature", &climate.outside_temperature),
                                    std::pair("outside humidity", &climate.outside_humidity)}) {
    if (*values || entry.value.find(key) != nullptr) continue;
    faults.add(climate.table.empty() ? entry.mark : mark_of(entry, "table"),
               {fmt::format("'{}' is missing in the climate", key), "",
                fmt::format("{}: [January to December]", key),
                climate.table.empty() ? "" : "add the column to the table"});
  }
  const bool outside = std::any_of(spaces.begin(), spaces.end(), [](const Space& space) {
    return space.is == SpaceKind::outside;
  });
  if (!outside) {
    faults.add(entry.mark, {"a climate needs a space that is outside", "", "is: outside", ""});
  }
  if (faults.met() != faults_before || !climate.outside_temperature || !climate.outside_humidity)
    return std::nullopt;
  result.outside_temperature = *climate.outside_temperature;
  result.outside_humidity = *climate.outside_humidity;
  result.inside_temperature = climate.inside_temperature;
  result.inside_humidity = climate.inside_humidity;
  return result;
}

}  // namespace quoin::cases
