// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>
#include <sys/prctl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <atomic>
#include <csignal>
#include <optional>
#include <set>
#include <string>
#include <thread>

#include "tests/tools/program.hpp"
#include "tools/disk/disk_error.hpp"
#include "tools/disk/locks.hpp"
#include "tools/sweep/database.hpp"
#include "tools/sweep/gathered.hpp"
#include "tools/sweep/sweep.hpp"

// Several programs at one sweep: runs, and whoever reads its files meanwhile.
namespace {

using namespace quoin;
using quoin::testing::Scratch;
namespace fs = std::filesystem;

constexpr const char* corner = R"(quoin: 1
title: Corner, invented
spaces:
  hall: {is: inside, temperature: 20, humidity: 50}
  yard: {is: outside, temperature: -5, humidity: 90}
section:
  corner:
    layers: [{material: common brick, thickness: 327}]
)";

std::string sweep_over(const std::string& axis) {
  return "vary: 1\ncase: corner.yaml\nover:\n  " + axis + "\ntable: [coldest]\n";
}

const std::string few = sweep_over("spaces/yard/temperature: [-10, -5, 0, 5]");

using Tell = std::function<void(const tools::SweepProgress&)>;

tools::SweepProgress run(
    const fs::path& folder, const std::string& text, const Tell& tell = [](const auto&) {},
    const cases::Files& files = {}, const std::string& source = corner) {
  const cases::Vary vary = cases::vary_of(
      text, "sweep.yaml", [&](const std::string&) { return std::optional(source); },
      tools::sweep_column_names());
  return tools::run_sweep({vary, text, files, folder, {}, 1, {}}, tell, [] { return false; });
}

std::string csv_of(const fs::path& folder) {
  std::string all;
  tools::Gathered gathered(folder);
  tools::write_csv(gathered, [&](const std::string& line) { all += line; });
  return all;
}

TEST_CASE("two runs of one part take turns and the second finds all rows there") {
  const Scratch scratch;
  std::atomic<bool> waiting = false;
  tools::SweepProgress second;
  std::thread other;
  const auto first = run(scratch / "rows", few, [&](const tools::SweepProgress&) {
    if (other.joinable()) return;
    other = std::thread([&] {
      second = run(scratch / "rows", few, [&](const tools::SweepProgress& progress) {
        waiting = waiting || progress.waiting;
      });
    });
    while (!waiting) std::this_thread::yield();
  });
  REQUIRE(other.joinable());
  other.join();
  CHECK(first.solved_now == 4);
  CHECK(second.were_there == 4);
  CHECK(second.solved_now == 0);
  // Nothing is left of the turns.
  std::set<std::string> names;
  for (const auto& entry : fs::directory_iterator(scratch / "rows"))
    names.insert(entry.path().filename().string());
  CHECK(names == std::set<std::string>{tools::part_file({})});
}

TEST_CASE("a lock that a killed run left is in no one's way") {
  const Scratch scratch;
  const pid_t child = fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    const tools::FileLock lock(scratch / "a.lock", [] {});
    kill(getpid(), SIGKILL);
  }
  waitpid(child, nullptr, 0);
  CHECK(fs::exists(scratch / "a.lock"));
  bool waited = false;
  {
    const tools::FileLock lock(scratch / "a.lock", [&] { waited = true; });
    CHECK(lock.held());
  }
  CHECK_FALSE(waited);
  CHECK_FALSE(fs::exists(scratch / "a.lock"));
}

TEST_CASE("a lock is held by one at a time however fast it changes hands") {
  const Scratch scratch;
  std::atomic<int> inside = 0, most = 0, turns = 0;
  std::vector<std::thread> threads;
  for (int t = 0; t < 4; ++t) {
    threads.emplace_back([&] {
      for (int n = 0; n < 50; ++n) {
        const tools::FileLock lock(scratch / "a.lock", [] {});
        most = std::max(most.load(), ++inside);
        ++turns;
        std::this_thread::yield();
        --inside;
      }
    });
  }
  for (std::thread& thread : threads) thread.join();
  CHECK(turns == 200);
  CHECK(most == 1);
}

TEST_CASE("whoever reads the rows all the while stops no run and costs it no row") {
  const Scratch scratch;
  std::optional<tools::Database> reader;
  int tries = 0;
  const auto progress = run(scratch / "rows", few, [&](const tools::SweepProgress& now) {
    if (!reader) {
      reader.emplace(scratch / "rows" / tools::part_file({}), tools::Database::Use::read);
      reader->run("BEGIN; SELECT count(*) FROM rows");
    }
    // All is solved and cannot be made sure of: told again and again until the reader goes.
    if (now.done == now.rows && ++tries == 4) reader->run("COMMIT");
  });
  CHECK(tries >= 4);
  CHECK(progress.solved_now == 4);
  CHECK(run(scratch / "rows", few).were_there == 4);
}

TEST_CASE("rows of a state that changes while they are gathered are refused and not mixed") {
  const Scratch scratch;
  // More than are read at a time.
  const std::string many = sweep_over("spaces/yard/temperature: {from: -10, to: 2, step: 0.01}");
  CHECK(run(scratch / "rows", many).done == 1201);
  tools::Gathered gathered(scratch / "rows");
  std::size_t taken = 0;
  const auto change = [&](const tools::StoredRow&) {
    if (taken++ == 0) run(scratch / "rows", few);
  };
  const auto ignore = [](std::uint64_t, std::uint64_t) {};
  CHECK_THROWS_AS(gathered.each(change, ignore), tools::DiskError);
  CHECK(taken < 1201);
  // Without a change all of them come.
  run(scratch / "rows", many);
  tools::Gathered again(scratch / "rows");
  std::size_t rows = 0;
  again.each([&](const tools::StoredRow&) { ++rows; }, ignore);
  CHECK(rows == 1201);
}

TEST_CASE("a folder is gathered in one state or the other while runs change it") {
  const Scratch scratch;
  const std::string one = sweep_over("spaces/yard/temperature: [-10, -5]");
  const std::string other = sweep_over("spaces/hall/temperature: [16, 22]");
  run(scratch / "rows", one);
  const std::string csv_of_one = csv_of(scratch / "rows");
  run(scratch / "rows", other);
  const std::string csv_of_other = csv_of(scratch / "rows");
  REQUIRE(csv_of_one != csv_of_other);
  const pid_t child = fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    prctl(PR_SET_PDEATHSIG, SIGKILL);
    signal(SIGTERM, SIG_DFL);
    for (;;) {
      run(scratch / "rows", one);
      run(scratch / "rows", other);
    }
  }
  const std::vector<std::string> wholes{csv_of_one, csv_of_other};
  const auto lines = [](const std::string& csv) {
    return std::count(csv.begin(), csv.end(), '\n');
  };
  for (int times = 0; times < 100; ++times) {
    std::string found;
    try {
      found = csv_of(scratch / "rows");
    } catch (const tools::DiskError&) {
      continue;  // asked to gather again
    }
    // One of them, or its first rows while the others are not there yet.
    CAPTURE(found);
    const std::string head = found.substr(0, found.find('\n') + 1);
    const bool known = std::any_of(wholes.begin(), wholes.end(), [&](const std::string& whole) {
      if (whole.find(head) != 0) return false;
      for (std::size_t at = 0; at < found.size(); at = found.find('\n', at) + 1) {
        if (whole.find(found.substr(at, found.find('\n', at) + 1 - at)) == std::string::npos)
          return false;
      }
      return lines(found) <= lines(whole);
    });
    CHECK(known);
  }
  kill(child, SIGTERM);
  waitpid(child, nullptr, 0);
}

/// The climate of a year in a file that the case names.
TEST_CASE("a table that changed or appeared makes rows ones that are yet to be solved") {
  const Scratch scratch;
  const std::string source = std::string(corner) + "climate: {table: year.csv}\n";
  const auto year = [](const char* outside) {
    std::string table = "# invented\nmonth,outside temperature,outside humidity\n";
    for (int month = 1; month <= 12; ++month)
      table += std::to_string(month) + "," + outside + ",80\n";
    return table;
  };
  std::optional<std::string> table;
  const auto solved = [&](const char* folder) {
    return run(
        scratch / folder, few, [](const auto&) {},
        [&](const std::string& name) { return name == "year.csv" ? table : std::nullopt; }, source);
  };
  CHECK(solved("rows").wrong == 4);
  table = year("8");
  const auto first = solved("rows");
  CHECK(first.were_there == 0);
  CHECK(first.solved_now == 4);
  CHECK(solved("rows").were_there == 4);
  table = year("2");
  CHECK(solved("rows").were_there == 0);
  // What was solved with the first table is known by its key.
  table = year("8");
  const auto back = solved("rows");
  CHECK(back.were_there == 4);
  CHECK(back.solved_now == 0);
  solved("fresh");
  CHECK(csv_of(scratch / "rows") == csv_of(scratch / "fresh"));
}

}  // namespace
