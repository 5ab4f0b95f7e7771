// SPDX-License-Identifier: Apache-2.0
#include "tools/command/pages.hpp"

#include <fmt/format.h>

#include <CLI/App.hpp>
#include <functional>
#include <memory>
#include <ostream>
#include <vector>

#include "tools/answer/results/version.hpp"
#include "tools/command/arguments.hpp"
#include "tools/command/command.hpp"

namespace quoin::tools {
namespace {

/// An option or a name as pages tell it.
struct Said {
  std::string dashed;  ///< "-o, --output"; empty: a name in its place
  std::string letter;  ///< "o"; empty: none
  std::string word;    ///< "output", or the name
  std::string value;   ///< what it takes, "DIR"; empty: nothing
  std::string about;
};

std::vector<Said> said_by(const CLI::App& words) {
  std::vector<Said> all;
  for (const CLI::Option* option : words.get_options()) {
    if (option->get_group().empty()) continue;
    Said said;
    if (!option->get_snames().empty()) {
      said.letter = option->get_snames().front();
      said.dashed = "-" + said.letter;
    }
    if (!option->get_lnames().empty()) {
      said.word = option->get_lnames().front();
      said.dashed += (said.dashed.empty() ? "--" : ", --") + said.word;
    } else {
      said.word = option->get_name();
    }
    if (!said.dashed.empty() && option->get_type_size() != 0) said.value = option->get_type_name();
    said.about = option->get_description();
    all.push_back(std::move(said));
  }
  return all;
}

std::vector<const CLI::App*> commands_of(const CLI::App& program) {
  return program.get_subcommands(
      [](const CLI::App* command) { return !command->get_group().empty(); });
}

std::string replaced(std::string text, const std::string& what, const std::string& by) {
  for (std::size_t at = text.find(what); at != std::string::npos;
       at = text.find(what, at + by.size()))
    text.replace(at, what.size(), by);
  return text;
}

/// As a manual page writes it: dashes that are typed, no line that begins like a request.
std::string roff(const std::string& text) {
  std::string safe = replaced(replaced(text, "\\", "\\e"), "-", "\\-");
  if (!safe.empty() && (safe.front() == '.' || safe.front() == '\'')) safe = "\\&" + safe;
  return safe;
}

std::string roff_list(const CLI::App& words) {
  std::string text;
  for (const Said& said : said_by(words)) {
    const std::string name = said.dashed.empty() ? said.word : said.dashed;
    text += fmt::format(".TP\n\\fB{}\\fR{}\n{}\n", roff(name),
                        said.value.empty() ? "" : " \\fI" + roff(said.value) + "\\fR",
                        roff(said.about));
  }
  return text;
}

/// Between single quotes of a shell.
std::string shell_quoted(const std::string& text) {
  return "'" + replaced(text, "'", "'\\''") + "'";
}

/// A word of zsh's list of options.
std::string zsh_option(const Said& said) {
  const std::string about =
      replaced(replaced(replaced(said.about, "\\", "\\\\"), "[", "\\["), "]", "\\]");
  if (said.dashed.empty()) return shell_quoted("*:" + said.word + ":_files");
  const std::string value = said.value.empty()    ? ""
                            : said.value == "DIR" ? ":folder:_files -/"
                                                  : ":" + said.value + ":";
  const std::string tail = shell_quoted("[" + about + "]" + value);
  if (said.letter.empty()) return "--" + said.word + tail;
  return fmt::format("{{-{},--{}}}{}", said.letter, said.word, tail);
}

}  // namespace

std::string man_page(const CLI::App& program) {
  std::string page = fmt::format(
      ".TH QUOIN 1 \"\" \"quoin {}\" \"User Commands\"\n.SH NAME\nquoin \\- {}\n"
      ".SH SYNOPSIS\n.B quoin\n\\fICOMMAND\\fR [\\fIOPTION\\fR]... [\\fINAME\\fR]...\n"
      ".SH DESCRIPTION\n{}\n.SH OPTIONS\nThese may stand anywhere.\n{}",
      roff(QUOIN_VERSION), roff(program.get_description()), roff(program.get_description()),
      roff_list(program));
  page += ".SH COMMANDS\n";
  for (const CLI::App* command : commands_of(program)) {
    page += fmt::format(".SS \"quoin {}\"\n{}\n{}", roff(command->get_name()),
                        roff(command->get_description()), roff_list(*command));
  }
  page +=
      ".SH EXIT STATUS\n"
      ".TP\n0\ndone\n"
      ".TP\n1\na verification or, with \\fB\\-\\-fail\\-on\\-risk\\fR, a criterion does not hold\n"
      ".TP\n2\nthe input is wrong\n"
      ".TP\n3\nthe numerics failed or the memory was not enough\n"
      ".TP\n4\nthe disk failed or holds files of yours in the way\n";
  return page;
}

std::string bash_completion(const CLI::App& program) {
  const auto words_of = [](const CLI::App& words) {
    std::string list;
    for (const Said& said : said_by(words)) {
      if (said.dashed.empty()) continue;
      if (!said.letter.empty()) list += "-" + said.letter + " ";
      if (!said.word.empty() && said.word != said.letter) list += "--" + said.word + " ";
    }
    return list;
  };
  std::string commands, cases;
  for (const CLI::App* command : commands_of(program)) {
    commands += command->get_name() + " ";
    cases +=
        fmt::format("    {}) words=\"{}$words\" ;;\n", command->get_name(), words_of(*command));
  }
  return fmt::format(
      "# bash completion of quoin\n"
      "_quoin() {{\n"
      "  local current=${{COMP_WORDS[COMP_CWORD]}} command= word\n"
      "  for word in \"${{COMP_WORDS[@]:1:COMP_CWORD-1}}\"; do\n"
      "    [[ $word == -* ]] || {{ command=$word; break; }}\n"
      "  done\n"
      "  local words=\"{}\"\n"
      "  case $command in\n"
      "    '') words=\"{}$words\" ;;\n"
      "{}"
      "  esac\n"
      "  COMPREPLY=()\n"
      "  if [[ -z $command || $current == -* ]]; then\n"
      "    mapfile -t COMPREPLY < <(compgen -W \"$words\" -- \"$current\")\n"
      "  fi\n"
      "}}\n"
      "complete -o bashdefault -o default -F _quoin quoin\n",
      words_of(program), commands, cases);
}

std::string zsh_completion(const CLI::App& program) {
  std::string names, cases;
  for (const CLI::App* command : commands_of(program)) {
    names += fmt::format("    {}\n",
                         shell_quoted(command->get_name() + ":" + command->get_description()));
    cases += fmt::format("    {})\n      _arguments", command->get_name());
    for (const CLI::App* level : {command, &program}) {
      for (const Said& said : said_by(*level)) cases += " \\\n        " + zsh_option(said);
    }
    cases += "\n      ;;\n";
  }
  return fmt::format(
      "#compdef quoin\n\n_quoin() {{\n  local -a commands\n  commands=(\n{}  )\n"
      "  if (( CURRENT == 2 )); then\n    _describe command commands\n    return\n  fi\n"
      "  local command=$words[2]\n  shift words\n  (( CURRENT-- ))\n"
      "  case $command in\n{}  esac\n}}\n\n_quoin \"$@\"\n",
      names, cases);
}

std::string fish_completion(const CLI::App& program) {
  std::string text = "# fish completion of quoin\n";
  const auto add = [&](const CLI::App& words, const std::string& when) {
    for (const Said& said : said_by(words)) {
      if (said.dashed.empty()) continue;
      text += "complete -c quoin" + when;
      if (!said.letter.empty()) text += " -s " + said.letter;
      if (said.word != said.letter) text += " -l " + said.word;
      if (!said.value.empty()) text += " -r";
      text += " -d " + shell_quoted(said.about) + "\n";
    }
  };
  add(program, "");
  for (const CLI::App* command : commands_of(program)) {
    text += fmt::format("complete -c quoin -f -n __fish_use_subcommand -a {} -d {}\n",
                        command->get_name(), shell_quoted(command->get_description()));
    add(*command, fmt::format(" -n '__fish_seen_subcommand_from {}'", command->get_name()));
  }
  return text;
}

Command pages_command(CLI::App& program) {
  CLI::App* words = program.add_subcommand("pages", "the manual page and completions for shells");
  words->group("");  // for who installs the program
  using Page = std::string (*)(const CLI::App&);
  const auto page = std::make_shared<Page>(man_page);
  add_choice(
      *words, "--for", "what to print", {"man", "bash", "zsh", "fish"}, [page](std::size_t choice) {
        constexpr Page pages[] = {man_page, bash_completion, zsh_completion, fish_completion};
        *page = pages[choice];
      });
  return {words, [page, &program](const Terminal& terminal) {
            terminal.out << (*page)(program);
            return Exit::done;
          }};
}

}  // namespace quoin::tools
