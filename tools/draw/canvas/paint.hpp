// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "tools/draw/canvas/picture.hpp"

namespace quoin::tools {

inline constexpr double page_width_mm = 210.0;  ///< A4 upright
inline constexpr double page_height_mm = 297.0;
inline constexpr double page_edge_mm = 18.0;  ///< left blank all around

/// A unit of a picture on such a page: `page_width` of them lie between the edges, mm.
inline constexpr double unit_mm = (page_width_mm - 2 * page_edge_mm) / page_width;

/// Pages as the text of a PDF file, with letters as letters. The origin of each canvas lies
/// `page_edge_mm` from the top left corner of its page. The title must be UTF-8. No date in it: the
/// same pages give the same text on one machine; another may have other fonts. Throws: PartError.
[[nodiscard]] std::string pdf_of(const std::vector<Canvas>& pages, std::string_view title);

/// A picture as the text of a PNG file of so many pixels across, on white. The picture must not be
/// empty. Throws: PartError.
[[nodiscard]] std::string png_of(const Picture& picture, int width);

}  // namespace quoin::tools
