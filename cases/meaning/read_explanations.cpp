// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/read_explanations.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "cases/text/words.hpp"

namespace quoin::cases {
namespace {

constexpr std::size_t most_listed = 24;

class ExplanationReader {
 public:
  ExplanationReader(const ExplanationNames& known, FaultList& faults)
      : known_(known), faults_(faults) {}

  std::vector<Explanation> all(const Node& list) {
    if (list.kind == Node::Kind::nothing) return {};
    if (list.kind != Node::Kind::sequence || list.items.empty()) {
      faults_.add(list.mark, {"'explanations' is a list", words_of(list),
                              "[as drawn, conducts better: ZONE, covered: STRETCH]",
                              "leave it out to try all that apply"});
      return {};
    }
    if (list.items.size() > most_listed) {
      faults_.add(list.items[most_listed].mark,
                  {"these are more explanations than a survey is worked out for",
                   fmt::format("{} explanations", list.items.size()),
                   fmt::format("at most {}", most_listed), "leave out those that are not likely"});
      return {};
    }
    for (const Node& item : list.items) read_one(item);
    return std::move(all_);
  }

 private:
  void read_one(const Node& item) {
    static const std::vector<std::string> kinds{
        "as drawn", "conducts better", "conducts less", "covered",
        "both",     "thermometer off", "colder outside"};
    const bool pair = item.kind == Node::Kind::map && item.entries.size() == 1;
    const std::string kind = pair ? item.entries.front().key : item.text;
    const auto found = std::find(kinds.begin(), kinds.end(), kind);
    if ((item.kind != Node::Kind::scalar && !pair) || found == kinds.end()) {
      faults_.add(item.mark, {fmt::format("there is no explanation '{}'",
                                          kind.empty() ? words_of(item) : kind),
                              "", "one of: " + joined(kinds, ", "), did_you_mean(kind, kinds)});
      return;
    }
    Explanation explanation;
    explanation.kind = static_cast<ExplanationKind>(found - kinds.begin());
    const Node* of = pair ? &item.entries.front().value : nullptr;
    if (!name(item, of, explanation)) return;
    const auto same = [&](const Explanation& one) {
      return one.kind == explanation.kind && one.of == explanation.of &&
             one.also == explanation.also;
    };
    if (std::any_of(all_.begin(), all_.end(), same)) {
      faults_.add(item.mark, {"this explanation is listed twice", kind, "each once", "remove it"});
      return;
    }
    all_.push_back(std::move(explanation));
  }

  /// Looks up what an explanation is of. False, with a fault, where that cannot be.
  bool name(const Node& item, const Node* of, Explanation& explanation) {
    switch (explanation.kind) {
      case ExplanationKind::as_drawn:
        if (of != nullptr)
          faults_.add(of->mark, {"'as drawn' is of the whole section", words_of(*of), "as drawn",
                                 "remove what follows the colon"});
        return of == nullptr;
      case ExplanationKind::conducts_better:
      case ExplanationKind::conducts_less:
        return look_up(item, of, known_.zones, "zone", explanation.of);
      case ExplanationKind::covered:
        return look_up(item, of, known_.stretches, "stretch", explanation.of);
      case ExplanationKind::thermometer_off:
        return look_up(item, of, known_.instruments, "instrument", explanation.of);
      case ExplanationKind::colder_outside:
        return look_up(item, of, known_.outside, "outside space without a history", explanation.of);
      case ExplanationKind::better_and_covered:
        if (of == nullptr || of->kind != Node::Kind::sequence || of->items.size() != 2) {
          faults_.add(of == nullptr ? item.mark : of->mark,
                      {"'both' is of a zone and a stretch", of == nullptr ? "" : words_of(*of),
                       "both: [ZONE, STRETCH]", ""});
          return false;
        }
        return look_up(item, &of->items[0], known_.zones, "zone", explanation.of) &&
               look_up(item, &of->items[1], known_.stretches, "stretch", explanation.also);
    }
    return false;
  }

  bool look_up(const Node& item, const Node* of, const std::vector<std::string>& known,
               const std::string& what, std::string& found) {
    const bool given = of != nullptr && of->kind == Node::Kind::scalar;
    if (!given && known.size() == 1 && of == nullptr) {
      found = known.front();
      return true;
    }
    if (given && std::find(known.begin(), known.end(), of->text) != known.end()) {
      found = of->text;
      return true;
    }
    faults_.add(of == nullptr ? item.mark : of->mark,
                {given ? fmt::format("there is no {} '{}'", what, of->text)
                       : fmt::format("this explanation is of some {}", what),
                 given ? of->text : "", list_words(known, fmt::format("a {} of this survey", what)),
                 given ? did_you_mean(of->text, known) : ""});
    return false;
  }

  const ExplanationNames& known_;
  FaultList& faults_;
  std::vector<Explanation> all_;
};

}  // namespace

std::string list_words(const std::vector<std::string>& known, const std::string& none) {
  return known.empty() ? none : "one of: " + joined(known, ", ");
}

std::vector<Explanation> explanations_in(const Node& list, const ExplanationNames& known,
                                         FaultList& faults) {
  return ExplanationReader(known, faults).all(list);
}

void check_number(const std::vector<Mark>& places, FaultList& faults) {
  constexpr std::size_t most_places = 8;
  if (places.size() <= most_places) return;
  faults.add(
      places[most_places],
      {"these zones and stretches have more explanations than are tried unasked",
       fmt::format("{} zones and stretches", places.size()), fmt::format("at most {}", most_places),
       "list those worth trying under `explanations`"});
}

}  // namespace quoin::cases
