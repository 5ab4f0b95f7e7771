// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/merge.hpp"

#include <fmt/format.h>

#include <string>
#include <vector>

#include "cases/text/words.hpp"

namespace quoin::cases {
namespace {

void remove(Node& base, const Entry& entry, FaultList& faults) {
  if (const Entry* present = base.find(entry.key)) {
    base.entries.erase(base.entries.begin() + (present - base.entries.data()));
    return;
  }
  faults.add(entry.mark, [&]() -> Complaint {
    std::vector<std::string> keys;
    for (const Entry& known : base.entries) keys.push_back(known.key);
    return {fmt::format("there is no '{}' to remove here", entry.key), entry.key,
            "one of: " + joined(keys, ", "), did_you_mean(entry.key, keys)};
  });
}

}  // namespace

void merge(Node& base, const Node& by, FaultList& faults) {
  for (const Entry& entry : by.entries) {
    if (entry.value.kind == Node::Kind::nothing) {
      remove(base, entry, faults);
      continue;
    }
    Entry* present = base.find(entry.key);
    if (present == nullptr) {
      base.entries.push_back(entry);
    } else if (present->value.kind == Node::Kind::map && entry.value.kind == Node::Kind::map) {
      merge(present->value, entry.value, faults);
    } else {
      present->value = entry.value;
      present->mark = entry.mark;
    }
  }
}

}  // namespace quoin::cases
