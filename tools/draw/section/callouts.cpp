// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/section/callouts.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>

namespace quoin::tools {
namespace {

constexpr Lettering lettering{13.0, Anchor::middle, 0.0, true, {0x101010}, {}};
constexpr double height = 20.0;  ///< of a box, units

struct Direction {
  double x, y;
};

/// Sixteen ways round the compass, those nearest to a wanted one first.
std::array<Direction, 16> ways(Point wanted) {
  std::array<Direction, 16> all{};
  for (std::size_t k = 0; k < all.size(); ++k) {
    const double angle = std::numbers::pi / 8.0 * static_cast<double>(k);
    all[k] = {std::cos(angle), std::sin(angle)};
  }
  const double length = std::max(std::hypot(wanted.x, wanted.y), 1e-9);
  const auto nearness = [&](const Direction& way) {  // rounded: equal ones keep their order
    return std::round(1e6 * (way.x * wanted.x + way.y * wanted.y) / length);
  };
  std::stable_sort(all.begin(), all.end(), [&](const Direction& a, const Direction& b) {
    return nearness(a) > nearness(b);
  });
  return all;
}

bool contains(const View& view, const Box& box) {
  return box.centre.x - box.width / 2 >= view.corner().x &&
         box.centre.x + box.width / 2 <= view.corner().x + view.width() &&
         box.centre.y - box.height / 2 >= view.corner().y &&
         box.centre.y + box.height / 2 <= view.corner().y + view.height();
}

/// The box whose edge lies `distance` from a place in a direction.
Box box_towards(Point at, const Direction& way, double distance, double width) {
  const double far = 1e9;
  const double reach = std::min(std::abs(way.x) > 1e-6 ? width / 2 / std::abs(way.x) : far,
                                std::abs(way.y) > 1e-6 ? height / 2 / std::abs(way.y) : far);
  return {
      {at.x + way.x * (distance + reach), at.y + way.y * (distance + reach)}, width, height, 0.0};
}

/// What a place for a box must fulfil, beside being free.
struct Wish {
  bool room_air;  ///< in the air of a room, on the wanted side
  bool any_air;
  bool free_leader;  ///< the line to it crosses nothing
};

}  // namespace

void Callouts::add(Point at, Point away, std::string_view words) {
  const double width = text_width(words, lettering.size) + 14.0;
  const Chosen is_air = [](const geometry::Fill& fill) {
    return std::holds_alternative<geometry::SpaceId>(fill);
  };
  const Chosen is_room = [&](const geometry::Fill& fill) {
    const auto* space = std::get_if<geometry::SpaceId>(&fill);
    return space != nullptr && variant_.spaces[*space].is != cases::SpaceKind::outside;
  };
  const auto try_at = [&](double distance, const Direction& way, const Wish& wish) {
    const Box box = box_towards(at, way, distance, width);
    constexpr double clear = 9.0;  // of the mark the line leads to
    const Point from{at.x + way.x * clear, at.y + way.y * clear};
    const Point joint{at.x + way.x * distance, at.y + way.y * distance};
    const bool onward = way.x * away.x + way.y * away.y > 0.0;
    if (!contains(view_, box) || !taken_.is_free(box)) return false;
    if (wish.room_air && !(onward && view_.shows_only(is_room, box))) return false;
    if (wish.any_air && !view_.shows_only(is_air, box)) return false;
    if (wish.free_leader && !taken_.is_free(from, joint)) return false;
    taken_.take(box);
    taken_.take(from, joint);
    callouts_.push_back({at, joint, box, std::string(words)});
    return true;
  };
  constexpr double nearest = 15.0, farthest = 170.0, stride = 5.0;
  constexpr std::array<Wish, 5> wishes{{{true, true, true},
                                        {true, true, false},
                                        {false, true, true},
                                        {false, true, false},
                                        {false, false, false}}};
  const auto directions = ways(away);
  for (const Wish& wish : wishes) {
    for (double distance = nearest; distance <= farthest; distance += stride) {
      for (const Direction& way : directions) {
        if (try_at(distance, way, wish)) return;
      }
    }
  }
}

void Callouts::draw(Canvas& canvas) const {
  constexpr Stroke pen{{0x101010}, 1.0};
  for (const Callout& callout : callouts_) canvas.line(callout.at, callout.joint, pen);
  for (const Callout& callout : callouts_) {
    canvas.rectangle({callout.box.centre.x - callout.box.width / 2,
                      callout.box.centre.y - callout.box.height / 2},
                     callout.box.width, callout.box.height, {white, pen}, 3.0);
  }
  for (const Callout& callout : callouts_) {
    canvas.text({callout.box.centre.x, callout.box.centre.y + 4.6}, callout.words, lettering);
  }
}

}  // namespace quoin::tools
