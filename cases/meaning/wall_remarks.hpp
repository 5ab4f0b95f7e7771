// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "cases/meaning/drawn.hpp"
#include "cases/model/case.hpp"
#include "cases/text/fault_list.hpp"

namespace quoin::cases {

/// Remarks, no fault, on the first wall between inside and outside that is so thin that centimetres
/// were probably written for millimetres, or so thick that a nought too many was. Call it once the
/// variant has its sheet.
void remark_on_thickness(const Drawn& drawn, Variant& variant);

/// Remarks on what a variant lost of the first, perhaps without being meant: most of its masonry,
/// as a list in a variant replaces the whole list; the air that passes a void, without which timber
/// rots. `mark`: of the variant.
void remark_on_losses(const Variant& first, Mark mark, Variant& later);

/// Whether a variant lost most of the masonry of the first.
[[nodiscard]] bool loses_masonry(const Variant& first, const Variant& later);

/// Whether less outside air passes a void or another unheated space of a variant than of the first.
[[nodiscard]] bool is_less_vented(const Variant& first, const Variant& later);

}  // namespace quoin::cases
