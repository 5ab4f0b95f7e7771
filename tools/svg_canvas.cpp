// SPDX-License-Identifier: Apache-2.0
#include "tools/svg_canvas.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <iterator>

#include "cases/utf8.hpp"

namespace quoin::tools {
namespace {

bool xml_holds(char32_t code) {
  if (code < 0x20) return code == '\t' || code == '\n';
  return !(code >= 0x7F && code < 0xA0) && code != 0xFFFE && code != 0xFFFF;
}

std::string_view entity(char32_t code) {
  switch (code) {
    case '&':
      return "&amp;";
    case '<':
      return "&lt;";
    case '>':
      return "&gt;";
    case '"':
      return "&quot;";
    case '\'':
      return "&#39;";
    default:
      return "";
  }
}

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

std::string spaced(std::string_view attributes) {
  return attributes.empty() ? "" : fmt::format(" {}", attributes);
}

}  // namespace

std::string escaped(std::string_view text) {
  std::string safe;
  safe.reserve(text.size());
  while (!text.empty()) {
    const cases::Character next = cases::first_character(text);
    if (next.bytes == 0 || !xml_holds(next.code)) {
      safe += "\xEF\xBF\xBD";
    } else if (const std::string_view name = entity(next.code); !name.empty()) {
      safe += name;
    } else {
      safe += text.substr(0, next.bytes);
    }
    text.remove_prefix(std::max<std::size_t>(next.bytes, 1));
  }
  return safe;
}

std::string number(double value) {
  if (!std::isfinite(value)) return "0";
  std::string digits = fmt::format("{:.2f}", value);
  digits.erase(digits.find_last_not_of('0') + 1);
  if (digits.back() == '.') digits.pop_back();
  return digits == "-0" ? "0" : digits;
}

void Canvas::define(std::string_view markup) { definitions_ += markup; }

void Canvas::open(std::string_view attributes) {
  fmt::format_to(std::back_inserter(body_), "<g{}>\n", spaced(attributes));
}

void Canvas::close() { body_ += "</g>\n"; }

void Canvas::append(const Canvas& other) {
  definitions_ += other.definitions_;
  body_ += other.body_;
}

void Canvas::place(Point at) {
  body_ += number(at.x);
  body_ += ' ';
  body_ += number(at.y);
}

void Canvas::line(Point from, Point to, std::string_view attributes) {
  polyline({from, to}, attributes);
}

void Canvas::polyline(const Line& line, std::string_view attributes) {
  body_ += "<path d=\"M";
  for (std::size_t k = 0; k < line.size(); ++k) {
    if (k > 0) body_ += 'L';
    place(line[k]);
  }
  fmt::format_to(std::back_inserter(body_), "\"{}/>\n", spaced(attributes));
}

void Canvas::rectangle(Point corner, double width, double height, std::string_view attributes) {
  fmt::format_to(std::back_inserter(body_),
                 "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"{}/>\n", number(corner.x),
                 number(corner.y), number(width), number(height), spaced(attributes));
}

void Canvas::circle(Point centre, double radius, std::string_view attributes) {
  fmt::format_to(std::back_inserter(body_), "<circle cx=\"{}\" cy=\"{}\" r=\"{}\"{}/>\n",
                 number(centre.x), number(centre.y), number(radius), spaced(attributes));
}

void Canvas::area(const std::vector<Line>& outlines, std::string_view attributes) {
  body_ += "<path fill-rule=\"evenodd\" d=\"";
  for (const Line& outline : outlines) {
    for (std::size_t k = 0; k < outline.size(); ++k) {
      body_ += k == 0 ? 'M' : 'L';
      place(outline[k]);
    }
    body_ += 'Z';
  }
  fmt::format_to(std::back_inserter(body_), "\"{}/>\n", spaced(attributes));
}

void Canvas::text(Point at, std::string_view words, const Lettering& lettering) {
  const auto out = std::back_inserter(body_);
  fmt::format_to(out, "<text x=\"{}\" y=\"{}\" font-size=\"{}\" fill=\"{}\"", number(at.x),
                 number(at.y), number(lettering.size), lettering.colour);
  if (lettering.anchor != Anchor::start) {
    fmt::format_to(out, " text-anchor=\"{}\"", name_of(lettering.anchor));
  }
  if (lettering.bold) fmt::format_to(out, " font-weight=\"bold\"");
  if (lettering.turn != 0.0) {
    fmt::format_to(out, " transform=\"rotate({} {} {})\"", number(-lettering.turn), number(at.x),
                   number(at.y));
  }
  if (!lettering.halo.empty()) {
    fmt::format_to(out, " stroke=\"{}\" stroke-width=\"3\" paint-order=\"stroke\"", lettering.halo);
  }
  fmt::format_to(out, ">{}</text>\n", escaped(words));
}

std::string Canvas::picture(double height, std::string_view title,
                            std::string_view description) const {
  return fmt::format(
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\"{0}\" height=\"{1}\" "
      "viewBox=\"0 0 {0} {1}\" font-family=\"'DejaVu Sans', Verdana, sans-serif\" "
      "stroke-linejoin=\"round\">\n"
      "<title>{2}</title>\n<desc>{3}</desc>\n<defs>\n{4}</defs>\n"
      "<rect width=\"{0}\" height=\"{1}\" fill=\"#ffffff\"/>\n{5}</svg>\n",
      number(page_width), number(height), escaped(title), escaped(description), definitions_,
      body_);
}

double height_of(std::string_view picture) {
  constexpr std::string_view mark = " height=\"";  // first on <svg>
  const std::size_t at = picture.find(mark);
  if (at == std::string_view::npos) return 0.0;
  double height = 0.0;
  const char* first = picture.data() + at + mark.size();
  std::from_chars(first, picture.data() + picture.size(), height);
  return height;
}

}  // namespace quoin::tools
