// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "tools/disk/file.hpp"
#include "tools/disk/written_files.hpp"

namespace quoin::tools {

/// Files are first written aside, into a folder whose name only we give:
/// `.<name>.writing-<number>` beside the folder called <name>, `.writing-<number>` within it. One
/// that is there while nobody writes was left by a run that was killed.

/// What such a name begins with.
[[nodiscard]] std::filesystem::path stem_beside(const std::filesystem::path& folder);
[[nodiscard]] std::filesystem::path stem_within(const std::filesystem::path& folder);

/// In a folder aside: files that a run replaced or that it no longer writes.
inline constexpr const char* replaced_name = "old";

/// A new folder aside; gone again with all in it, unless kept.
class Aside {
 public:
  /// Throws: DiskError where it cannot be made, or the umask forbids to write in it.
  explicit Aside(const std::filesystem::path& stem);
  Aside(const Aside&) = delete;
  Aside& operator=(const Aside&) = delete;
  ~Aside();

  [[nodiscard]] const std::filesystem::path& path() const { return path_; }
  void keep() { kept_ = true; }

 private:
  std::filesystem::path path_;
  bool kept_ = false;
};

/// Writes one new file. Throws: DiskError; a full disk may show at any write and at the close.
void write_file(const std::filesystem::path& path, std::string_view content);

/// Writes files and, before them, their list, so that a folder left by a kill tells what is ours in
/// it. Throws: DiskError, also where a signal that HeldSignals notes asks to stop.
void write_files(const std::filesystem::path& folder, const std::vector<File>& files);

/// Takes away a folder aside that belonged to `folder`: what a run wrote goes; anything else goes
/// back into `folder`, and stays where it is if that is not possible.
void take_away(const std::filesystem::path& aside, const std::filesystem::path& folder);

/// Takes away whatever runs that were killed left aside of a folder, there or not.
void tidy(const std::filesystem::path& folder);

}  // namespace quoin::tools
