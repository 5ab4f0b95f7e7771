// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>
#include <vector>

#include "tests/tools/program.hpp"

namespace quoin::testing {

namespace fs = std::filesystem;

namespace {

bool has(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

/// A case file of this name in a folder; a small wall, so that it is solved at once.
fs::path wall_case(const fs::path& file) {
  std::ofstream(file) << text_of(fs::path(QUOIN_SOURCE_DIR) /
                                 "cases/examples/lock_keepers_house_wall.yaml");
  return file;
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

}  // namespace

TEST_CASE("no help text shows words of the library that reads the command line") {
  const Run all = run("--help");
  CHECK(all.exit == 0);
  for (const char* command : {"", "solve", "check", "new", "materials", "verify", "schema"}) {
    CAPTURE(command);
    CHECK(has(all.out, command));
    const Run help = run(fmt::format("{} --help", command));
    CHECK(help.exit == 0);
    CHECK(has(help.out, "quoin"));
    for (const char* word : {"ENUM", "{", "->", "REQUIRED", "UINT", "TEXT", "INT", "SUBCOMMAND",
                             "Positionals", "FUNC", "BOOLEAN", " in [", "program version"}) {
      CAPTURE(word);
      CHECK_FALSE(has(help.out, word));
    }
  }
  CHECK(has(run("solve --help").out, "--replace"));
  CHECK(has(run("solve --help").out, "multigrid or direct"));
  CHECK(has(run("new --help").out, "wall base"));
}

TEST_CASE("a command line that cannot be understood says what was found and what was expected") {
  struct Wrong {
    const char* arguments;
    const char* found;
    const char* told;
  };
  for (const Wrong& wrong : {
           Wrong{"", "nothing", "solve, check, new"},
           Wrong{"slove x.yaml", "slove", "did you mean 'solve'?"},
           Wrong{"solve", "nothing", "quoin solve CASE"},
           Wrong{"new", "nothing", "quoin new RECIPE"},
           Wrong{"solve x.yaml --jsn", "--jsn", "did you mean '--json'?"},
           Wrong{"solve x.yaml --threads many", "many", "from 1 to 256"},
           Wrong{"solve x.yaml --threads 0", "0", "from 1 to 256"},
           Wrong{"solve x.yaml --threads 1.5", "1.5", "from 1 to 256"},
           Wrong{"solve x.yaml --node-limit 99999999999999999999999", "9999", "from 1000"},
           Wrong{"solve x.yaml --node-limit ''", "found", "from 1000"},
           Wrong{"solve x.yaml --linear-solver foo", "foo", "multigrid or direct"},
           Wrong{"solve x.yaml --linear-solver 1", "1", "multigrid or direct"},
           Wrong{"solve x.yaml -o", "-o", "needs a value"},
           Wrong{"solve x.yaml -o a -o b", "-o", "more than once"},
           Wrong{"solve x.yaml --json=maybe", "--json", "quoin solve --help"},
           Wrong{"verify x.yaml", "x.yaml", "more than the command takes"},
           Wrong{"schema --findngs", "--findngs", "did you mean '--findings'?"},
       }) {
    CAPTURE(wrong.arguments);
    const Run result = run(wrong.arguments);
    CAPTURE(result.notes);
    CHECK(result.exit == 2);
    CHECK(result.out.empty());
    CHECK(result.notes.starts_with("quoin"));
    CHECK(has(result.notes, wrong.found));
    CHECK(has(result.notes, wrong.told));
    for (const char* word :
         {"ENUM", "Check ", "FAILED", "was not expected", "is required", "Could not", "Run with"}) {
      CAPTURE(word);
      CHECK_FALSE(has(result.notes, word));
    }
  }
  const Run steering = run("solve x.yaml \"$(printf -- '--\\033[31m')\"");
  CHECK(steering.exit == 2);
  CHECK_FALSE(has(steering.notes, "\x1B"));
}

TEST_CASE("help and version that cannot be printed end with exit 4") {
  for (const char* arguments : {"--help", "--version", "solve --help"}) {
    const int status = std::system(
        fmt::format("'{}' {} >/dev/full 2>/dev/null", QUOIN_PROGRAM, arguments).c_str());
    CHECK(WEXITSTATUS(status) == 4);
  }
  CHECK(run("--version").out.starts_with("quoin "));
}

TEST_CASE("an output folder that cannot be used is refused before anything is solved") {
  const Scratch scratch;
  std::ofstream(scratch / "file") << "mine";
  fs::create_symlink("nowhere", scratch / "link");
  for (const auto& [folder, told] : {std::pair(std::string(), "no name"),
                                     {(scratch / "file").string(), "not a folder"},
                                     {(scratch / "link").string(), "link to nowhere"},
                                     {(scratch / "file" / "run").string(), "not a folder"}}) {
    CAPTURE(folder);
    const Run result = run(fmt::format("solve {} -o '{}'", example("wall"), folder));
    CHECK(result.exit == 4);
    CHECK(result.out.empty());
    CHECK(has(result.notes, told));
  }
  CHECK(scratch.holds_only({"file", "link"}));
}

TEST_CASE("a file of the user's own in the output folder is kept until asked to be replaced") {
  const Scratch scratch;
  const fs::path folder = scratch / "results";
  fs::create_directory(folder);
  std::ofstream(folder / "report.html") << "mine";
  std::ofstream(folder / "notes.txt") << "mine";
  const std::string command = fmt::format("solve {} -o '{}'", example("wall"), folder.string());
  const Run refused = run(command);
  CHECK(refused.exit == 4);
  CHECK(refused.out.empty());
  CHECK(has(refused.notes, "report.html"));
  CHECK(has(refused.notes, "--replace"));
  CHECK(text_of(folder / "report.html") == "mine");
  CHECK_FALSE(fs::exists(folder / "findings.json"));
  CHECK(run(command + " --replace").exit == 0);
  CHECK(text_of(folder / "report.html") != "mine");
  CHECK(text_of(folder / "notes.txt") == "mine");
  CHECK(run(command).exit == 0);  // now it is of a run
  std::ofstream(folder / "report.html", std::ios::app) << "<!-- my remarks -->";
  CHECK(run(command).exit == 4);
}

TEST_CASE("case files with names that lead elsewhere get folders within the output folder") {
  const Scratch scratch;
  fs::create_directory(scratch / "in");
  std::string files;
  for (const char* name : {"...yaml", "..yaml", ".yaml", "A.yaml", "a.yaml"}) {
    files += fmt::format(" '{}'", wall_case(scratch / "in" / name).string());
  }
  const Run result =
      run(fmt::format("solve --quiet {} -o '{}'", files, (scratch / "deep" / "out").string()));
  CHECK(result.exit == 0);
  CHECK(scratch.holds_only({"in", "deep"}));
  std::size_t folders = 0;
  for (const auto& entry : fs::directory_iterator(scratch / "deep" / "out")) {
    if (!entry.is_directory()) continue;  // the overview
    CHECK(fs::exists(entry.path() / "findings.json"));
    CHECK(entry.path().filename().string().front() != '.');
    ++folders;
  }
  CHECK(folders == 5);
}

TEST_CASE("one faulty case of several does not stop the others and is named at the end") {
  const Scratch scratch;
  std::ofstream(scratch / "bad.yaml") << "quoin: 1\nsection: nonsense\n";
  wall_case(scratch / "first.yaml");
  wall_case(scratch / "last.yaml");
  const std::string files =
      fmt::format("'{}' '{}' '{}'", (scratch / "first.yaml").string(),
                  (scratch / "bad.yaml").string(), (scratch / "last.yaml").string());
  const Run result = run(fmt::format("solve {} -o '{}'", files, (scratch / "out").string()));
  CHECK(result.exit == 2);
  CHECK(fs::exists(scratch / "out" / "first" / "report.html"));
  CHECK(fs::exists(scratch / "out" / "last" / "report.html"));
  CHECK_FALSE(fs::exists(scratch / "out" / "bad"));
  CHECK(has(lines_of(result.notes).back(), "1 of 3 cases failed"));
  CHECK(has(lines_of(result.notes).back(), "bad.yaml"));
  CHECK(run("check " + files).exit == 2);
  // The worst of all: a disk that fails counts for more than a faulty file.
  std::ofstream(scratch / "out" / "last" / "report.html") << "mine";
  CHECK(run(fmt::format("solve {} -o '{}'", files, (scratch / "out").string())).exit == 4);
}

TEST_CASE("findings of several cases are one JSON text a line and of one case as they were") {
  const Run two = run(fmt::format("solve --json {} {}", example("wall"), example("corner")));
  CHECK(two.exit == 0);
  const std::vector<std::string> lines = lines_of(two.out);
  REQUIRE(lines.size() == 2);
  const std::string one = run(fmt::format("solve --json {}", example("corner"))).out;
  CHECK(nlohmann::json::parse(lines[1]) == nlohmann::json::parse(one));
  CHECK(lines_of(one).size() > 100);
  CHECK(nlohmann::json::parse(lines[0]) != nlohmann::json::parse(lines[1]));
}

TEST_CASE("a reader who goes does not lose the files of later cases") {
  const Scratch scratch;
  std::string files;
  for (const char* name : {"a.yaml", "b.yaml", "c.yaml"}) {
    files += fmt::format(" '{}'", wall_case(scratch / name).string());
  }
  const std::string status = (scratch / "status").string();
  const std::string command =
      fmt::format("{{ '{}' solve {} -o '{}'; echo $? >'{}'; }} | head -1 >/dev/null", QUOIN_PROGRAM,
                  files, (scratch / "out").string(), status);
  CHECK(std::system(command.c_str()) == 0);
  CHECK(text_of(status) == "0\n");
  for (const char* name : {"a", "b", "c"}) {
    CHECK(fs::exists(scratch / "out" / name / "report.pdf"));
  }
}

TEST_CASE("under any limit of memory the program ends by itself and leaves whole files or none") {
  std::size_t failed = 0, done = 0;
  for (int megabytes = 20; megabytes <= 200; megabytes += 20) {
    CAPTURE(megabytes);
    const Scratch scratch;
    const Run result =
        run(fmt::format("solve {} --png -o '{}'", example("wall"), (scratch / "out").string()),
            fmt::format("ulimit -v {};", megabytes * 1000));
    CAPTURE(result.notes);
    if (result.exit == 127) continue;  // not even loaded
    CHECK((result.exit == 0 || result.exit == 3));
    failed += result.exit == 3 ? 1 : 0;
    done += result.exit == 0 ? 1 : 0;
    CHECK_FALSE(has(result.notes, "GLib"));
    CHECK_FALSE(has(result.notes, "disk"));
    if (result.exit == 3) {
      CHECK(has(result.notes, "memory"));
      CHECK(scratch.holds_only({}));
    } else {
      CHECK(fs::exists(scratch / "out" / "report.pdf"));
    }
  }
  CHECK(done > 0);
  CHECK(failed > 0);
}

}  // namespace quoin::testing
