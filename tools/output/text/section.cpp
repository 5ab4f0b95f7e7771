// SPDX-License-Identifier: Apache-2.0
#include "tools/output/text/section.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>

#include "geometry/close_up.hpp"
#include "geometry/section.hpp"
#include "tools/answer/ask/physics.hpp"
#include "tools/answer/words/choices.hpp"
#include "tools/answer/words/figures.hpp"

namespace quoin::tools {
namespace {

/// How many characters each strip gets: its share of the whole, one at least.
std::vector<std::size_t> widths(const std::vector<double>& lines, std::size_t total) {
  std::vector<std::size_t> all;
  for (std::size_t k = 0; k + 1 < lines.size(); ++k) {
    const double share = (lines[k + 1] - lines[k]) / (lines.back() - lines.front());
    all.push_back(std::max<std::size_t>(
        1, static_cast<std::size_t>(std::lround(share * static_cast<double>(total)))));
  }
  return all;
}

char letter(const geometry::Fill& fill) {
  constexpr std::string_view letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";
  constexpr std::string_view figures = "123456789";
  if (const auto* region = std::get_if<RegionId>(&fill))
    return letters[region->index % letters.size()];
  if (const auto* space = std::get_if<SpaceId>(&fill))
    return figures[space->index % figures.size()];
  return '.';
}

std::string region_line(const cases::Region& region, const materials::Conductivity& conductivity,
                        char sign) {
  return fmt::format("{}  {}{}, {:.3g} W/(m K)", sign, region.name,
                     region.state.empty() ? "" : ", " + moisture_words(region), conductivity.value);
}

std::string space_line(const cases::Space& space, char sign) {
  return fmt::format("{}  {}, {:.1f} °C{}", sign, space.name, space.temperature,
                     space.humidity ? fmt::format(", {:.0f} %", *space.humidity * 100) : "");
}

/// A canvas of characters over the section, thin layers drawn wider than they are.
class Drawing {
 public:
  Drawing(const geometry::Section& section, std::size_t room) : section_(section) {
    const double wide = section.x.back() - section.x.front();
    const double high = section.y.back() - section.y.front();
    // A character is about twice as high as wide.
    const auto lines = static_cast<std::size_t>(
        std::clamp(static_cast<double>(room) * high / wide / 2, 4.0, 30.0));
    const auto columns = std::min(room, static_cast<std::size_t>(std::max(
                                            8.0, 2 * static_cast<double>(lines) * wide / high)));
    across_ = widths(section.x, columns);
    down_ = widths(section.y, lines);
    for (std::size_t j = section.rows(); j-- > 0;) {
      std::string line;
      for (std::size_t i = 0; i < section.columns(); ++i)
        line.append(across_[i], letter(section.cell(i, j).below));
      for (std::size_t k = 0; k < down_[j]; ++k) lines_.push_back(line);
    }
  }

  /// Puts a sign at a place, if it is on the drawing.
  void mark(geometry::Point place, char sign) {
    if (lines_.empty() || lines_.front().empty()) return;
    const auto column = position(section_.x, across_, place.x);
    const auto up = position(section_.y, down_, place.y);
    if (column && up) lines_[lines_.size() - 1 - *up][*column] = sign;
  }

  /// With the heights of lines on the right, and those along x below; mm.
  [[nodiscard]] std::string text() const {
    std::string all;
    std::size_t line = 0;
    for (std::size_t j = down_.size(); j-- > 0;) {
      for (std::size_t k = 0; k < down_[j]; ++k, ++line) {
        const std::string height = k == 0 ? "  " + fixed(1e3 * section_.y[j + 1], 0) : "";
        all += "  " + lines_[line] + height + "\n";
      }
    }
    return all + fmt::format("{}  {}\n", along_x(), fixed(1e3 * section_.y.front(), 0));
  }

 private:
  /// Which character from the start a coordinate falls on; absent beyond the ends.
  static std::optional<std::size_t> position(const std::vector<double>& lines,
                                             const std::vector<std::size_t>& sizes, double at) {
    if (at < lines.front() - geometry::snap || at > lines.back() + geometry::snap)
      return std::nullopt;
    std::size_t before = 0;
    for (std::size_t k = 0; k < sizes.size(); ++k) {
      if (at <= lines[k + 1] || k + 1 == sizes.size()) {
        const double share =
            std::clamp((at - lines[k]) / (lines[k + 1] - lines[k]), 0.0, 1.0 - 1e-9);
        return before + static_cast<std::size_t>(share * static_cast<double>(sizes[k]));
      }
      before += sizes[k];
    }
    return std::nullopt;
  }

  /// As many of the lines along x as find room, each figure below where its strip begins.
  [[nodiscard]] std::string along_x() const {
    std::string line = "  ";
    std::size_t column = 2;
    for (std::size_t i = 0; i < section_.x.size(); ++i) {
      const std::string figure = fixed(1e3 * section_.x[i], 0);
      if (i == 0 || column >= line.size() + 1) {
        line.append(column - std::min(column, line.size()), ' ');
        line += figure;
      }
      if (i < across_.size()) column += across_[i];
    }
    return line;
  }

  const geometry::Section& section_;
  std::vector<std::size_t> across_, down_;
  std::vector<std::string> lines_;
};

geometry::Section section_shown(const cases::Variant& variant) {
  const geometry::Section section = geometry::section_of(variant.sheet);
  return variant.close_up ? geometry::close_up(section, *variant.close_up) : section;
}

}  // namespace

std::string section_sketch(const cases::Variant& variant, const TextStyle& style) {
  const geometry::Section section = section_shown(variant);
  constexpr std::size_t figures = 14;  // columns for what stands beside the drawing
  Drawing drawing(section, style.width - figures);
  drawing.mark({0.0, 0.0}, 'o');
  for (const cases::Probe& probe : variant.probes) drawing.mark(probe.place, '*');
  return drawing.text();
}

std::string section_legend(const cases::Variant& variant, const TextStyle& style) {
  const geometry::Section section = section_shown(variant);
  std::set<geometry::Fill> shown;
  for (const geometry::Cell& cell : section.cells) shown.insert(cell.below);
  const auto conductivity = conductivities(variant);
  std::string text;
  for (const geometry::Fill& fill : shown) {
    std::string line = ".  nothing: no heat crosses its edge";
    if (const auto* region = std::get_if<RegionId>(&fill)) {
      line = region_line(variant.regions[*region], conductivity[*region], letter(fill));
    } else if (const auto* space = std::get_if<SpaceId>(&fill)) {
      line = space_line(variant.spaces[*space], letter(fill));
    }
    text += "  " + harmless(line, style) + "\n";
  }
  for (const cases::Probe& probe : variant.probes) {
    text += "  " +
            harmless(fmt::format("*  {} at {}, {}", probe.name, fixed(1e3 * probe.place.x, 0),
                                 fixed(1e3 * probe.place.y, 0)),
                     style) +
            "\n";
  }
  const double wide = section.x.back() - section.x.front();
  const double high = section.y.back() - section.y.front();
  return text + paragraph(fmt::format("{:.0f} by {:.0f} mm{}; x to the right and y upwards, in mm, "
                                      "o is 0, 0; thin layers are drawn wider than they are",
                                      wide * 1e3, high * 1e3,
                                      variant.close_up ? " of the section, which runs on" : ""),
                          2, style);
}

std::string section_drawing(const cases::Variant& variant, const TextStyle& style) {
  return section_sketch(variant, style) + "\n" + section_legend(variant, style);
}

}  // namespace quoin::tools
