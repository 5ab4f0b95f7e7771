// SPDX-License-Identifier: Apache-2.0
#include "solver/linear/multigrid/arena.hpp"

#include <algorithm>
#include <cstdlib>
#include <cstring>
#include <memory>
#include <new>

#ifdef __linux__
#include <sys/mman.h>
#endif

namespace quoin::solver {

namespace {

constexpr std::size_t alignment = 128;
constexpr std::size_t least_piece = std::size_t{1} << 13;
constexpr std::size_t huge_page = std::size_t{1} << 21;

}  // namespace

/// Not yet zeros: what is never taken need not be.
Arena::Piece Arena::small_piece(std::size_t size) {
  const std::size_t bytes = size + alignment;
  Piece piece(std::malloc(bytes), Release{bytes, false});
  if (piece == nullptr) throw std::bad_alloc();
  return piece;
}

/// Fresh zeros straight from the system, in pages as large as it will give.
Arena::Piece Arena::large_piece(std::size_t size) {
#ifdef __linux__
  const std::size_t bytes = size + huge_page;
  void* memory = mmap(nullptr, bytes, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0);
  if (memory == MAP_FAILED) throw std::bad_alloc();
  madvise(memory, bytes, MADV_HUGEPAGE);  // a wish that may be refused
  return Piece(memory, Release{bytes, true});
#else
  return small_piece(size + huge_page);
#endif
}

Arena::Arena(std::size_t expected) : next_piece_(std::max(expected, least_piece)) {}

void* Arena::take(std::size_t bytes) {
  const std::size_t rounded = (bytes + alignment - 1) / alignment * alignment;
  if (rounded > left_) add_piece(rounded);
  void* taken = free_;
  free_ += rounded;
  left_ -= rounded;
  if (!pieces_.back().get_deleter().mapped) std::memset(taken, 0, rounded);
  return taken;
}

void Arena::add_piece(std::size_t bytes) {
  const std::size_t size = std::max(bytes, next_piece_);
  next_piece_ = std::max(next_piece_ / 8, least_piece);
  pieces_.push_back(size < huge_page ? small_piece(size) : large_piece(size));
  const Piece& piece = pieces_.back();
  const std::size_t boundary = size < huge_page ? alignment : huge_page;
  void* start = piece.get();
  std::size_t space = piece.get_deleter().bytes;
  free_ = static_cast<std::byte*>(std::align(boundary, size, start, space));
  left_ = size;
}

void Arena::Release::operator()(void* memory) const {
#ifdef __linux__
  if (mapped) {
    munmap(memory, bytes);
    return;
  }
#endif
  std::free(memory);
}

}  // namespace quoin::solver
