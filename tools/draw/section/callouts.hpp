// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "tools/draw/section/view.hpp"

namespace quoin::tools {

/// Words in boxes near places of a picture, joined to them by thin lines. Boxes never cover each
/// other or room already taken; they stand in the air of rooms where they can, then in any air,
/// then on the material.
class Callouts {
 public:
  Callouts(const View& view, const cases::Variant& variant, TakenRoom& taken)
      : view_(view), variant_(variant), taken_(taken) {}

  /// Finds room for words near a place, towards `away` first. Where there is none the words are
  /// left out.
  void add(Point at, Point away, std::string_view words);

  void draw(Canvas& canvas) const;

 private:
  struct Callout {
    Point at;
    Point joint;  ///< where the line meets the box
    Box box;
    std::string words;
  };

  const View& view_;
  const cases::Variant& variant_;
  TakenRoom& taken_;
  std::vector<Callout> callouts_;
};

}  // namespace quoin::tools
