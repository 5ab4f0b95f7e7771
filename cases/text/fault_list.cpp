// SPDX-License-Identifier: Apache-2.0
#include "cases/text/fault_list.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "cases/text/plain_text.hpp"
#include "cases/text/utf8.hpp"

namespace quoin::cases {
namespace {

constexpr std::size_t most_faults = 100;    // beyond, nobody reads them
constexpr std::size_t most_told = 300;      // characters of a sentence, names included
constexpr std::size_t most_shown = 100;     // characters of a line
constexpr std::size_t most_before = 60;     // of them before the place meant
constexpr std::size_t most_quoted = 72;     // characters of what was found
constexpr std::size_t most_scanned = 4096;  // bytes of a line looked at on either side

/// The part of a line about a place, and where the place lies in it.
struct Excerpt {
  std::string text;
  std::size_t caret = 1;
};

/// Where a character begins, at or before a byte.
std::size_t character_start(std::string_view line, std::size_t byte) {
  while (byte > 0 && byte < line.size() && (static_cast<unsigned char>(line[byte]) & 0xC0u) == 0x80)
    --byte;
  return byte;
}

Excerpt excerpt(std::string_view line, std::size_t byte) {
  std::size_t start = 0;
  std::size_t before = 0;  // characters from start to the place
  if (byte > most_scanned) start = character_start(line, byte - most_scanned);
  before = characters(line.substr(start, byte - start));
  const bool cut = start > 0 || (before > most_before && characters(line) > most_shown);
  if (cut) {
    for (; before > most_before; --before)
      start += std::max<std::size_t>(first_character(line.substr(start)).bytes, 1);
  }
  Excerpt result;
  result.text = (cut ? "…" : "") + shortened(line.substr(start), most_shown);
  result.caret = before + 1 + (cut ? 1 : 0);
  return result;
}

}  // namespace

std::vector<std::string_view> lines_of(std::string_view text) {
  std::vector<std::string_view> lines;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of("\r\n"), text.size());
    lines.push_back(text.substr(0, end));
    text.remove_prefix(end);
    if (text.substr(0, 2) == "\r\n") text.remove_prefix(1);
    if (!text.empty()) text.remove_prefix(1);
  }
  return lines;
}

FaultList::FaultList(std::string file, std::string_view text)
    : file_(std::move(file)), lines_(lines_of(without_byte_order_mark(text))) {}

void FaultList::add(Mark at, Complaint complaint) {
  ++met_;
  complaint.what = shortened(complaint.what, most_told);
  if (!said_.emplace(at.line, at.byte, complaint.what).second) return;
  if (is_full()) {
    ++untold_;
    return;
  }
  Fault fault;
  fault.file = file_;
  fault.line = at.line;
  if (at.line != 0) {
    const std::string_view line = at.line <= lines_.size() ? lines_[at.line - 1] : "";
    const std::size_t byte = std::min(at.byte == 0 ? 0 : at.byte - 1, line.size());
    const Excerpt shown = excerpt(line, byte);
    fault.column = characters(line.substr(0, byte)) + 1;
    fault.source = shown.text;
    fault.caret = shown.caret;
  }
  fault.what = variant_.empty() ? std::move(complaint.what)
                                : fmt::format("in the variant '{}': {}",
                                              shortened(variant_, most_quoted), complaint.what);
  fault.found = shortened(complaint.found, most_quoted);
  fault.expected = shortened(complaint.expected, most_told);
  fault.remedy = shortened(complaint.remedy, most_told);
  faults_.push_back(std::move(fault));
}

bool FaultList::is_full() const { return faults_.size() >= most_faults; }

void FaultList::take(const FaultList& other) {
  met_ += other.met_;
  bool any_new = false;
  for (const Fault& fault : other.faults_) {
    const bool said = std::any_of(faults_.begin(), faults_.end(), [&](const Fault& known) {
      return std::tie(known.file, known.line, known.column, known.what) ==
             std::tie(fault.file, fault.line, fault.column, fault.what);
    });
    if (said) continue;
    any_new = true;
    if (is_full()) {
      ++untold_;
    } else {
      faults_.push_back(fault);
    }
  }
  if (any_new) untold_ += other.untold_;
}

std::vector<Fault> FaultList::sorted() const {
  std::vector<Fault> all = faults_;
  std::stable_sort(all.begin(), all.end(), [&](const Fault& a, const Fault& b) {
    const bool a_elsewhere = a.file != file_, b_elsewhere = b.file != file_;
    return std::tie(a_elsewhere, a.line, a.column) < std::tie(b_elsewhere, b.line, b.column);
  });
  if (untold_ > 0) {
    Fault rest;
    rest.file = file_;
    rest.what = untold_ == 1 ? "1 more fault is not shown"
                             : fmt::format("{} more faults are not shown", untold_);
    all.push_back(std::move(rest));
  }
  return all;
}

}  // namespace quoin::cases
