// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>

// Sources are compiled for several widths of registers and linked together, so each width has its
// own names.
#if defined(__AVX512F__)
#define QUOIN_LANES registers_of_64_bytes
#elif defined(__AVX__)
#define QUOIN_LANES registers_of_32_bytes
#else
#define QUOIN_LANES registers_of_16_bytes
#endif

namespace quoin::solver {
inline namespace QUOIN_LANES {

#if defined(__AVX512F__)
inline constexpr std::size_t register_bytes = 64;
#elif defined(__AVX__)
inline constexpr std::size_t register_bytes = 32;
#else
inline constexpr std::size_t register_bytes = 16;
#endif

/// The numbers in one cache line, side by side; arithmetic acts on each by itself, so the size of a
/// machine register does not show in the results.
template <typename T>
struct Lanes {
  using Register [[gnu::vector_size(register_bytes), gnu::may_alias]] = T;
  static constexpr std::size_t count = 64 / sizeof(T);
  static constexpr std::size_t registers = 64 / register_bytes;

  template <typename U>
  using Foreign [[gnu::vector_size(register_bytes / sizeof(T) * sizeof(U)), gnu::may_alias]] = U;

  Register part[registers];

  [[gnu::always_inline]] static Lanes all(T value) {
    Lanes result;
    for (auto& p : result.part) p = value - Register{};
    return result;
  }
  /// Reads the numbers that begin here, at a multiple of 64 bytes.
  [[gnu::always_inline]] static Lanes at(const T* values) {
    Lanes result;
    for (std::size_t k = 0; k < registers; ++k) {
      result.part[k] = reinterpret_cast<const Register*>(values)[k];
    }
    return result;
  }
  [[gnu::always_inline]] void write_to(T* values) const {
    for (std::size_t k = 0; k < registers; ++k) {
      reinterpret_cast<Register*>(values)[k] = part[k];
    }
  }
  /// The same from and to numbers of another precision.
  template <typename U>
  [[gnu::always_inline]] static Lanes converted(const U* values) {
    Lanes result;
    for (std::size_t k = 0; k < registers; ++k) {
      result.part[k] =
          __builtin_convertvector(reinterpret_cast<const Foreign<U>*>(values)[k], Register);
    }
    return result;
  }
  template <typename U>
  [[gnu::always_inline]] void convert_to(U* values) const {
    for (std::size_t k = 0; k < registers; ++k) {
      reinterpret_cast<Foreign<U>*>(values)[k] = __builtin_convertvector(part[k], Foreign<U>);
    }
  }

  [[gnu::always_inline]] Lanes& operator+=(const Lanes& other) {
    for (std::size_t k = 0; k < registers; ++k) part[k] += other.part[k];
    return *this;
  }
  [[gnu::always_inline]] Lanes& operator-=(const Lanes& other) {
    for (std::size_t k = 0; k < registers; ++k) part[k] -= other.part[k];
    return *this;
  }
  [[gnu::always_inline]] Lanes& operator*=(const Lanes& other) {
    for (std::size_t k = 0; k < registers; ++k) part[k] *= other.part[k];
    return *this;
  }
  [[gnu::always_inline]] friend Lanes operator+(Lanes a, const Lanes& b) { return a += b; }
  [[gnu::always_inline]] friend Lanes operator-(Lanes a, const Lanes& b) { return a -= b; }
  [[gnu::always_inline]] friend Lanes operator*(Lanes a, const Lanes& b) { return a *= b; }
  [[gnu::always_inline]] friend Lanes operator*(T a, const Lanes& b) { return all(a) * b; }

  /// These where the measure is above the threshold, 0 elsewhere.
  [[gnu::always_inline]] Lanes where_above(T threshold, const Lanes& measure) const {
    Lanes result;
    for (std::size_t k = 0; k < registers; ++k) {
      result.part[k] = measure.part[k] > threshold ? part[k] : Register{};
    }
    return result;
  }
  /// 1 over each positive number, 0 for the others.
  [[gnu::always_inline]] Lanes inverse() const {
    Lanes result;
    for (std::size_t k = 0; k < registers; ++k) {
      result.part[k] = part[k] > T{0} ? T{1} / part[k] : Register{};
    }
    return result;
  }
  [[gnu::always_inline]] T sum() const {
    T result{0};
    for (const auto& p : part) {
      for (std::size_t k = 0; k < register_bytes / sizeof(T); ++k) result += p[k];
    }
    return result;
  }
};

}  // namespace QUOIN_LANES
}  // namespace quoin::solver
