// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "tools/draw/canvas/picture.hpp"

/// What the painting part of the program offers to paint.hpp: cairo and Pango stand behind it. Each
/// writes a file's text to `text` and returns true, or the reason why it could not and returns
/// false; nothing is thrown.
extern "C" {
[[gnu::visibility("default")]] bool quoin_paint_pdf(const std::vector<quoin::tools::Canvas>& pages,
                                                    std::string_view title,
                                                    std::string& text) noexcept;
[[gnu::visibility("default")]] bool quoin_paint_png(const quoin::tools::Picture& picture, int width,
                                                    std::string& text) noexcept;
}
