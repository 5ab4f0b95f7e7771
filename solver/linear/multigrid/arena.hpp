// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <memory>
#include <vector>

namespace quoin::solver {

/// Memory for many arrays that live and die together: asked of the system in few large pieces,
/// which costs far fewer page faults than one piece for each array.
class Arena {
 public:
  /// `expected`: bytes that will be taken in all, roughly.
  explicit Arena(std::size_t expected);

  /// Zeros, aligned to two cache lines. Throws: bad_alloc.
  [[nodiscard]] void* take(std::size_t bytes);

 private:
  struct Release {
    std::size_t bytes = 0;
    bool mapped = false;
    void operator()(void* memory) const;
  };
  using Piece = std::unique_ptr<void, Release>;

  static Piece small_piece(std::size_t size);
  static Piece large_piece(std::size_t size);
  void add_piece(std::size_t bytes);

  std::vector<Piece> pieces_;
  std::size_t next_piece_;
  std::byte* free_ = nullptr;  // of the last piece
  std::size_t left_ = 0;
};

}  // namespace quoin::solver
