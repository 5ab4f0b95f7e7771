// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/canvas/cairo_paint.hpp"

#include <cairo-pdf.h>
#include <pango/pangocairo.h>

#include <algorithm>
#include <cmath>
#include <exception>
#include <memory>
#include <numbers>
#include <stdexcept>

#include "tools/draw/canvas/paint.hpp"

namespace quoin::tools {
namespace {

constexpr double points_in_mm = 72.0 / 25.4;

struct Release {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
  void operator()(cairo_t* cairo) const { cairo_destroy(cairo); }
  void operator()(cairo_pattern_t* pattern) const { cairo_pattern_destroy(pattern); }
  void operator()(cairo_font_options_t* options) const { cairo_font_options_destroy(options); }
  void operator()(PangoLayout* layout) const { g_object_unref(layout); }
  void operator()(PangoFontDescription* font) const { pango_font_description_free(font); }
};
template <class Owned>
using Own = std::unique_ptr<Owned, Release>;

void require(cairo_status_t status) {
  if (status != CAIRO_STATUS_SUCCESS) throw std::runtime_error(cairo_status_to_string(status));
}

void set_colour(cairo_t* cairo, Colour colour, double opacity = 1.0) {
  const auto part = [&](unsigned shift) {
    return static_cast<double>(colour.rgb >> shift & 0xFFu) / 255.0;
  };
  cairo_set_source_rgba(cairo, part(16), part(8), part(0), opacity);
}

void set_pen(cairo_t* cairo, const Stroke& stroke) {
  set_colour(cairo, stroke.colour);
  cairo_set_line_width(cairo, stroke.width);
  cairo_set_line_join(cairo, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_cap(cairo, stroke.ends == Ends::round    ? CAIRO_LINE_CAP_ROUND
                            : stroke.ends == Ends::square ? CAIRO_LINE_CAP_SQUARE
                                                          : CAIRO_LINE_CAP_BUTT);
  const auto last = std::find(stroke.dashes.begin(), stroke.dashes.end(), 0.0);
  cairo_set_dash(cairo, stroke.dashes.data(), static_cast<int>(last - stroke.dashes.begin()), 0.0);
}

void add_lines(cairo_t* cairo, const std::vector<Line>& lines, bool closed) {
  for (const Line& line : lines) {
    for (std::size_t k = 0; k < line.size(); ++k) {
      (k == 0 ? cairo_move_to : cairo_line_to)(cairo, line[k].x, line[k].y);
    }
    if (closed) cairo_close_path(cairo);
  }
}

/// A tile of strokes as a pattern that repeats.
Own<cairo_pattern_t> pattern_of(const Hatch& hatch) {
  const cairo_rectangle_t tile{0.0, 0.0, hatch.width, hatch.height};
  const Own<cairo_surface_t> surface(
      cairo_recording_surface_create(CAIRO_CONTENT_COLOR_ALPHA, &tile));
  const Own<cairo_t> cairo(cairo_create(surface.get()));
  set_pen(cairo.get(), hatch.pen);
  add_lines(cairo.get(), hatch.strokes, false);
  cairo_stroke(cairo.get());
  require(cairo_status(cairo.get()));
  Own<cairo_pattern_t> pattern(cairo_pattern_create_for_surface(surface.get()));
  cairo_pattern_set_extend(pattern.get(), CAIRO_EXTEND_REPEAT);
  cairo_matrix_t turn;
  cairo_matrix_init_rotate(&turn, -hatch.turn * std::numbers::pi / 180.0);
  cairo_pattern_set_matrix(pattern.get(), &turn);
  return pattern;
}

/// Paints the items of canvases.
class Painter {
 public:
  explicit Painter(cairo_t* cairo) : cairo_(cairo), layout_(pango_cairo_create_layout(cairo)) {
    // Letters stand where the picture wants them at every scale.
    const Own<cairo_font_options_t> options(cairo_font_options_create());
    cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
    pango_cairo_context_set_font_options(pango_layout_get_context(layout_.get()), options.get());
    pango_layout_set_single_paragraph_mode(layout_.get(), TRUE);
  }

  void paint(const Canvas& canvas) {
    for (const Item& item : canvas.items()) {
      std::visit([&](const auto& shape) { add(shape); }, item);
    }
    require(cairo_status(cairo_));
  }

 private:
  void add(const Path& path) {
    add_lines(cairo_, path.lines, path.closed);
    finish(path.ink);
  }

  void add(const Rectangle& box) {
    const double r = std::min(box.rounding, std::min(box.width, box.height) / 2);
    const double left = box.corner.x, top = box.corner.y;
    const double right = left + box.width, bottom = top + box.height;
    if (r <= 0.0) {
      cairo_rectangle(cairo_, left, top, box.width, box.height);
    } else {
      constexpr double quarter = std::numbers::pi / 2;
      cairo_new_sub_path(cairo_);
      cairo_arc(cairo_, right - r, top + r, r, -quarter, 0.0);
      cairo_arc(cairo_, right - r, bottom - r, r, 0.0, quarter);
      cairo_arc(cairo_, left + r, bottom - r, r, quarter, 2 * quarter);
      cairo_arc(cairo_, left + r, top + r, r, 2 * quarter, 3 * quarter);
      cairo_close_path(cairo_);
    }
    finish(box.ink);
  }

  void add(const Disc& disc) {
    cairo_new_sub_path(cairo_);
    cairo_arc(cairo_, disc.centre.x, disc.centre.y, disc.radius, 0.0, 2 * std::numbers::pi);
    finish(disc.ink);
  }

  void add(const Words& words) {
    const Lettering& lettering = words.lettering;
    set_font(lettering);
    pango_layout_set_text(layout_.get(), words.text.data(), static_cast<int>(words.text.size()));
    PangoLayoutLine* line = pango_layout_get_line_readonly(layout_.get(), 0);
    cairo_save(cairo_);
    cairo_translate(cairo_, words.at.x, words.at.y);
    if (lettering.turn != 0.0) cairo_rotate(cairo_, -lettering.turn * std::numbers::pi / 180.0);
    double x = 0.0;
    if (lettering.anchor != Anchor::start) {
      PangoRectangle extents;
      pango_layout_line_get_extents(line, nullptr, &extents);
      x = -pango_units_to_double(extents.width) * (lettering.anchor == Anchor::end ? 1.0 : 0.5);
    }
    if (lettering.halo) {
      cairo_move_to(cairo_, x, 0.0);
      pango_cairo_layout_line_path(cairo_, line);
      set_pen(cairo_, {*lettering.halo, halo_width, {}, Ends::flat});
      cairo_stroke(cairo_);
    }
    set_colour(cairo_, lettering.colour);
    cairo_move_to(cairo_, x, 0.0);
    pango_cairo_show_layout_line(cairo_, line);
    cairo_restore(cairo_);
    cairo_new_path(cairo_);
  }

  void add(const Inset& inset) {
    cairo_save(cairo_);
    cairo_translate(cairo_, inset.corner.x, inset.corner.y);
    cairo_scale(cairo_, inset.scale, inset.scale);
    paint(*inset.canvas);
    cairo_restore(cairo_);
  }

  void add(const Mark& mark) {
    if (mark.begins) {
      cairo_tag_begin(cairo_, mark.part.c_str(), "");
    } else {
      cairo_tag_end(cairo_, mark.part.c_str());
    }
  }

  /// Fills and outlines the path that was begun.
  void finish(const Ink& ink) {
    if (const auto* colour = std::get_if<Colour>(&ink.fill)) {
      set_colour(cairo_, *colour, ink.opacity);
    } else if (const auto* hatch = std::get_if<std::shared_ptr<const Hatch>>(&ink.fill)) {
      cairo_set_source(cairo_, pattern_of(**hatch).get());
    }
    cairo_set_fill_rule(cairo_, CAIRO_FILL_RULE_EVEN_ODD);
    if (ink.fill.index() != 0) cairo_fill_preserve(cairo_);
    if (ink.stroke.width > 0.0) {
      set_pen(cairo_, ink.stroke);
      cairo_stroke_preserve(cairo_);
    }
    cairo_new_path(cairo_);
  }

  void set_font(const Lettering& lettering) {
    const Own<PangoFontDescription> font(pango_font_description_new());
    pango_font_description_set_family_static(font.get(), "DejaVu Sans");
    pango_font_description_set_weight(font.get(),
                                      lettering.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
    pango_font_description_set_absolute_size(font.get(), lettering.size * PANGO_SCALE);
    pango_layout_set_font_description(layout_.get(), font.get());
  }

  cairo_t* cairo_;
  Own<PangoLayout> layout_;
};

cairo_status_t append(void* text, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(text)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

std::string pdf_text(const std::vector<Canvas>& pages, std::string_view title) {
  std::string text;
  const Own<cairo_surface_t> surface(cairo_pdf_surface_create_for_stream(
      append, &text, page_width_mm * points_in_mm, page_height_mm * points_in_mm));
  require(cairo_surface_status(surface.get()));
  const auto say = [&](cairo_pdf_metadata_t what, const std::string& words) {
    cairo_pdf_surface_set_metadata(surface.get(), what, words.c_str());
  };
  say(CAIRO_PDF_METADATA_TITLE, std::string(title));
  say(CAIRO_PDF_METADATA_CREATE_DATE, "");
  const Own<cairo_t> cairo(cairo_create(surface.get()));
  cairo_translate(cairo.get(), page_edge_mm * points_in_mm, page_edge_mm * points_in_mm);
  cairo_scale(cairo.get(), unit_mm * points_in_mm, unit_mm * points_in_mm);
  Painter painter(cairo.get());
  cairo_tag_begin(cairo.get(), "Document", "");  // else cairo calls the file untagged
  for (const Canvas& page : pages) {
    painter.paint(page);
    cairo_show_page(cairo.get());
  }
  cairo_tag_end(cairo.get(), "Document");
  cairo_surface_finish(surface.get());
  require(cairo_surface_status(surface.get()));
  return text;
}

std::string png_text(const Picture& picture, int width) {
  const double scale = width / page_width;
  const int height = static_cast<int>(std::ceil(picture.height() * scale - 1e-9));
  const Own<cairo_surface_t> surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height));
  require(cairo_surface_status(surface.get()));
  const Own<cairo_t> cairo(cairo_create(surface.get()));
  set_colour(cairo.get(), white);
  cairo_paint(cairo.get());
  cairo_scale(cairo.get(), scale, scale);
  Painter(cairo.get()).paint(picture.canvas());
  std::string text;
  require(cairo_surface_write_to_png_stream(surface.get(), append, &text));
  return text;
}

/// Runs what makes a text; on failure the reason takes its place.
template <class Make>
bool made(std::string& text, Make make) noexcept {
  try {
    text = make();
    return true;
  } catch (const std::exception& error) {
    text = error.what();
    return false;
  }
}

}  // namespace
}  // namespace quoin::tools

bool quoin_paint_pdf(const std::vector<quoin::tools::Canvas>& pages, std::string_view title,
                     std::string& text) noexcept {
  return quoin::tools::made(text, [&] { return quoin::tools::pdf_text(pages, title); });
}

bool quoin_paint_png(const quoin::tools::Picture& picture, int width, std::string& text) noexcept {
  return quoin::tools::made(text, [&] { return quoin::tools::png_text(picture, width); });
}
