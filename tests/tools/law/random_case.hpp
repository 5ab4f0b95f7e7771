// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <fmt/format.h>

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

#include "tests/laws/random_section.hpp"

namespace quoin::testing {

/// A case file of an invented wall: a recipe, materials, wetness, airs and criteria at random, with
/// a drier and a lined variant and one with other air. The same for the same number.
class RandomCase {
 public:
  explicit RandomCase(std::uint64_t seed) : dice_(seed + 1), seed_(seed) {}

  [[nodiscard]] std::string text() {
    const std::string masonry = layer("wall", dice_.between(215, 600));
    const std::string plaster = layer(pick(plasters), dice_.between(5, 30));
    const std::string lining = layer(pick(boards), dice_.between(5, 100));
    std::string text = fmt::format(
        "quoin: 1\ntitle: Invented wall {}\nnote: All of it is invented.\naccuracy: {{fRsi: 0.01, "
        "L2D: 1 %}}\n",
        seed_);
    text += spaces() + fmt::format("materials:\n  wall: {{like: {}, moisture: {}}}\n",
                                   pick(masonries), pick(states));
    text += "section:\n" + section(plaster + ", " + masonry) + criteria();
    text += "variants:\n  as found: {}\n  dried: {materials: {wall: {moisture: dry}}}\n";
    text += fmt::format("  lined:\n    section:\n{}",
                        indented(section(lining + ", " + plaster + ", " + masonry)));
    text += fmt::format(
        "  other air:\n    spaces: {{room: {{temperature: {:.1f}, humidity: {:.0f}}}}}\n",
        dice_.between(14, 24), dice_.between(30, 75));
    return text;
  }

 private:
  static constexpr std::array<std::string_view, 3> masonries{"common brick", "handmade brick",
                                                             "dense handmade brick"};
  static constexpr std::array<std::string_view, 3> plasters{"lime plaster", "gypsum plaster",
                                                            "cement render"};
  static constexpr std::array<std::string_view, 3> boards{"wood fibre board",
                                                          "calcium silicate board", "mineral wool"};
  static constexpr std::array<std::string_view, 4> states{"dry", "sheltered", "damp", "saturated"};

  template <std::size_t N>
  std::string_view pick(const std::array<std::string_view, N>& from) {
    return from[dice_.below(N)];
  }

  static std::string layer(std::string_view material, double thickness) {
    return fmt::format("{{material: {}, thickness: {:.0f}}}", material, thickness);
  }

  std::string spaces() {
    std::string room = fmt::format("temperature: {:.1f}", dice_.between(12, 24));
    if (const double share = dice_.share(); share < 0.75) {
      room += fmt::format(", humidity: {:.0f}", dice_.between(30, 80));
      humid_ = true;
    }
    return fmt::format(
        "spaces:\n  room: {{is: inside, {}}}\n  outdoors: {{is: outside, temperature: {:.1f}, "
        "humidity: 85}}\n",
        room, dice_.between(-12, 11));
  }

  std::string section(const std::string& layers) {
    constexpr std::array<std::string_view, 4> kinds{"wall", "corner", "corner", "reveal"};
    if (kind_.empty()) kind_ = pick(kinds);
    const std::string_view frame =
        kind_ == "reveal" ? ", lining: [{material: lime plaster, thickness: 15}], frame: softwood "
                            "across the grain"
                          : "";
    return fmt::format("  {}: {{layers: [{}]{}}}\n", kind_, layers, frame);
  }

  static std::string indented(const std::string& line) { return "    " + line; }

  std::string criteria() {
    std::string list;
    if (humid_ && dice_.share() < 0.7)
      list += fmt::format("  mould: {{surface humidity: {:.0f}}}\n", dice_.between(70, 90));
    if (humid_ && dice_.share() < 0.3)
      list += fmt::format("  corrosion: {{surface humidity: {:.0f}}}\n", dice_.between(50, 70));
    if (humid_ && dice_.share() < 0.2) list += "  growth: {critical humidity: by temperature}\n";
    if (dice_.share() < 0.5) list += fmt::format("  fRsi: {:.2f}\n", dice_.between(0.3, 0.9));
    return list.empty() ? "" : "criteria:\n" + list;
  }

  Dice dice_;
  std::uint64_t seed_;
  std::string_view kind_;
  bool humid_ = false;
};

}  // namespace quoin::testing
