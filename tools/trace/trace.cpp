// SPDX-License-Identifier: Apache-2.0
#include "tools/trace/trace.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>
#include <utility>

#include "cases/meaning/outlines.hpp"
#include "cases/read.hpp"
#include "cases/text/fault_list.hpp"
#include "cases/text/faults.hpp"
#include "cases/text/words.hpp"
#include "cases/text/yaml_text.hpp"
#include "cases/text/yaml_tree.hpp"
#include "tools/trace/pieces.hpp"

namespace quoin::tools {
namespace {

using Kind = DrawnThing::Kind;

/// What the layers file says.
struct Layers {
  cases::Node head;  ///< the case without its section
  std::vector<std::string> names;
  std::map<std::string, std::string> fills;  ///< by layer; empty: left out
};

Layers layers_of(std::string_view text, const std::string& file) {
  cases::FaultList faults(file, text);
  Layers layers;
  if (auto tree = cases::tree_of(text, faults)) {
    layers.head = *std::move(tree);
    const cases::Entry* entry = layers.head.find("layers");
    if (entry == nullptr || entry->value.kind != cases::Node::Kind::map) {
      faults.add(entry == nullptr ? layers.head.mark : entry->value.mark,
                 {"the file does not say what the layers of the drawing are", "",
                  "layers: {WALL: wall brick, ROOM: hall, TEXT: ~}", ""});
    } else {
      for (const cases::Entry& layer : entry->value.entries) {
        if (layer.value.kind != cases::Node::Kind::scalar &&
            layer.value.kind != cases::Node::Kind::nothing)
          faults.add(layer.value.mark, {"a layer is a material, a space or nothing (~)",
                                        cases::words_of(layer.value), "a name", ""});
        layers.names.push_back(layer.key);
        layers.fills[layer.key] = layer.value.text;
      }
      layers.head.entries.erase(layers.head.entries.begin() + (entry - layers.head.entries.data()));
    }
    if (const cases::Entry* section = layers.head.find("section"))
      faults.add(section->mark,
                 {"the section comes from the drawing", "", "no `section` here", "remove it"});
  }
  if (!faults.empty()) throw cases::InputError(faults.sorted());
  return layers;
}

/// How large and how far off a drawing may be, mm. What is larger or smaller is in another unit.
constexpr double widest_drawing = 200e3;
constexpr double least_drawing = 1.0;
/// Farther from its origin than this a drawing is brought to it.
constexpr double far_off = 100e3;
/// Beyond this, coordinates are no longer exact to a hundredth of a mm.
constexpr double too_far_off = 1e13;

/// Takes a drawing over, thing by thing.
class Tracing {
 public:
  Tracing(const ReadDrawing& drawing, std::string file, const Layers& layers, const TraceWish& wish)
      : drawing_(drawing), file_(std::move(file)), layers_(layers), wish_(wish) {}

  std::vector<Piece> pieces() {
    const double told = millimetres_of(drawing_.unit);
    scale_ = wish_.unit.value_or(told);
    if (scale_ == 0.0) {
      fault(drawing_.unit == 0 ? "the drawing does not say its unit"
                               : "the drawing is in a unit that this program does not know",
            fmt::format("$INSUNITS {}", drawing_.unit), "mm, cm, m or inches", "--unit mm");
      scale_ = 1.0;  // so that the rest is looked at, too
    }
    look_at_extent();
    for (const DrawnThing& thing : drawing_.things) take(thing);
    for (auto& [layer, lines] : lines_) close_lines(layer, std::move(lines));
    refuse();
    if (pieces_.empty())
      fault("nothing is drawn on the layers that are named", "",
            "outlines or hatches on: " + cases::joined(layers_.names, ", "), "");
    check_outlines();
    refuse();
    bring_together(pieces_, wish_.close,
                   [this](const std::string& what, Point place) { note(what, place); });
    check_neighbours();
    refuse();
    std::stable_sort(pieces_.begin(), pieces_.end(), [](const Piece& a, const Piece& b) {
      return area_of(a.area.outline) > area_of(b.area.outline);
    });
    return std::move(pieces_);
  }

  std::vector<std::string> notes() {
    if (skipped_ > 0)
      notes_.push_back(fmt::format("{} texts, dimensions and the like were left out", skipped_));
    return std::move(notes_);
  }

 private:
  void fault(std::string what, std::string found, std::string expected, std::string remedy) {
    cases::Fault fault;
    fault.file = file_;
    fault.what = std::move(what);
    fault.found = std::move(found);
    fault.expected = std::move(expected);
    fault.remedy = std::move(remedy);
    faults_.push_back(std::move(fault));
  }
  void refuse() {
    if (!faults_.empty()) throw cases::InputError(std::move(faults_));
  }
  /// A place as the drawing has it.
  [[nodiscard]] std::string at(Point place) const {
    return fmt::format("at {:.1f}, {:.1f} mm", place.x + origin_.x, place.y + origin_.y);
  }
  void note(const std::string& what, Point place) { notes_.push_back(what + " " + at(place)); }

  /// Whether a thing is on a layer that is taken over.
  [[nodiscard]] bool is_wanted(const DrawnThing& thing) const {
    const auto known = layers_.fills.find(thing.layer);
    return known != layers_.fills.end() && !known->second.empty();
  }

  /// Refuses a drawing that no section can be as large or as small as, in one fault; one that lies
  /// far from its origin, as on a map of the country, is brought to it.
  void look_at_extent() {
    constexpr double beyond = std::numeric_limits<double>::infinity();
    Point low{beyond, beyond}, high{-beyond, -beyond};
    bool is_finite = true;
    for (const DrawnThing& thing : drawing_.things) {
      if (!is_wanted(thing)) continue;
      for (const Outline& outline : thing.outlines) {
        for (const Point point : outline) {
          is_finite = is_finite && std::isfinite(point.x) && std::isfinite(point.y);
          low = {std::min(low.x, point.x * scale_), std::min(low.y, point.y * scale_)};
          high = {std::max(high.x, point.x * scale_), std::max(high.y, point.y * scale_)};
        }
      }
    }
    if (low.x > high.x || !faults_.empty()) return;  // nothing is drawn, or in an unknown unit
    const double across = std::max(high.x - low.x, high.y - low.y);
    const double off = std::max({-low.x, -low.y, high.x, high.y});
    if (!is_finite) {
      fault("a coordinate is not a number", "", "coordinates that are numbers", "");
    } else if (across > widest_drawing || across < least_drawing) {
      fault("a section is hardly as large as this drawing",
            fmt::format("{:.3g} mm across, with {:g} mm to its unit", across, scale_),
            fmt::format("{:g} mm to {:g} m", least_drawing, widest_drawing / 1e3),
            "say its unit with --unit mm, cm, m or in, or leave out what lies apart on a layer of "
            "its "
            "own");
    } else if (off > too_far_off) {
      fault("the drawing lies too far from its origin for its coordinates to be exact",
            fmt::format("{:.3g} mm", off), fmt::format("up to {:g} mm", too_far_off),
            "move it to the origin");
    } else if (off > far_off) {
      origin_ = low;
      notes_.push_back(
          fmt::format("the place {:.1f}, {:.1f} mm of the drawing is the origin of the "
                      "case",
                      origin_.x, origin_.y));
    }
    refuse();
  }

  /// The outline in mm.
  [[nodiscard]] Outline scaled(const Outline& outline) const {
    Outline result;
    for (const Point point : outline) {
      const Point now{point.x * scale_ - origin_.x, point.y * scale_ - origin_.y};
      if (result.empty() || result.back() != now) result.push_back(now);
    }
    return thinned(result, wish_.chord);
  }

  void take(const DrawnThing& thing) {
    if (thing.kind == Kind::skipped) {
      ++skipped_;
      return;
    }
    const auto known = layers_.fills.find(thing.layer);
    if (known == layers_.fills.end()) {
      if (unknown_.insert(thing.layer).second)
        fault("the layers file does not say what this layer is", thing.layer,
              "one of: " + cases::joined(layers_.names, ", ") +
                  "; or a line of its own, with ~ to leave it out",
              cases::did_you_mean(thing.layer, layers_.names));
      return;
    }
    if (known->second.empty()) return;
    if (thing.kind == Kind::broken) {
      fault("a curve cannot be read", fmt::format("{} on layer {}", thing.what, thing.layer),
            "lines, arcs, polylines, hatches and splines by control points",
            "change splines by fit points to polylines in the program that drew them");
    } else if (thing.kind == Kind::line) {
      const Outline line = scaled(thing.outlines.front());
      if (line.size() > 1) lines_[thing.layer].push_back(line);
    } else {
      Piece piece{known->second, {ring(thing.outlines.front()), {}}};
      for (std::size_t k = 1; k < thing.outlines.size(); ++k)
        piece.area.holes.push_back(ring(thing.outlines[k]));
      pieces_.push_back(std::move(piece));
    }
  }

  /// A closed outline, the first point not repeated.
  [[nodiscard]] Outline ring(const Outline& outline) const {
    Outline result = scaled(outline);
    constexpr double rounding = 1e-4;  // mm
    if (result.size() > 1 &&
        nearest_on(result.front(), result.front(), result.back()).distance < rounding)
      result.pop_back();
    return result;
  }

  void close_lines(const std::string& layer, std::vector<Outline> lines) {
    const auto closed = [this](const std::string& what, Point place) { note(what, place); };
    const auto open = [&](const std::string& what, Point place) {
      fault(what, fmt::format("layer {} {}", layer, at(place)), "a closed outline",
            fmt::format("close it in the drawing, or allow more with --close ({} mm now)",
                        wish_.close));
    };
    for (Outline& outline : closed_outlines(std::move(lines), wish_.close, closed, open))
      pieces_.push_back({layers_.fills.at(layer), {std::move(outline), {}}});
  }

  void check_outlines() {
    constexpr double least = 1.0;  // mm2
    for (const Piece& piece : pieces_) {
      if (piece.area.outline.size() < 3 || area_of(piece.area.outline) < least) {
        fault("this outline encloses nothing",
              piece.area.outline.empty() ? piece.fill
                                         : piece.fill + " " + at(piece.area.outline.front()),
              "an area", "");
      } else if (piece.area.outline.size() > cases::most_corners) {
        fault("the outline has too many corners",
              fmt::format("{} corners, {} {}", piece.area.outline.size(), piece.fill,
                          at(piece.area.outline.front())),
              fmt::format("at most {}", cases::most_corners),
              "let chords be farther from their curves with --chord, or split the area");
      } else if (const auto place = self_crossing(piece.area.outline)) {
        fault("this outline crosses itself", piece.fill + " " + at(*place),
              "an outline that goes round once", "");
      }
    }
  }

  /// Within a piece, or where two of them meet.
  [[nodiscard]] bool is_painted(Point place) const {
    constexpr double touching = 0.01;  // mm
    return std::any_of(pieces_.begin(), pieces_.end(), [&](const Piece& piece) {
      return lies_in(place, piece.area, 0.0) ||
             distance_to_edge(place, piece.area.outline) <= touching;
    });
  }

  void check_neighbours() {
    for (std::size_t a = 0; a < pieces_.size(); ++a) {
      for (std::size_t b = a + 1; b < pieces_.size(); ++b) {
        if (const auto place = shared_place(pieces_[a].area, pieces_[b].area, wish_.close)) {
          fault(fmt::format("'{}' and '{}' overlap", pieces_[a].fill, pieces_[b].fill), at(*place),
                "areas that meet at their edges",
                "leave the place out of one of them: a hatch with a hole, or another outline");
        } else {
          look_for_slit(pieces_[a], pieces_[b]);
          look_for_slit(pieces_[b], pieces_[a]);
        }
      }
      for (const Outline& hole : pieces_[a].area.holes) check_hole(pieces_[a], hole);
    }
  }

  void check_hole(const Piece& piece, const Outline& hole) {
    if (hole.size() < 3) return;
    for (std::size_t k = 0; k < hole.size(); ++k) {
      // A little within the hole, beside a corner of it.
      const Point before = hole[k], corner = hole[(k + 1) % hole.size()],
                  after = hole[(k + 2) % hole.size()];
      const Point inwards{(before.x + after.x) / 2, (before.y + after.y) / 2};
      const Point place{corner.x + 0.1 * (inwards.x - corner.x),
                        corner.y + 0.1 * (inwards.y - corner.y)};
      if (!lies_within(place, hole)) continue;
      if (!is_painted(place))
        fault("nothing is drawn in a hole", piece.fill + " " + at(place), "what is there",
              "draw its outline on the layer of what it is");
      return;
    }
  }

  /// A corner of one that lies nearly, but not quite, at the other, with nothing between.
  void look_for_slit(const Piece& one, const Piece& other) {
    for (const Point corner : one.area.outline) {
      for (std::size_t k = 0; k < other.area.outline.size(); ++k) {
        const Nearest near = nearest_on(
            other.area.outline[k], other.area.outline[(k + 1) % other.area.outline.size()], corner);
        if (near.distance <= wish_.close || near.distance > widest_slip) continue;
        const Point between{(corner.x + near.place.x) / 2, (corner.y + near.place.y) / 2};
        if (is_painted(between)) continue;
        fault(fmt::format("'{}' and '{}' leave a gap of {:.2g} mm", one.fill, other.fill,
                          near.distance),
              at(between), "areas that meet, or something drawn between them",
              fmt::format("mend the drawing, or close it with --close {:.0f}",
                          std::ceil(near.distance)));
        return;
      }
    }
  }

  const ReadDrawing& drawing_;
  std::string file_;
  const Layers& layers_;
  TraceWish wish_;
  double scale_ = 0.0;
  Point origin_{0.0, 0.0};  // of the case, mm
  std::vector<Piece> pieces_;
  std::map<std::string, std::vector<Outline>> lines_;
  std::set<std::string> unknown_;
  std::vector<cases::Fault> faults_;
  std::vector<std::string> notes_;
  std::size_t skipped_ = 0;
};

/// A coordinate with hundredths of a mm. A bare number below 1 would be taken for metres.
std::string coordinate(double value) {
  std::string text = fmt::format("{:.2f}", value);
  while (text.back() == '0') text.pop_back();
  if (text.back() == '.') text.pop_back();
  if (text == "-0" || text == "0") return "0";
  return std::abs(value) < 1.0 ? text + " mm" : text;
}

std::string line_of(const Piece& piece) {
  cases::Node fill;
  fill.kind = cases::Node::Kind::scalar;
  fill.text = piece.fill;
  std::string outline;
  for (const Point point : piece.area.outline)
    outline += fmt::format("{}[{}, {}]", outline.empty() ? "" : ", ", coordinate(point.x),
                           coordinate(point.y));
  return fmt::format("    - {{fill: {}, outline: [{}]}}\n", cases::yaml_line(fill), outline);
}

}  // namespace

Traced traced(const ReadDrawing& drawing, const std::string& drawing_file, std::string_view layers,
              const std::string& layers_file, const TraceWish& wish) {
  const Layers known = layers_of(layers, layers_file);
  Tracing tracing(drawing, drawing_file, known, wish);
  const std::vector<Piece> pieces = tracing.pieces();
  Traced result;
  result.notes = tracing.notes();
  result.text = cases::yaml_text(known.head) + "section:\n  sheet:\n";
  for (const Piece& piece : pieces) result.text += line_of(piece);
  // Whatever else is wrong shows when the case is read: a name that nobody knows, no space.
  static_cast<void>(cases::case_of(result.text, "the traced case"));
  return result;
}

}  // namespace quoin::tools
