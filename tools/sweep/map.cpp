// SPDX-License-Identifier: Apache-2.0
#include "tools/sweep/map.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

#include "cases/text/faults.hpp"
#include "cases/text/words.hpp"
#include "tools/draw/canvas/colours.hpp"
#include "tools/draw/canvas/lettering.hpp"

namespace quoin::tools {
namespace {

constexpr double title_height = 44.0;
constexpr double panel_title = 20.0;
constexpr double foot = 34.0;  // figures and words below a panel
constexpr double side = 64.0;  // figures left of a panel
constexpr double gap = 18.0;   // between panels
constexpr double cell_height = 26.0;
constexpr double narrowest = 34.0;  // of a cell with its figure in it
const Lettering title_letters{14.0, Anchor::start, 0.0, true, black, {}};
const Lettering letters{11.0, Anchor::middle, 0.0, false, black, {}};
const Lettering beside{11.0, Anchor::end, 0.0, false, black, {}};
const Lettering words{11.0, Anchor::start, 0.0, false, grey, {}};

[[noreturn]] void refuse(const std::string& what, const std::string& found,
                         const std::vector<std::string>& known) {
  cases::Fault fault;
  fault.file = "quoin gather";
  fault.what = what;
  fault.found = found;
  fault.expected = "one of: " + cases::joined(known, ", ");
  fault.remedy = cases::did_you_mean(found, known);
  throw cases::InputError({fault});
}

bool ends_with(const std::string& path, const std::string& end) {
  return path == end || (path.size() > end.size() &&
                         path.compare(path.size() - end.size(), end.size(), end) == 0 &&
                         path[path.size() - end.size() - 1] == '/');
}

/// The axis of a path, or of the end of one.
std::size_t axis_of(const cases::Vary& vary, const std::string& wanted) {
  std::vector<std::string> paths;
  std::vector<std::size_t> found;
  for (std::size_t a = 0; a < vary.axes.size(); ++a) {
    paths.push_back(vary.axes[a].path);
    if (ends_with(paths.back(), wanted)) found.push_back(a);
  }
  if (found.size() == 1) return found.front();
  refuse(found.empty() ? "the sweep has no such axis" : "several axes end like this", wanted,
         paths);
}

std::string result_of(const cases::Vary& vary, const std::string& wanted) {
  std::vector<std::string> numbers;
  for (const std::string& name : vary.columns) {
    if (!sweep_column(name).words) numbers.push_back(name);
  }
  if (wanted.empty() && !numbers.empty()) return numbers.front();
  if (std::find(numbers.begin(), numbers.end(), wanted) == numbers.end())
    refuse("the table has no such column of numbers", wanted, numbers);
  return wanted;
}

/// Digits that tell values of this range apart.
int decimals_of(double low, double high) {
  const double span = high - low;
  return span > 0.0 ? std::clamp(2 - static_cast<int>(std::floor(std::log10(span))), 0, 4) : 2;
}

/// The values that the map shows, by panel, row and column.
struct Values {
  std::map<std::vector<std::size_t>, double> at;
  double low = 0.0;
  double high = 0.0;
};

class Map {
 public:
  Map(Gathered& gathered, const MapWish& wish)
      : vary_(gathered.vary()), result_(result_of(gathered.vary(), wish.result)) {
    for (const std::string& axis : wish.axes) axes_.push_back(axis_of(vary_, axis));
    const auto column = static_cast<std::size_t>(
        std::find(vary_.columns.begin(), vary_.columns.end(), result_) - vary_.columns.begin());
    gathered.each(
        [&](const StoredRow& row) {
          if (row.cells.empty()) return;
          if (const auto* value = std::get_if<double>(&row.cells[column])) note(row.number, *value);
        },
        [](std::uint64_t, std::uint64_t) {});
  }

  [[nodiscard]] Picture picture() {
    const double bottom = draw_panels();
    return {std::move(canvas_), bottom + 8.0,
            fmt::format("{} by {} and {}", result_, axis(0).path, axis(1).path),
            fmt::format("{} rows of a sweep, {} from {:.4g} to {:.4g}", values_.at.size(), result_,
                        values_.low, values_.high)};
  }

 private:
  [[nodiscard]] const cases::Axis& axis(std::size_t k) const { return vary_.axes[axes_[k]]; }

  void note(std::uint64_t number, double value) {
    const std::vector<std::size_t> choice = vary_.choice(number);
    for (std::size_t a = 0; a < choice.size(); ++a) {
      const bool shown = std::find(axes_.begin(), axes_.end(), a) != axes_.end();
      if (!shown && choice[a] != 0) return;
    }
    std::vector<std::size_t> place;
    for (const std::size_t a : axes_) place.push_back(choice[a]);
    values_.low = values_.at.empty() ? value : std::min(values_.low, value);
    values_.high = values_.at.empty() ? value : std::max(values_.high, value);
    values_.at[place] = value;
  }

  /// What stays at one value.
  [[nodiscard]] std::string constants() const {
    std::string text;
    for (std::size_t a = 0; a < vary_.axes.size(); ++a) {
      if (std::find(axes_.begin(), axes_.end(), a) != axes_.end()) continue;
      text += fmt::format("{}{} = {}", text.empty() ? "at " : ", ", vary_.axes[a].path,
                          vary_.axes[a].texts.front());
    }
    if (axes_.size() < 3) return text;
    return fmt::format("a panel for each {}{}{}", axis(2).path, text.empty() ? "" : ", ", text);
  }

  /// What a panel is of, without the braces about a list of values.
  [[nodiscard]] std::string panel_name(std::size_t panel) const {
    const std::string& text = axis(2).texts[panel];
    const bool is_list = text.size() > 2 && text.front() == '{' && text.back() == '}';
    return is_list ? text.substr(1, text.size() - 2) : text;
  }

  /// How wide a panel is at least.
  [[nodiscard]] double least_width() const {
    constexpr double letter = 6.2;  // in a line of words
    double least = side + static_cast<double>(axis(0).values.size()) * narrowest;
    if (axes_.size() < 3) return least;
    for (std::size_t p = 0; p < axis(2).values.size(); ++p)
      least = std::max(least, letter * static_cast<double>(panel_name(p).size()));
    return least;
  }

  double draw_panels() {
    const std::string unit = sweep_column(result_).unit;
    canvas_.text({page_edge, 20.0}, unit.empty() ? result_ : fmt::format("{}, {}", result_, unit),
                 title_letters);
    canvas_.text({page_edge, 36.0}, constants(), words);
    const std::size_t panels = axes_.size() == 3 ? axis(2).values.size() : 1;
    const double least = least_width();
    const double room = page_width - 2 * page_edge;
    const auto in_row = static_cast<std::size_t>(
        std::clamp(std::floor((room + gap) / (least + gap)), 1.0, static_cast<double>(panels)));
    const double width =
        (room - static_cast<double>(in_row - 1) * gap) / static_cast<double>(in_row);
    const double height =
        panel_title + static_cast<double>(axis(1).values.size()) * cell_height + foot;
    for (std::size_t p = 0; p < panels; ++p) {
      const Point corner{page_edge + static_cast<double>(p % in_row) * (width + gap),
                         title_height + static_cast<double>(p / in_row) * (height + gap)};
      draw_panel(p, corner, width);
    }
    const auto rows = static_cast<double>((panels + in_row - 1) / in_row);
    return title_height + rows * height + (rows - 1) * gap;
  }

  void draw_panel(std::size_t panel, Point corner, double width) {
    const auto columns = axis(0).values.size(), rows = axis(1).values.size();
    const double cell = (width - side) / static_cast<double>(columns);
    const double left = corner.x + side, top = corner.y + panel_title;
    if (axes_.size() == 3) canvas_.text({corner.x, corner.y + 13.0}, panel_name(panel), words);
    for (std::size_t r = 0; r < rows; ++r) {
      // The first value of the axis at the foot, as charts have it.
      const double y = top + static_cast<double>(rows - 1 - r) * cell_height;
      canvas_.text({left - 5.0, y + cell_height / 2 + 4.0}, axis(1).texts[r], beside);
      for (std::size_t c = 0; c < columns; ++c) {
        std::vector<std::size_t> place{c, r};
        if (axes_.size() == 3) place.push_back(panel);
        draw_cell(place, {left + static_cast<double>(c) * cell, y}, cell);
      }
    }
    const double bottom = top + static_cast<double>(rows) * cell_height;
    for (std::size_t c = 0; c < columns; ++c)
      canvas_.text({left + (static_cast<double>(c) + 0.5) * cell, bottom + 13.0}, axis(0).texts[c],
                   letters);
    canvas_.text({left, bottom + 28.0},
                 fmt::format("across: {}, upwards: {}", axis(0).steps.back(), axis(1).steps.back()),
                 words);
  }

  void draw_cell(const std::vector<std::size_t>& place, Point corner, double width) {
    const auto known = values_.at.find(place);
    if (known == values_.at.end()) {
      canvas_.text({corner.x + width / 2, corner.y + cell_height / 2 + 4.0}, "–", letters);
      return;
    }
    const double span = values_.high - values_.low;
    const Lab ground = temperature_colour(span > 0.0 ? (known->second - values_.low) / span : 0.5);
    Ink ink;
    ink.fill = shown(ground);
    canvas_.rectangle(corner, width, cell_height, ink);
    Lettering figure = letters;
    figure.colour = ink_on(ground);
    canvas_.text({corner.x + width / 2, corner.y + cell_height / 2 + 4.0},
                 fmt::format("{:.{}f}", known->second, decimals_of(values_.low, values_.high)),
                 figure);
  }

  const cases::Vary& vary_;
  std::string result_;
  std::vector<std::size_t> axes_;
  Values values_;
  Canvas canvas_;
};

}  // namespace

Picture map_of(Gathered& gathered, const MapWish& wish) { return Map(gathered, wish).picture(); }

}  // namespace quoin::tools
