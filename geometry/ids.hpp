// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <compare>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <utility>
#include <vector>

namespace quoin::geometry {

/// A typed index: a region cannot be mistaken for a space.
template <class Tag>
struct Id {
  static constexpr std::uint32_t none = std::numeric_limits<std::uint32_t>::max();
  std::uint32_t index = none;

  constexpr Id() = default;
  constexpr explicit Id(std::size_t i) : index(static_cast<std::uint32_t>(i)) {}
  [[nodiscard]] constexpr bool valid() const { return index != none; }
  auto operator<=>(const Id&) const = default;
};

/// One material in one state of wetness and one use, wherever the sheet shows it.
using RegionId = Id<struct RegionTag>;
/// The air (or ground, or any surroundings of given temperature) on one side of the section.
using SpaceId = Id<struct SpaceTag>;
/// A sheet too thin to have a thickness, which resists vapour and nothing else.
using MembraneId = Id<struct MembraneTag>;

/// A list with one value for each id of a kind.
template <class Key, class T>
class Per {
 public:
  Per() = default;
  explicit Per(std::size_t size, T value = {}) : values_(size, std::move(value)) {}

  [[nodiscard]] T& operator[](Key key) { return values_[key.index]; }
  [[nodiscard]] const T& operator[](Key key) const { return values_[key.index]; }
  [[nodiscard]] std::size_t size() const { return values_.size(); }
  [[nodiscard]] auto begin() { return values_.begin(); }
  [[nodiscard]] auto end() { return values_.end(); }
  [[nodiscard]] auto begin() const { return values_.begin(); }
  [[nodiscard]] auto end() const { return values_.end(); }

  Key add(T value) {
    values_.push_back(std::move(value));
    return Key(values_.size() - 1);
  }

 private:
  std::vector<T> values_;
};

/// Every id of a list, for loops that need the id and not only the value.
template <class Key, class T>
[[nodiscard]] std::vector<Key> ids(const Per<Key, T>& list) {
  std::vector<Key> all;
  all.reserve(list.size());
  for (std::size_t i = 0; i < list.size(); ++i) all.push_back(Key(i));
  return all;
}

}  // namespace quoin::geometry
