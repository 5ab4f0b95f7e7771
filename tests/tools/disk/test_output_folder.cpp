// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "tools/disk/aside.hpp"
#include "tools/disk/folder_names.hpp"
#include "tools/disk/output_folder.hpp"
#include "tools/disk/replace.hpp"
#include "tools/disk/written_files.hpp"

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

TEST_CASE("in the folder of an earlier run files are replaced and others stay") {
  const Playground here;
  write_folder(here.path(), {{"a.txt", "old"}});
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
  FileList evil =
      list_of({{"../other.txt", "ours"}, {".hidden", "ours"}, {"deeper/other.txt", "ours"}});
  evil.emplace(std::string(64, 'f'), "missing.txt");
  const std::string list = text_of(evil);
  std::ofstream(here.path() / "run" / list_name) << list;
  CHECK(list_in(here.path() / "run") == FileList{{std::string(64, 'f'), "missing.txt"}});
  write_folder(here.path() / "run", two_files);
  CHECK(fs::exists(here.path() / "other.txt"));
  CHECK(names_in(here.path() / "run") ==
        std::set<std::string>{"a.txt", "b.txt", ".hidden", "deeper"});
  CHECK(fs::exists(here.path() / "run" / "deeper" / "other.txt"));
}

TEST_CASE("the list names every file with its checksum") {
  const Playground here;
  write_folder(here.path(), {{"a.txt", "abc"}});
  const std::string list = content_of(here.path() / list_name);
  // FIPS 180-4, its example of one block
  CHECK(list.substr(list.find('\n') + 1) ==
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad  a.txt\n");
  CHECK(list.front() == '#');  // a remark to programs that read such lists
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
  write_folder(here.path(), {{"a.txt", "old"}});
  fs::create_directory(here.path() / "b.txt");
  CHECK_THROWS_AS(write_folder(here.path(), two_files), DiskError);
  CHECK_THROWS_AS(write_folder(here.path(), two_files, Foreign::replaced), DiskError);
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
  write_folder(here.path(), {{"a.txt", "old"}});
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

/// What a refusal says; empty where there is none.
template <class Function>
std::string refusal_of(Function function) {
  try {
    function();
  } catch (const DiskError& error) {
    return error.what();
  }
  return "";
}

bool has(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

TEST_CASE("a file that no run wrote is refused by name with the remedy and stays") {
  const Playground here;
  std::ofstream(here.path() / "a.txt") << "mine";
  for (const auto& attempt : {refusal_of([&] {
                                check_folder(here.path(), {"a.txt", "b.txt"});
                              }),
                              refusal_of([&] { write_folder(here.path(), two_files); })}) {
    CHECK(has(attempt, "a.txt"));
    CHECK_FALSE(has(attempt, "b.txt"));
    CHECK(has(attempt, "-o"));
    CHECK(has(attempt, "--replace"));
  }
  CHECK(names_in(here.path()) == std::set<std::string>{"a.txt"});
  CHECK(content_of(here.path() / "a.txt") == "mine");
  check_folder(here.path(), {"b.txt"});
  write_folder(here.path(), two_files, Foreign::replaced);
  CHECK(content_of(here.path() / "a.txt") == "first");
}

TEST_CASE("a file of an earlier run that was changed is refused until asked to be replaced") {
  const Playground here;
  write_folder(here.path(), two_files);
  check_folder(here.path(), {"a.txt", "b.txt"});
  std::ofstream(here.path() / "a.txt") << "with my remarks";
  CHECK(has(refusal_of([&] { write_folder(here.path(), two_files); }), "a.txt"));
  CHECK(content_of(here.path() / "a.txt") == "with my remarks");
  write_folder(here.path(), two_files, Foreign::replaced);
  CHECK(content_of(here.path() / "a.txt") == "first");
}

TEST_CASE("a list of checksums of someone else's makes no file ours") {
  const Playground here;
  std::ofstream(here.path() / "notes.txt") << "mine";
  const std::string lines = text_of(list_of({{"notes.txt", "mine"}}));
  std::ofstream(here.path() / list_name) << lines.substr(lines.find('\n') + 1);
  CHECK(has(refusal_of([&] { write_folder(here.path(), two_files); }), list_name));
  write_folder(here.path(), two_files, Foreign::replaced);
  CHECK(content_of(here.path() / "notes.txt") == "mine");
  // The same list with the line by which we know ours makes it ours: the check can tell.
  std::ofstream(here.path() / list_name) << lines;
  CHECK(outdated(here.path(), {}) == std::vector<std::string>{"notes.txt"});
}

TEST_CASE("links and folders of someone else stay and so do their files") {
  const Playground here;
  fs::create_directory(here.path() / "photos");
  std::ofstream(here.path() / "photos" / "damp.jpg") << "mine";
  fs::create_symlink("nowhere", here.path() / "link");
  for (const char* content : {"one", "two"}) {
    write_folder(here.path(), {{"a.txt", content}});
    CHECK(content_of(here.path() / "a.txt") == content);
  }
  CHECK(names_in(here.path()) == std::set<std::string>{"a.txt", "link", "photos"});
  CHECK(content_of(here.path() / "photos" / "damp.jpg") == "mine");
  // A link at the name of a file of ours is not followed.
  fs::rename(here.path() / "link", here.path() / "b.txt");
  CHECK(has(refusal_of([&] { write_folder(here.path(), two_files); }), "b.txt"));
}

TEST_CASE("a place where no folder can be is refused before anything is made") {
  const Playground here;
  std::ofstream(here.path() / "file") << "mine";
  fs::create_symlink("nowhere", here.path() / "link");
  const auto refused = [&](const fs::path& folder) {
    return refusal_of([&] { check_folder(folder, {"a.txt"}); });
  };
  CHECK(has(refused(""), "no name"));
  CHECK(has(refused(here.path() / "file"), "a file, not a folder"));
  CHECK(has(refused(here.path() / "file" / "run"), "not a folder"));
  CHECK(has(refused(here.path() / "link"), "link to nowhere"));
  CHECK(has(refused(here.path() / "link" / "run"), "link to nowhere"));
  CHECK(has(refused(here.path() / std::string(300, 'x')), "too long"));
  CHECK(refused(here.path() / "new" / "run") == "");
  CHECK(refused(here.path() / "run" / ".") == "");
  CHECK(names_in(here.path()) == std::set<std::string>{"file", "link"});
}

TEST_CASE("a folder reached by a link is written where the link leads") {
  const Playground here;
  fs::create_directory(here.path() / "real");
  fs::create_directory_symlink("real", here.path() / "link");
  write_folder(here.path() / "link", two_files);
  write_folder(here.path() / "link", {{"a.txt", "again"}});
  CHECK(fs::is_symlink(here.path() / "link"));
  CHECK(names_in(here.path() / "real") == std::set<std::string>{"a.txt"});
}

TEST_CASE("a folder keeps its permissions when a run replaces another") {
  const Playground here;
  write_folder(here.path() / "run", two_files);
  fs::permissions(here.path() / "run", fs::perms::owner_all);
  write_folder(here.path() / "run", two_files);
  CHECK(fs::status(here.path() / "run").permissions() == fs::perms::owner_all);
}

/// Every way in which a run that was killed may have left the folder.
TEST_CASE(
    "a run takes away what runs that were killed left aside and brings back what is not ours") {
  const Playground here;
  const fs::path folder = here.path() / "run";
  write_folder(folder, {{"a.txt", "old"}, {"gone.txt", "old"}});
  std::ofstream(folder / "notes.txt") << "mine";
  // While writing: the list is complete, the last file is not.
  const fs::path half = stem_beside(folder).concat("-1");
  fs::create_directory(half);
  write_file(half / list_name, text_of(list_of(two_files)));
  write_file(half / "a.txt", "fir");
  // Before anything was written, and with half a list.
  fs::create_directory(stem_beside(folder).concat("-2"));
  fs::create_directory(stem_within(folder).concat("-1"));
  write_file(stem_within(folder).concat("-1") / list_name, "# fi");
  // After the exchange: the old run with a link to what is not ours, and what came in between.
  const fs::path after = stem_beside(folder).concat("-7");
  fs::create_directory(after);
  write_file(after / list_name, text_of(list_of({{"field-dry.svg", "old"}})));
  write_file(after / "field-dry.svg", "old");
  write_file(after / "photo.jpg", "mine too");
  fs::create_hard_link(folder / "notes.txt", after / "notes.txt");
  // Not ours by its name.
  fs::create_directory(stem_beside(folder).concat("-mine"));
  write_folder(folder, two_files);
  CHECK(names_in(folder) == std::set<std::string>{"a.txt", "b.txt", "notes.txt", "photo.jpg"});
  CHECK(content_of(folder / "notes.txt") == "mine");
  CHECK(content_of(folder / "photo.jpg") == "mine too");
  CHECK(names_in(here.path()) == std::set<std::string>{"run", ".run.writing-mine"});
}

TEST_CASE("a kill between two moves in place is put right by the next run") {
  const Playground here;
  const std::vector<File> old{{"a.txt", "old"}, {"c.txt", "old"}};
  write_folder(here.path(), old);
  // As replace_in_place leaves it: the list of both runs, some files moved, others not yet.
  FileList both = list_of(old);
  both.merge(list_of(two_files));
  std::ofstream(here.path() / list_name) << text_of(both);
  const fs::path aside = stem_within(here.path()).concat("-1");
  fs::create_directory(aside);
  fs::create_directory(aside / replaced_name);
  write_file(aside / list_name, text_of(list_of(two_files)));
  write_file(aside / "b.txt", two_files[1].content);
  fs::rename(here.path() / "a.txt", aside / replaced_name / "a.txt");
  write_file(here.path() / "a.txt", two_files[0].content);
  write_folder(here.path(), {{"a.txt", "third"}});
  CHECK(names_in(here.path()) == std::set<std::string>{"a.txt"});
  CHECK(content_of(here.path() / "a.txt") == "third");
}

TEST_CASE("replacing in place and exchanging the whole leave the same folder") {
  for (const bool in_place : {false, true}) {
    CAPTURE(in_place);
    const Playground here;
    write_folder(here.path(), {{"a.txt", "old"}, {"gone.txt", "old"}});
    std::ofstream(here.path() / "notes.txt") << "mine";
    if (in_place) {
      replace_in_place(here.path(), two_files);
    } else {
      REQUIRE(exchange_whole(here.path(), two_files));
    }
    CHECK(names_in(here.path()) == std::set<std::string>{"a.txt", "b.txt", "notes.txt"});
    CHECK(content_of(here.path() / "a.txt") == "first");
    CHECK(list_in(here.path()) == list_of(two_files));
    CHECK(content_of(here.path() / "notes.txt") == "mine");
  }
}

TEST_CASE("a rename that fails in place brings back the old run") {
  const Playground here;
  write_folder(here.path(), {{"a.txt", "old"}, {"gone.txt", "old"}});
  const std::string list = content_of(here.path() / list_name);
  // The folder aside cannot be moved into itself, which the last file asks for.
  CHECK_THROWS_AS(replace_in_place(here.path(), {{"a.txt", "first"}, {".writing-1", "second"}}),
                  DiskError);
  CHECK(names_in(here.path()) == std::set<std::string>{"a.txt", "gone.txt"});
  CHECK(content_of(here.path() / "a.txt") == "old");
  CHECK(content_of(here.path() / list_name) == list);
}

TEST_CASE("a rename that fails in place leaves no list where there was none") {
  const Playground here;
  CHECK_THROWS_AS(replace_in_place(here.path(), {{"a.txt", "first"}, {".writing-1", "second"}}),
                  DiskError);
  CHECK(names_in(here.path()).empty());
  CHECK_FALSE(fs::exists(here.path() / list_name));
}

TEST_CASE("a umask that forbids writing is told and leaves nothing behind") {
  const Playground here;
  const int code = exit_code_of([&] {
    constexpr uid_t nobody = 65534;
    fs::permissions(here.path(), fs::perms::all);
    if (geteuid() == 0 && setuid(nobody) != 0) return 97;  // root may write anywhere
    umask(0777);
    write_folder(here.path() / "run", two_files);
    return 0;
  });
  CHECK(code == 4);
  CHECK(names_in(here.path()).empty());
}

TEST_CASE("a signal that asks to end leaves the old run or the new one and nothing aside") {
  const Playground here;
  const fs::path folder = here.path() / "run";
  write_folder(folder, {{"a.txt", "old"}, {"b.txt", "old"}});
  std::vector<File> many{{"a.txt", "new"}};
  for (int n = 0; n < 50; ++n) many.push_back({"f" + std::to_string(n), std::string(1000, 'x')});
  const pid_t child = fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    prctl(PR_SET_PDEATHSIG, SIGKILL);
    signal(SIGTERM, SIG_DFL);  // the runner of the tests has its own
    for (;;) write_folder(folder, many);
  }
  while (!fs::exists(folder / "f0")) usleep(100);
  kill(child, SIGTERM);
  int status = 0;
  waitpid(child, &status, 0);
  CHECK(WIFSIGNALED(status));
  CHECK(names_in(here.path()) == std::set<std::string>{"run"});
  CHECK(list_in(folder) == list_of(many));
}

TEST_CASE("runs at once into one new folder leave one of them whole") {
  const Playground here;
  const fs::path folder = here.path() / "new" / "run";
  std::vector<pid_t> children;
  for (int run = 0; run < 8; ++run) {
    const pid_t child = fork();
    REQUIRE(child >= 0);
    if (child == 0) {
      std::vector<File> files;
      for (int n = 0; n < 20; ++n) {
        files.push_back({"f" + std::to_string(n), std::string(500, static_cast<char>('a' + run))});
      }
      try {
        write_folder(folder, files);
      } catch (...) {
        _exit(1);
      }
      _exit(0);
    }
    children.push_back(child);
  }
  for (const pid_t child : children) {
    int status = 0;
    waitpid(child, &status, 0);
    CHECK(status == 0);
  }
  const std::string one = content_of(folder / "f0");
  CHECK(names_in(folder).size() == 20);
  for (int n = 0; n < 20; ++n) CHECK(content_of(folder / ("f" + std::to_string(n))) == one);
  CHECK(names_in(here.path() / "new") == std::set<std::string>{"run"});
}

TEST_CASE("a folder is never asked between the list of one run and the files of the next") {
  const Playground here;
  const fs::path folder = here.path() / "run";
  const std::vector<std::string> names{"a.txt", "b.txt", "c.txt"};
  const auto run = [&](char letter) {
    std::vector<File> files;
    for (const std::string& name : names) files.push_back({name, std::string(20'000, letter)});
    return files;
  };
  write_folder(folder, run('a'));
  const pid_t child = fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    prctl(PR_SET_PDEATHSIG, SIGKILL);
    signal(SIGTERM, SIG_DFL);
    for (char letter = 'a';; letter = letter == 'a' ? 'b' : 'a') write_folder(folder, run(letter));
  }
  int refused = 0;
  for (int times = 0; times < 200; ++times) {
    try {
      check_folder(folder, names);
    } catch (const DiskError&) {
      ++refused;
    }
  }
  kill(child, SIGTERM);
  waitpid(child, nullptr, 0);
  CHECK(refused == 0);
}

TEST_CASE("a folder for a case file is named after it and can lead nowhere else") {
  CHECK(folder_name("cases/corner.yaml") == "corner");
  CHECK(folder_name("Küche 1.OG.yaml") == "Küche 1.OG");
  CHECK(folder_name("-") == "case");
  for (const char* awkward : {"...yaml", "..yaml", ".yaml", "a/..yaml", "..", ".", "", "a/",
                              "... .yaml", "-.yaml", "~.yaml"}) {
    CAPTURE(awkward);
    const std::string name = folder_name(awkward);
    CHECK((name == "case" || name == "yaml"));
  }
  CHECK(folder_name(".hidden.yaml") == "hidden");
  CHECK(folder_name("-rf.yaml") == "rf");
  CHECK(folder_name("..\\..\\a:b.yaml") == "a-b");
  CHECK(folder_name("red\x1B[31m\x07.yaml") == "red-[31m-");
  CHECK(folder_name("a\nb\xFF.yaml") == "a b-");
  CHECK(folder_name("end. .yaml") == "end");
  CHECK(folder_name(std::string(250, 'x')).size() == 200);
}

TEST_CASE("folders of several case files are all different, also without capital letters") {
  using Names = std::vector<std::string>;
  CHECK(folder_names({"a/x.yaml", "b/X.yaml", "x.yml", "x-2.yaml"}) ==
        Names{"x", "X-2", "x-3", "x-2-2"});
  CHECK(folder_names({"...yaml", "..yaml", "-"}) == Names{"case", "case-2", "case-3"});
}

}  // namespace
