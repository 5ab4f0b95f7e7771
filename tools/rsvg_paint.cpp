// SPDX-License-Identifier: Apache-2.0
#include "tools/rsvg_paint.hpp"

#include <cairo-pdf.h>
#include <librsvg/rsvg.h>

#include <cmath>
#include <memory>

#include "cases/utf8.hpp"
#include "tools/paint_error.hpp"

namespace quoin::tools {
namespace {

constexpr double points_in_mm = 72.0 / 25.4;

struct Release {
  void operator()(RsvgHandle* handle) const { g_object_unref(handle); }
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
  void operator()(cairo_t* cairo) const { cairo_destroy(cairo); }
  void operator()(GError* error) const { g_error_free(error); }
};
using Handle = std::unique_ptr<RsvgHandle, Release>;
using Surface = std::unique_ptr<cairo_surface_t, Release>;
using Cairo = std::unique_ptr<cairo_t, Release>;
using Error = std::unique_ptr<GError, Release>;

[[noreturn]] void fail(const std::string& reason) {
  throw PaintError("a picture cannot be painted: " + reason);
}

void require(cairo_status_t status) {
  if (status != CAIRO_STATUS_SUCCESS) fail(cairo_status_to_string(status));
}

Handle handle_of(std::string_view svg) {
  GError* error = nullptr;
  Handle handle(
      rsvg_handle_new_from_data(reinterpret_cast<const guint8*>(svg.data()), svg.size(), &error));
  const Error owned(error);
  if (!handle) fail(error != nullptr ? error->message : "not an SVG picture");
  return handle;
}

void render(RsvgHandle* handle, cairo_t* cairo, const RsvgRectangle& viewport) {
  GError* error = nullptr;
  const bool done = rsvg_handle_render_document(handle, cairo, &viewport, &error) != 0;
  const Error owned(error);
  if (!done) fail(error != nullptr ? error->message : "no reason given");
  require(cairo_status(cairo));
}

void write(cairo_t* cairo, const PlacedText& text) {
  cairo_select_font_face(cairo, "DejaVu Sans", CAIRO_FONT_SLANT_NORMAL,
                         text.bold ? CAIRO_FONT_WEIGHT_BOLD : CAIRO_FONT_WEIGHT_NORMAL);
  cairo_set_font_size(cairo, text.size * points_in_mm);
  cairo_set_source_rgb(cairo, text.grey, text.grey, text.grey);
  double x = text.x * points_in_mm;
  if (text.ends) {
    cairo_text_extents_t extents;
    cairo_text_extents(cairo, text.words.c_str(), &extents);
    x -= extents.x_advance;
  }
  cairo_move_to(cairo, x, text.y * points_in_mm);
  cairo_show_text(cairo, text.words.c_str());
  require(cairo_status(cairo));
}

cairo_status_t append(void* text, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(text)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

}  // namespace

bool is_plain(std::string_view words) {
  while (!words.empty()) {
    const cases::Character next = cases::first_character(words);
    const char32_t code = next.code;
    const bool letter = (code >= 0x20 && code < 0x7F) || (code >= 0xA0 && code < 0x300) ||
                        (code >= 0x370 && code < 0x483);  // Latin, Greek, Cyrillic
    const bool sign = (code >= 0x2010 && code < 0x2028) || (code >= 0x2030 && code < 0x205F) ||
                      (code >= 0x2200 && code < 0x2300);
    if (next.bytes == 0 || (!letter && !sign)) return false;
    words.remove_prefix(next.bytes);
  }
  return true;
}

std::string pdf_of(const std::vector<Page>& pages, std::string_view title) {
  std::string text;
  const Surface surface(cairo_pdf_surface_create_for_stream(
      append, &text, page_width_mm * points_in_mm, page_height_mm * points_in_mm));
  require(cairo_surface_status(surface.get()));
  const auto say = [&](cairo_pdf_metadata_t what, const std::string& words) {
    cairo_pdf_surface_set_metadata(surface.get(), what, words.c_str());
  };
  say(CAIRO_PDF_METADATA_TITLE, std::string(title));
  say(CAIRO_PDF_METADATA_CREATE_DATE, "");
  const Cairo cairo(cairo_create(surface.get()));
  for (const Page& page : pages) {
    for (const PlacedPicture& picture : page.pictures) {
      render(handle_of(picture.svg).get(), cairo.get(),
             {picture.x * points_in_mm, picture.y * points_in_mm, picture.width * points_in_mm,
              picture.height * points_in_mm});
    }
    for (const PlacedText& words : page.texts) write(cairo.get(), words);
    cairo_show_page(cairo.get());
  }
  cairo_surface_finish(surface.get());
  require(cairo_surface_status(surface.get()));
  return text;
}

std::string png_of(std::string_view svg, int width) {
  const Handle handle = handle_of(svg);
  double own_width = 0.0, own_height = 0.0;
  if (rsvg_handle_get_intrinsic_size_in_pixels(handle.get(), &own_width, &own_height) == 0 ||
      !(own_width > 0.0)) {
    fail("it has no size");
  }
  const int height = static_cast<int>(std::ceil(own_height * width / own_width));
  const Surface surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height));
  require(cairo_surface_status(surface.get()));
  const Cairo cairo(cairo_create(surface.get()));
  cairo_set_source_rgb(cairo.get(), 1.0, 1.0, 1.0);
  cairo_paint(cairo.get());
  render(handle.get(), cairo.get(),
         {0.0, 0.0, static_cast<double>(width), own_height * width / own_width});
  std::string text;
  require(cairo_surface_write_to_png_stream(surface.get(), append, &text));
  return text;
}

}  // namespace quoin::tools
