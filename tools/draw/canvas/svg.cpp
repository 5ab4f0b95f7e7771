// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/canvas/svg.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>

#include "tools/draw/canvas/colours.hpp"
#include "tools/draw/canvas/xml.hpp"

namespace quoin::tools {
namespace {

std::string_view name_of(Anchor anchor) {
  switch (anchor) {
    case Anchor::start:
      return "start";
    case Anchor::middle:
      return "middle";
    case Anchor::end:
      return "end";
  }
  return "start";
}

std::string place(Point at) { return number(at.x) + ' ' + number(at.y); }

std::string path_of(const Path& path) {
  std::string text;
  for (const Line& line : path.lines) {
    for (std::size_t k = 0; k < line.size(); ++k) {
      text += k == 0 ? 'M' : 'L';
      text += place(line[k]);
    }
    if (path.closed) text += 'Z';
  }
  return text;
}

std::string attributes_of(const Stroke& stroke) {
  if (stroke.width == 0.0) return "";
  std::string text =
      fmt::format(" stroke=\"{}\" stroke-width=\"{}\"", hex(stroke.colour), number(stroke.width));
  if (stroke.ends != Ends::flat) {
    text += stroke.ends == Ends::round ? " stroke-linecap=\"round\"" : " stroke-linecap=\"square\"";
  }
  if (stroke.dashes.front() == 0.0) return text;
  std::string dashes;
  for (const double dash : stroke.dashes) {
    if (dash > 0.0) dashes += (dashes.empty() ? "" : " ") + number(dash);
  }
  return text + fmt::format(" stroke-dasharray=\"{}\"", dashes);
}

std::string attributes_of(const Ink& ink) {
  std::string text;
  if (const auto* colour = std::get_if<Colour>(&ink.fill)) {
    text = fmt::format(" fill=\"{}\"", hex(*colour));
  } else if (const auto* hatch = std::get_if<std::shared_ptr<const Hatch>>(&ink.fill)) {
    text = fmt::format(" fill=\"url(#{})\"", (*hatch)->name);
  } else {
    text = " fill=\"none\"";
  }
  if (ink.opacity != 1.0) text += fmt::format(" fill-opacity=\"{}\"", number(ink.opacity));
  return text + attributes_of(ink.stroke);
}

const Ink* ink_of(const Item& item) {
  if (const auto* path = std::get_if<Path>(&item)) return &path->ink;
  if (const auto* rectangle = std::get_if<Rectangle>(&item)) return &rectangle->ink;
  if (const auto* disc = std::get_if<Disc>(&item)) return &disc->ink;
  return nullptr;
}

/// Writes the items of a canvas and collects the hatches they use.
class Writer {
 public:
  void write(const Canvas& canvas) {
    const std::vector<Item>& items = canvas.items();
    for (std::size_t first = 0, next = 0; first < items.size(); first = next) {
      // Shapes of one ink that follow each other share a group.
      next = first + 1;
      const Ink* ink = ink_of(items[first]);
      while (ink != nullptr && next < items.size()) {
        const Ink* other = ink_of(items[next]);
        if (other == nullptr || !(*other == *ink)) break;
        ++next;
      }
      attributes_ = ink != nullptr ? attributes_of(*ink) : "";
      if (ink != nullptr) define(ink->fill);
      const bool grouped = next - first > 1;
      if (grouped) body += fmt::format("<g{}>\n", std::exchange(attributes_, ""));
      for (std::size_t k = first; k < next; ++k)
        std::visit([&](const auto& item) { add(item); }, items[k]);
      if (grouped) body += "</g>\n";
    }
  }

  std::string definitions;
  std::string body;

 private:
  void define(const Paint& fill) {
    const auto* hatch = std::get_if<std::shared_ptr<const Hatch>>(&fill);
    if (hatch == nullptr) return;
    const std::string& name = (*hatch)->name;
    if (std::find(defined_.begin(), defined_.end(), name) != defined_.end()) return;
    defined_.push_back(name);
    definitions += fmt::format(
        "<pattern id=\"{}\" patternUnits=\"userSpaceOnUse\" width=\"{}\" height=\"{}\" "
        "patternTransform=\"rotate({})\"><path d=\"{}\" fill=\"none\"{}/></pattern>\n",
        name, number((*hatch)->width), number((*hatch)->height), number((*hatch)->turn),
        path_of({(*hatch)->strokes, false, {}}), attributes_of((*hatch)->pen));
  }

  void add(const Path& path) {
    fmt::format_to(std::back_inserter(body), "<path{} d=\"{}\"{}/>\n",
                   path.closed ? " fill-rule=\"evenodd\"" : "", path_of(path), attributes_);
  }

  void add(const Rectangle& box) {
    fmt::format_to(
        std::back_inserter(body), "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"{}{}/>\n",
        number(box.corner.x), number(box.corner.y), number(box.width), number(box.height),
        box.rounding > 0.0 ? fmt::format(" rx=\"{}\"", number(box.rounding)) : "", attributes_);
  }

  void add(const Disc& disc) {
    fmt::format_to(std::back_inserter(body), "<circle cx=\"{}\" cy=\"{}\" r=\"{}\"{}/>\n",
                   number(disc.centre.x), number(disc.centre.y), number(disc.radius), attributes_);
  }

  void add(const Words& words) {
    const auto out = std::back_inserter(body);
    const Lettering& lettering = words.lettering;
    fmt::format_to(out, "<text x=\"{}\" y=\"{}\" font-size=\"{}\" fill=\"{}\"", number(words.at.x),
                   number(words.at.y), number(lettering.size), hex(lettering.colour));
    if (lettering.anchor != Anchor::start) {
      fmt::format_to(out, " text-anchor=\"{}\"", name_of(lettering.anchor));
    }
    if (lettering.bold) body += " font-weight=\"bold\"";
    if (lettering.turn != 0.0) {
      fmt::format_to(out, " transform=\"rotate({} {})\"", number(-lettering.turn), place(words.at));
    }
    if (lettering.halo) {
      fmt::format_to(out, " stroke=\"{}\" stroke-width=\"{}\" paint-order=\"stroke\"",
                     hex(*lettering.halo), number(halo_width));
    }
    fmt::format_to(out, ">{}</text>\n", escaped(words.text));
  }

  void add(const Inset& inset) {
    fmt::format_to(std::back_inserter(body), "<g transform=\"translate({}) scale({:.6g})\">\n",
                   place(inset.corner), inset.scale);
    write(*inset.canvas);
    body += "</g>\n";
  }

  void add(const Mark& /*mark*/) {}  // pictures are one thing

  std::vector<std::string> defined_;  ///< names of hatches
  std::string attributes_;            ///< of the shapes being written, unless their group has them
};

}  // namespace

std::string number(double value) {
  if (!std::isfinite(value)) return "0";
  std::string digits = fmt::format("{:.2f}", value);
  digits.erase(digits.find_last_not_of('0') + 1);
  if (digits.back() == '.') digits.pop_back();
  return digits == "-0" ? "0" : digits;
}

std::string svg_of(const Picture& picture) {
  if (picture.is_empty()) return "";
  Writer writer;
  writer.write(picture.canvas());
  return fmt::format(
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\"{0}\" height=\"{1}\" "
      "viewBox=\"0 0 {0} {1}\" font-family=\"'DejaVu Sans', Verdana, sans-serif\" "
      "stroke-linejoin=\"round\">\n"
      "<title>{2}</title>\n<desc>{3}</desc>\n<defs>\n{4}</defs>\n"
      "<rect width=\"{0}\" height=\"{1}\" fill=\"#ffffff\"/>\n{5}</svg>\n",
      number(page_width), number(picture.height()), escaped(picture.name()),
      escaped(picture.description()), writer.definitions, writer.body);
}

}  // namespace quoin::tools
