// SPDX-License-Identifier: Apache-2.0
#include "tools/apart.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <csignal>
#include <cstdint>
#include <cstring>
#include <new>
#include <string_view>
#include <system_error>
#include <utility>

#include "tools/parts.hpp"

namespace quoin::tools {
namespace {

// What is sent begins with one of these and ends with `whole`. Texts are preceded by their length.
constexpr char made = 'f', failed = 'e', no_memory = 'm', whole = '.';

std::string framed(std::string_view text) {
  const std::uint64_t size = text.size();
  std::string result(sizeof size, '\0');
  std::memcpy(result.data(), &size, sizeof size);
  return result.append(text);
}

std::string_view next(std::string_view& message) {
  std::uint64_t size = 0;
  std::memcpy(&size, message.data(), sizeof size);
  const std::string_view text = message.substr(sizeof size, size);
  message.remove_prefix(sizeof size + size);
  return text;
}

void send(int to, std::string_view message) {
  while (!message.empty()) {
    const ssize_t written = write(to, message.data(), message.size());
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return;
    message.remove_prefix(static_cast<std::size_t>(written));
  }
}

/// What the process of its own sends.
std::string message_of(const std::function<std::vector<File>()>& make) {
  try {
    std::string message(1, made);
    for (const File& file : make()) message += framed(file.name) + framed(file.content);
    return message + whole;
  } catch (const std::bad_alloc&) {
    return {no_memory, whole};
  } catch (const std::exception& error) {
    return failed + framed(error.what()) + whole;
  }
}

[[noreturn]] void live(int to, const std::function<std::vector<File>()>& make) {
  prctl(PR_SET_PDEATHSIG, SIGKILL);
  std::signal(SIGPIPE, SIG_DFL);
  const rlimit none{0, 0};
  setrlimit(RLIMIT_CORE, &none);  // its end is told in our words, neither by a dump
  const int nowhere = open("/dev/null", O_WRONLY | O_CLOEXEC);
  if (nowhere >= 0) dup2(nowhere, STDERR_FILENO);  // nor by those of a library
  send(to, message_of(make));
  _exit(0);
}

std::string all_from(int descriptor) {
  std::string text;
  std::array<char, 65536> part{};
  for (;;) {
    const ssize_t count = read(descriptor, part.data(), part.size());
    if (count < 0 && errno == EINTR) continue;
    if (count <= 0) return text;
    text.append(part.data(), static_cast<std::size_t>(count));
  }
}

int end_of(int process) {
  int status = 0;
  while (waitpid(process, &status, 0) < 0 && errno == EINTR) continue;
  return status;
}

}  // namespace

Apart::Apart(const std::function<std::vector<File>()>& make) {
  const auto refuse = [](int reason) {
    throw PartError(fmt::format("pictures cannot be painted: no process can be started for it: {}",
                                std::system_category().message(reason)));
  };
  std::array<int, 2> pipe{};
  if (pipe2(pipe.data(), O_CLOEXEC) != 0) refuse(errno);
  process_ = fork();
  if (process_ == 0) {
    close(pipe[0]);
    live(pipe[1], make);
  }
  const int reason = errno;
  close(pipe[1]);
  reading_ = pipe[0];
  if (process_ < 0) {
    close(reading_);
    refuse(reason);
  }
}

Apart::~Apart() {
  close(reading_);
  if (process_ < 0) return;
  kill(process_, SIGKILL);
  end_of(process_);
}

std::vector<File> Apart::files() {
  const std::string message = all_from(reading_);
  const int status = end_of(std::exchange(process_, -1));
  if (status != 0 || message.empty() || message.back() != whole) {
    throw PartError(fmt::format(
        "pictures cannot be painted: the painting ended by signal {}, as it does where the memory "
        "is not enough",
        WIFSIGNALED(status) ? WTERMSIG(status) : 0));
  }
  std::string_view left(message);
  const char kind = left.front();
  left = left.substr(1, left.size() - 2);
  if (kind == no_memory) throw std::bad_alloc();
  if (kind == failed) throw PartError(std::string(next(left)));
  std::vector<File> files;
  while (!left.empty()) {
    std::string name(next(left));
    files.push_back({std::move(name), std::string(next(left))});
  }
  return files;
}

}  // namespace quoin::tools
