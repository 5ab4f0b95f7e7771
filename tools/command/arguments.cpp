// SPDX-License-Identifier: Apache-2.0
#include "tools/command/arguments.hpp"

#include <fmt/format.h>

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <algorithm>
#include <charconv>
#include <iterator>
#include <memory>

#include "cases/text/faults.hpp"
#include "cases/text/words.hpp"
#include "tools/answer/results/version.hpp"
#include "tools/command/built.hpp"
#include "tools/terminal/text_table.hpp"

namespace quoin::tools {
namespace {

/// Help without the library's signs for what a reader need not know.
class Help : public CLI::Formatter {
 public:
  Help() {
    label("Positionals", "Names");
    label("SUBCOMMAND", "COMMAND");
  }
  std::string make_option_opts(const CLI::Option* option) const override {
    const std::string value = option->get_type_size() != 0 ? option->get_type_name() : "";
    return value.empty() ? "" : " " + value;
  }
};

/// The words typed so far that name a command: "quoin solve".
std::string name_of(const CLI::App& program) {
  std::string name = program.get_name();
  for (const CLI::App* command : program.get_subcommands()) name += " " + command->get_name();
  return name;
}

[[noreturn]] void refuse(const std::string& where, const std::string& what,
                         const std::string& found, const std::string& expected,
                         const std::string& remedy = "") {
  cases::Fault fault;
  fault.file = where;
  fault.what = what;
  fault.found = found.empty() ? "nothing" : harmless(found, {});
  fault.expected = expected;
  fault.remedy = remedy;
  throw cases::InputError({fault});
}

std::vector<std::string> options_of(const CLI::App& program) {
  std::vector<std::string> names;
  std::vector<const CLI::App*> levels{&program};
  for (const CLI::App* command : program.get_subcommands()) levels.push_back(command);
  for (const CLI::App* level : levels) {
    for (const CLI::Option* option : level->get_options()) {
      if (option->get_lnames().empty()) continue;
      names.push_back("--" + option->get_lnames().front());
    }
  }
  return names;
}

std::vector<std::string> commands_of(const CLI::App& program) {
  std::vector<std::string> names;
  const auto is_shown = [](const CLI::App* command) { return !command->get_group().empty(); };
  for (const CLI::App* command : program.get_subcommands(is_shown)) {
    names.push_back(command->get_name());
  }
  return names;
}

[[noreturn]] void refuse_unknown(const CLI::App& program, const std::string& word) {
  const std::string where = name_of(program);
  if (word.size() > 1 && word.front() == '-') {
    refuse(where, "there is no such option", word,
           fmt::format("an option that {} --help lists", where),
           cases::did_you_mean(word.substr(0, word.find('=')), options_of(program)));
  }
  if (program.get_subcommands().empty()) {
    const std::vector<std::string> known = commands_of(program);
    refuse(where, "there is no such command", word, cases::joined(known, ", "),
           cases::did_you_mean(word, known));
  }
  refuse(where, "this is more than the command takes", word,
         fmt::format("what {} --help tells", where), "put a name with spaces into quotes");
}

[[noreturn]] void refuse_missing(const CLI::App& program) {
  const std::string where = name_of(program);
  for (const CLI::App* command : program.get_subcommands()) {
    for (const CLI::Option* option : command->get_options()) {
      if (!option->get_required() || option->count() > 0) continue;
      refuse(where, fmt::format("no {} is named", option->get_name()), "nothing",
             fmt::format("{} {}", where, option->get_name()),
             fmt::format("{} --help tells more", where));
    }
  }
  refuse(where, "no command is named", "nothing", cases::joined(commands_of(program), ", "),
         "quoin --help tells more");
}

/// An error of the library in our words. It names the option it means.
[[noreturn]] void refuse_usage(const CLI::App& program, const CLI::ParseError& error) {
  const std::string text = error.what();
  const std::size_t start = std::min(text.find("--"), text.size());
  const std::string option = text.substr(start, text.find_first_of(": ", start) - start);
  const std::string where = name_of(program);
  const auto tells = [&](const char* words) { return text.find(words) != std::string::npos; };
  if (tells("missing")) refuse(where, "this option needs a value", option, option + " VALUE");
  if (tells("t Most")) refuse(where, "this option is given more than once", option, "it once");
  refuse(where, "this option takes no such value", option,
         fmt::format("what {} --help tells", where));
}

}  // namespace

void describe(CLI::App& program) {
  program.name("quoin");
  program.formatter(std::make_shared<Help>());
  program.set_help_flag("-h,--help", "print this and end");
  program.set_version_flag(
      "--version", fmt::format("quoin {} ({}, {})", QUOIN_VERSION, built_from(), built_by()),
      "print the version with its commit and compiler, and end");
  program.require_subcommand(1);
  program.fallthrough();
}

bool read_arguments(CLI::App& program, int argc, char** argv, std::string& answer) {
  for (CLI::App* command : program.get_subcommands([](const CLI::App*) { return true; })) {
    if (!command->get_group().empty()) command->group("Commands");  // else it is not shown
  }
  try {
    program.parse(argc, argv);
    return true;
  } catch (const CLI::CallForHelp&) {
    answer = program.help();
  } catch (const CLI::CallForVersion& version) {
    answer = std::string(version.what()) + '\n';
  } catch (const CLI::ParseError& error) {
    const std::vector<std::string> unknown = program.remaining(true);
    if (!unknown.empty()) refuse_unknown(program, unknown.front());
    if (dynamic_cast<const CLI::RequiredError*>(&error) != nullptr) refuse_missing(program);
    refuse_usage(program, error);
  }
  return false;
}

void add_cases(CLI::App& command, std::vector<std::string>& cases) {
  command.add_option("CASE", cases, "case files; - is standard input")->required()->type_name("");
}

void add_whole_number(CLI::App& command, const WholeNumber& option,
                      const std::function<void(std::size_t)>& set) {
  const std::string where = "quoin " + command.get_name();
  const std::function<void(const std::string&)> read = [=](const std::string& text) {
    const char* end = text.data() + text.size();
    std::size_t number = 0;
    const auto [stop, failed] = std::from_chars(text.data(), end, number);
    if (failed != std::errc() || stop != end || number < option.low || number > option.high) {
      refuse(where, fmt::format("{} has no such value", option.name), text,
             fmt::format("a whole number from {} to {}", option.low, option.high));
    }
    if (!option.refuse) return set(number);
    if (const std::string why = option.refuse(number); !why.empty()) {
      refuse(where, fmt::format("{} is too high", option.name), text, why);
    }
    set(number);
  };
  command
      .add_option_function(option.name, read,
                           fmt::format("{}; {} to {}", option.help, option.low, option.high))
      ->type_name("NUMBER");
}

void add_choice(CLI::App& command, const std::string& name, const std::string& help,
                const std::vector<std::string>& words,
                const std::function<void(std::size_t)>& set) {
  const std::string where = "quoin " + command.get_name();
  const std::function<void(const std::string&)> read = [=](const std::string& text) {
    const auto word = std::find(words.begin(), words.end(), text);
    if (word == words.end()) {
      refuse(where, fmt::format("{} has no such value", name), text, cases::joined(words, " or "),
             cases::did_you_mean(text, words));
    }
    set(static_cast<std::size_t>(word - words.begin()));
  };
  command
      .add_option_function(name, read, fmt::format("{}: {}", help, cases::joined(words, " or ")))
      ->type_name("WORD");
}

}  // namespace quoin::tools
