// SPDX-License-Identifier: Apache-2.0
// The door as one function for a worker of a browser: JSON in, JSON out.
#include <emscripten/emscripten.h>

#include <exception>
#include <functional>
#include <map>
#include <nlohmann/json.hpp>
#include <string>

#include "tools/door/door.hpp"

namespace {

using quoin::door::Beside;
using Json = nlohmann::json;

std::string text(const Json& call, const char* key) { return call.value(key, std::string()); }
bool of_house(const Json& call) { return call.value("of_house", false); }
Beside beside(const Json& call) { return call.value("beside", Beside()); }

/// Every function of the door by its name.
const std::map<std::string, std::function<std::string(const Json&)>>& functions() {
  namespace door = quoin::door;
  static const std::map<std::string, std::function<std::string(const Json&)>> all{
      {"solve",
       [](const Json& call) {
         return door::solve(text(call, "text"),
                            {text(call, "variant"), call.value("pictures", false), beside(call), 1,
                             of_house(call)});
       }},
      {"report",
       [](const Json& call) {
         return door::report(text(call, "text"), beside(call), of_house(call));
       }},
      {"surface_table",
       [](const Json& call) {
         return door::surface_table(text(call, "text"), beside(call), of_house(call));
       }},
      {"start", [](const Json& call) { return door::start(text(call, "recipe")); }},
      {"starts", [](const Json&) { return door::starts(); }},
      {"schema", [](const Json&) { return door::schema(); }},
      {"catalogue", [](const Json&) { return door::catalogue(); }},
      {"values", [](const Json& call) { return door::values(text(call, "text")); }},
      {"edited",
       [](const Json& call) {
         return door::edited(text(call, "text"), text(call, "path"), text(call, "value"));
       }},
      {"placed",
       [](const Json& call) {
         return door::placed(text(call, "text"), text(call, "path"), text(call, "value"));
       }},
      {"inserted",
       [](const Json& call) {
         return door::inserted(text(call, "text"), text(call, "path"), text(call, "value"));
       }},
      {"removed",
       [](const Json& call) { return door::removed(text(call, "text"), text(call, "path")); }},
      {"handles",
       [](const Json& call) {
         return door::handles(text(call, "text"), text(call, "variant"), beside(call));
       }},
      {"glance",
       [](const Json& call) {
         return door::glance(text(call, "text"),
                             {text(call, "variant"), call.value("letters", 0.0),
                              call.value("field", false), beside(call), of_house(call)});
       }},
  };
  return all;
}

/// {"made": text} or {"kind", "words", "faults"}.
Json answer(const char* asked) {
  try {
    const Json call = Json::parse(asked);
    return {{"made", functions().at(call.at("call").get<std::string>())(call)}};
  } catch (const quoin::door::Refusal& refusal) {
    const bool input = refusal.kind == quoin::door::Refusal::Kind::input;
    return {{"kind", input ? "input" : "numerics"},
            {"words", refusal.what()},
            {"faults", Json::parse(refusal.faults)}};
  } catch (const std::exception& error) {
    return {{"kind", "numerics"}, {"words", error.what()}, {"faults", Json::array()}};
  }
}

}  // namespace

/// The answer lives until the next call.
extern "C" EMSCRIPTEN_KEEPALIVE const char* quoin_call(const char* asked) {
  static std::string told;
  told = answer(asked).dump(-1, ' ', false, Json::error_handler_t::replace);
  return told.c_str();
}
