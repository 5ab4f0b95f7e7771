// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "cases/grammar/history_table.hpp"
#include "tests/support/within.hpp"

namespace quoin::cases {
namespace {

using testing::WithinAbs;

struct Read {
  std::vector<double> hourly;
  std::vector<Fault> faults;
};

Read read_table(const std::string& text, HistoryQuestion question = {}) {
  if (question.columns.empty()) question.columns = {"outside temperature", "outdoors"};
  FaultList faults("airs.csv", text);
  Read result;
  result.hourly = hourly_history(text, question, faults);
  result.faults = faults.sorted();
  return result;
}

/// The one fault of a table.
std::string fault_of(const std::string& text, const HistoryQuestion& question = {}) {
  const Read read = read_table(text, question);
  REQUIRE(read.faults.size() == 1);
  CHECK(read.hourly.empty());
  return read.faults.front().what;
}

}  // namespace

TEST_CASE("a history is read from the hour of the readings back") {
  const Read read = read_table(
      "hours before,outside temperature,inside temperature\n2,1.0,18\n1,2.0,18\n0,4.0,18\n");
  CHECK(read.faults.empty());
  CHECK(read.hourly == std::vector<double>{4.0, 2.0, 1.0});
}

TEST_CASE("a history may go either way in time") {
  CHECK(read_table("hours before,outside temperature\n0,4\n1,2\n2,1\n").hourly ==
        read_table("hours before,outside temperature\n2,1\n1,2\n0,4\n").hourly);
}

TEST_CASE("loggers write units and quotes and blanks and remarks") {
  const Read read = read_table(
      "\xEF\xBB\xBF"
      "Logger 0815, firmware 3\n"
      "\n"
      "\"Hours before\" , \"Outside temperature [°C]\",\"Humidity (%)\"\n"
      " 3 , \"1.5\" ,80\n"
      "2,,81\n"
      "1, 2.5,82\n"
      "0,3.5,83\n");
  CHECK(read.faults.empty());
  REQUIRE(read.hourly.size() == 4);
  CHECK(read.hourly[2] == WithinAbs{2.0, 1e-12});  // the blank lies between its neighbours
}

TEST_CASE("semicolons bring decimal commas") {
  const Read read = read_table("hours before;outside temperature\n1;2,5\n0;3,5\n");
  CHECK(read.hourly == std::vector<double>{3.5, 2.5});
}

TEST_CASE("times are read with the year first or as stated") {
  const std::vector<double> hourly{3.0, 2.0, 1.0};
  CHECK(read_table("time,outside temperature\n2026-01-27T23:00,1\n2026-01-28 00:00,2\n"
                   "2026-01-28 01:00:00,3\n")
            .hourly == hourly);
  HistoryQuestion day;
  day.columns = {"outside temperature"};
  day.dates = DateOrder::day_first;
  CHECK(read_table("date,time,outside temperature\n03/02/2026,23:00,1\n04/02/2026,00:00,2\n"
                   "04/02/2026,01:00,3\n",
                   day)
            .hourly == hourly);
  HistoryQuestion month = day;
  month.dates = DateOrder::month_first;
  CHECK(read_table("time,outside temperature\n02/03/26 11:00 PM,1\n02/04/26 12:00 AM,2\n"
                   "02/04/26 1:00 AM,3\n",
                   month)
            .hourly == hourly);
}

TEST_CASE("a day that can be told from the table needs no choice") {
  CHECK(read_table("time,outside temperature\n28/01/2026 06:00,1\n28/01/2026 07:00,2\n").hourly ==
        std::vector<double>{2.0, 1.0});
  CHECK(fault_of("time,outside temperature\n03/02/2026 06:00,1\n03/02/2026 07:00,2\n") ==
        "whether day or month comes first cannot be told from this table");
}

TEST_CASE("the time of the readings may lie within the table") {
  HistoryQuestion question;
  question.columns = {"outside temperature"};
  question.read_at = "2026-01-28 07:00";
  CHECK(read_table("time,outside temperature\n2026-01-28 06:00,1\n2026-01-28 07:00,2\n"
                   "2026-01-28 08:00,9\n",
                   question)
            .hourly == std::vector<double>{2.0, 1.0});
}

TEST_CASE("what a table cannot tell is one fault each") {
  CHECK(fault_of("hours before,garden\n0,1\n") == "the column 'outside temperature' is missing");
  CHECK(fault_of("number,outside temperature\n0,1\n") == "the table does not say when");
  CHECK(fault_of("hours before,outside temperature [°F]\n0,41\n") ==
        "temperatures are in degrees Celsius");
  CHECK(fault_of("hours before,outside temperature\n") == "the table holds no temperatures");
  CHECK(fault_of("hours before,outside temperature\n9,1\n2,2\n1,2\n0,3\n") ==
        "the history has a gap of 7 h, from 9 to 2 h before the readings");
  CHECK(fault_of("hours before,outside temperature\n9,1\n8,2\n") ==
        "the history does not reach to the readings");
  CHECK(fault_of("hours before,outside temperature\n2,1\n2,2\n0,3\n") ==
        "this row is out of order in time");
  CHECK(fault_of("hours before,outside temperature\n1,1\n0\n") ==
        "this row has fewer values than the heading");
  CHECK(fault_of("time,outside temperature\nnoon,1\n") == "this is no time");
  CHECK(fault_of("time,outside temperature\n2026-02-30 07:00,1\n") == "there is no such day");
  HistoryQuestion day;
  day.columns = {"outside temperature"};
  day.dates = DateOrder::day_first;
  CHECK(fault_of("time,outside temperature\n2026-01-28 07:00,1\n", day) ==
        "the table writes the year first, other than the case states");
}

}  // namespace quoin::cases
