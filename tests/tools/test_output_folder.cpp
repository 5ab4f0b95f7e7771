// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "tests/tools/by_hand.hpp"
#include "tools/output_folder.hpp"
#include "tools/written_files.hpp"

using namespace quoin;
using namespace quoin::tools;
namespace fs = std::filesystem;

namespace {

/// A folder of the test's own, gone when it ends.
class Playground {
 public:
  Playground() {
    std::string name = (fs::temp_directory_path() / "quoin-test-XXXXXX").string();
    REQUIRE(mkdtemp(name.data()) != nullptr);
    path_ = name;
  }
  Playground(const Playground&) = delete;
  Playground& operator=(const Playground&) = delete;
  ~Playground() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  [[nodiscard]] const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

/// All but the list of files, which every run leaves.
std::set<std::string> names_in(const fs::path& folder) {
  std::set<std::string> names;
  for (const auto& entry : fs::directory_iterator(folder)) names.insert(entry.path().filename());
  names.erase(std::string(list_name));
  return names;
}

std::string content_of(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

const std::vector<File> two_files{{"a.txt", "first"}, {"b.txt", std::string(100000, 'b')}};

TEST_CASE("a new folder appears with all its files, and folders above it that were missing") {
  const Playground here;
  write_folder(here.path() / "new" / "run", two_files);
  CHECK(names_in(here.path() / "new") == std::set<std::string>{"run"});
  CHECK(names_in(here.path() / "new" / "run") == std::set<std::string>{"a.txt", "b.txt"});
  CHECK(content_of(here.path() / "new" / "run" / "a.txt") == "first");
  CHECK(content_of(here.path() / "new" / "run" / "b.txt") == std::string(100000, 'b'));
}

TEST_CASE("a new folder may be written with a slash at its end") {
  const Playground here;
  write_folder(here.path() / "run" / "", two_files);
  CHECK(names_in(here.path() / "run") == std::set<std::string>{"a.txt", "b.txt"});
}

TEST_CASE("in an existing folder files are replaced and others stay") {
  const Playground here;
  std::ofstream(here.path() / "a.txt") << "old";
  std::ofstream(here.path() / "notes.txt") << "mine";
  write_folder(here.path(), two_files);
  CHECK(names_in(here.path()) == std::set<std::string>{"a.txt", "b.txt", "notes.txt"});
  CHECK(content_of(here.path() / "a.txt") == "first");
  CHECK(content_of(here.path() / "notes.txt") == "mine");
}

TEST_CASE("a run into the folder of an earlier one takes away what it no longer writes") {
  const Playground here;
  write_folder(here.path(), {{"field-old.svg", "old"}, {"a.txt", "old"}});
  write_folder(here.path(), two_files);
  CHECK(names_in(here.path()) == std::set<std::string>{"a.txt", "b.txt"});
  write_folder(here.path(), {{"a.txt", "third"}});
  CHECK(names_in(here.path()) == std::set<std::string>{"a.txt"});
}

TEST_CASE("a file of an earlier run that someone changed since stays, and so does a link") {
  const Playground here;
  write_folder(here.path(), {{"report.txt", "ours"}, {"linked.txt", "ours"}});
  std::ofstream(here.path() / "report.txt") << "with my remarks";
  fs::rename(here.path() / "linked.txt", here.path() / "mine.txt");
  fs::create_symlink("mine.txt", here.path() / "linked.txt");
  write_folder(here.path(), two_files);
  CHECK(names_in(here.path()) ==
        std::set<std::string>{"a.txt", "b.txt", "report.txt", "linked.txt", "mine.txt"});
}

TEST_CASE("a list that names files elsewhere takes nothing away") {
  const Playground here;
  fs::create_directory(here.path() / "run");
  std::ofstream(here.path() / "other.txt") << "ours";
  std::ofstream(here.path() / "run" / ".hidden") << "ours";
  fs::create_directory(here.path() / "run" / "deeper");
  std::ofstream(here.path() / "run" / "deeper" / "other.txt") << "ours";
  const std::string list =
      list_of({{"../other.txt", "ours"}, {".hidden", "ours"}, {"deeper/other.txt", "ours"}}) +
      "no checksum\n" + std::string(64, 'f') + "  missing.txt\n";
  std::ofstream(here.path() / "run" / list_name) << list;
  write_folder(here.path() / "run", two_files);
  CHECK(fs::exists(here.path() / "other.txt"));
  CHECK(names_in(here.path() / "run") ==
        std::set<std::string>{"a.txt", "b.txt", ".hidden", "deeper"});
  CHECK(fs::exists(here.path() / "run" / "deeper" / "other.txt"));
}

TEST_CASE("the list names every file with its checksum") {
  const Playground here;
  write_folder(here.path(), {{"a.txt", "abc"}});
  // FIPS 180-4, its example of one block
  CHECK(content_of(here.path() / list_name) ==
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad  a.txt\n");
}

TEST_CASE("files and folders have the permissions that others have") {
  const Playground here;
  const mode_t mask = umask(022);
  write_folder(here.path() / "run", two_files);
  umask(mask);
  struct stat found {};
  REQUIRE(stat((here.path() / "run").c_str(), &found) == 0);
  CHECK((found.st_mode & 0777) == 0755);
  REQUIRE(stat((here.path() / "run" / "a.txt").c_str(), &found) == 0);
  CHECK((found.st_mode & 0777) == 0644);
}

TEST_CASE("a path that is a file is refused by name and stays as it was") {
  const Playground here;
  std::ofstream(here.path() / "run") << "a file";
  try {
    write_folder(here.path() / "run", two_files);
    FAIL("wrote into a file");
  } catch (const DiskError& error) {
    CHECK(error.path == here.path() / "run");
    CHECK(std::string(error.what()).find("Not a directory") != std::string::npos);
  }
  CHECK_THROWS_AS(write_folder(here.path() / "run" / "deeper", two_files), DiskError);
  CHECK(content_of(here.path() / "run") == "a file");
  CHECK(names_in(here.path()) == std::set<std::string>{"run"});
}

TEST_CASE("a folder in the way of a file stops the run before anything is replaced") {
  const Playground here;
  std::ofstream(here.path() / "a.txt") << "old";
  fs::create_directory(here.path() / "b.txt");
  CHECK_THROWS_AS(write_folder(here.path(), two_files), DiskError);
  CHECK(content_of(here.path() / "a.txt") == "old");
  CHECK(names_in(here.path()) == std::set<std::string>{"a.txt", "b.txt"});
}

/// Runs a function in a child process; its exit code.
template <class Function>
int exit_code_of(Function function) {
  const pid_t child = fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    int code = 99;
    try {
      code = function();
    } catch (const DiskError&) {
      code = 4;
    } catch (...) {
      code = 98;
    }
    _exit(code);
  }
  int status = 0;
  waitpid(child, &status, 0);
  return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

/// Files may not grow beyond this in the child: a disk that fills up.
int write_on_full_disk(const fs::path& folder) {
  signal(SIGXFSZ, SIG_IGN);
  const rlimit limit{50000, 50000};
  if (setrlimit(RLIMIT_FSIZE, &limit) != 0) return 97;
  write_folder(folder, two_files);
  return 0;
}

TEST_CASE("a disk that fills up leaves nothing of a new folder") {
  const Playground here;
  CHECK(exit_code_of([&] { return write_on_full_disk(here.path() / "new" / "run"); }) == 4);
  CHECK(names_in(here.path()).empty());
}

TEST_CASE("a disk that fills up leaves an existing folder as it was") {
  const Playground here;
  std::ofstream(here.path() / "a.txt") << "old";
  CHECK(exit_code_of([&] { return write_on_full_disk(here.path()); }) == 4);
  CHECK(names_in(here.path()) == std::set<std::string>{"a.txt"});
  CHECK(content_of(here.path() / "a.txt") == "old");
}

TEST_CASE("a folder that may not be written is refused and stays as it was") {
  const Playground here;
  fs::create_directory(here.path() / "locked");
  const auto write_as_other = [&](const fs::path& folder) {
    constexpr uid_t nobody = 65534;
    if (geteuid() == 0 && setuid(nobody) != 0) return 97;  // root may write anywhere
    write_folder(folder, two_files);
    return 0;
  };
  fs::permissions(here.path(),
                  fs::perms::owner_all | fs::perms::group_exec | fs::perms::others_exec);
  fs::permissions(here.path() / "locked", fs::perms::owner_read | fs::perms::owner_exec |
                                              fs::perms::group_read | fs::perms::group_exec |
                                              fs::perms::others_read | fs::perms::others_exec);
  CHECK(exit_code_of([&] { return write_as_other(here.path() / "locked"); }) == 4);
  CHECK(exit_code_of([&] { return write_as_other(here.path() / "locked" / "new"); }) == 4);
  CHECK(names_in(here.path() / "locked").empty());
  fs::permissions(here.path() / "locked", fs::perms::all);
  CHECK(exit_code_of([&] { return write_as_other(here.path() / "locked"); }) == 0);
}

TEST_CASE("names of variants make different file names of plain letters") {
  Results results = testing::results_by_hand();
  const auto named = [&](std::vector<std::string> names) {
    results.variants.resize(names.size(), results.variants.front());
    for (std::size_t v = 0; v < names.size(); ++v) results.variants[v].variant.name = names[v];
    return file_stems(results.variants);
  };
  using Stems = std::vector<std::string>;
  CHECK(named({"as found", "As  found!", "as-found"}) ==
        Stems{"as-found", "as-found-2", "as-found-3"});
  CHECK(named({"../../etc/passwd", "a/b", "CON:"}) == Stems{"etc-passwd", "a-b", "con"});
  CHECK(named({"", "家", "\xF0\x9F\x94\xA5"}) == Stems{"variant", "variant-2", "variant-3"});
  CHECK(named({std::string(10000, 'x')})[0].size() <= 60);
  CHECK(named({"a-2", "a", "a"}) == Stems{"a-2", "a", "a-3"});
}

TEST_CASE("all outputs together write each file once") {
  const auto files = files_of(testing::results_by_hand());
  std::set<std::string> names;
  for (const File& file : files) {
    CHECK(names.insert(file.name).second);
    CHECK_FALSE(file.content.empty());
  }
  CHECK(names == std::set<std::string>{"findings.json", "report.html", "report.pdf", "surface.csv",
                                       "section.svg", "surface.svg", "compare.svg",
                                       "field-as-found.svg", "field-dried-out.svg",
                                       "field-as-found.vtr", "field-dried-out.vtr", "fields.vtm"});
}

}  // namespace
