// SPDX-License-Identifier: Apache-2.0
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <utility>

#include "tools/disk/aside.hpp"
#include "tools/disk/disk_error.hpp"
#include "tools/disk/replace.hpp"

namespace quoin::tools {
namespace {

namespace fs = std::filesystem;

/// Renames that are undone, last first, unless all of them are done.
class Moves {
 public:
  Moves() = default;
  Moves(const Moves&) = delete;
  Moves& operator=(const Moves&) = delete;
  ~Moves() {
    for (auto move = done_.rbegin(); move != done_.rend(); ++move) {
      std::rename(move->second.c_str(), move->first.c_str());
    }
  }
  void move(const fs::path& from, const fs::path& to) {
    if (std::rename(from.c_str(), to.c_str()) != 0) throw DiskError(to, errno);
    done_.emplace_back(from, to);
  }
  void keep() { done_.clear(); }

 private:
  std::vector<std::pair<fs::path, fs::path>> done_;
};

bool is_there(const fs::path& path) { return fs::exists(fs::symlink_status(path)); }

/// The list of both runs takes the place of that of the old one, in one step. The old one is kept
/// as `kept`.
void announce(const fs::path& folder, const std::vector<File>& files, const fs::path& made,
              const fs::path& kept) {
  FileList both = list_in(folder);
  both.merge(list_of(files));
  write_file(made, text_of(both));
  if (is_there(folder / list_name)) {
    std::ifstream stream(folder / list_name, std::ios::binary);
    write_file(kept, std::string{std::istreambuf_iterator<char>(stream), {}});
  }
  if (std::rename(made.c_str(), (folder / list_name).c_str()) != 0) {
    throw DiskError(folder / list_name, errno);
  }
}

}  // namespace

void replace_in_place(const fs::path& folder, const std::vector<File>& files) {
  const Aside aside(stem_within(folder));
  write_files(aside.path(), files);
  const fs::path old = aside.path() / replaced_name;
  if (mkdir(old.c_str(), 0777) != 0) throw DiskError(old, errno);
  const std::vector<std::string> gone = outdated(folder, files);
  const fs::path list = folder / list_name, old_list = old / list_name;
  announce(folder, files, old / "both", old_list);
  try {
    Moves moves;
    for (const std::string& name : gone) moves.move(folder / name, old / name);
    for (const File& file : files) {
      if (is_there(folder / file.name)) moves.move(folder / file.name, old / file.name);
      moves.move(aside.path() / file.name, folder / file.name);
    }
    if (std::rename((aside.path() / list_name).c_str(), list.c_str()) != 0) {
      throw DiskError(list, errno);
    }
    moves.keep();
  } catch (const DiskError&) {
    if (is_there(old_list)) {
      std::rename(old_list.c_str(), list.c_str());
    } else {
      unlink(list.c_str());
    }
    throw;
  }
}

}  // namespace quoin::tools
