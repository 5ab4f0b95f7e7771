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

/// What a command has besides what may stand anywhere.
std::vector<Said> said_by_command(const CLI::App& command, const CLI::App& program) {
  std::vector<Said> own = said_by(command);
  for (const Said& anywhere : said_by(program))
    std::erase_if(own, [&](const Said& said) { return said.dashed == anywhere.dashed; });
  return own;
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

std::string roff_list(const std::vector<Said>& all) {
  std::string text;
  for (const Said& said : all) {
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

/// What zsh offers for a value or a name: folders, files, or nothing.
std::string zsh_action(const std::string& value) {
  if (value == "DIR") return "_files -/";
  const bool is_file = value == "CASE" || value == "FILE" || value == "DRAWING";
  return is_file ? "_files" : "";
}

/// A word of zsh's list of options.
std::string zsh_option(const Said& said) {
  const std::string about =
      replaced(replaced(replaced(said.about, "\\", "\\\\"), "[", "\\["), "]", "\\]");
  if (said.dashed.empty()) return shell_quoted("*:" + said.word + ":" + zsh_action(said.word));
  const std::string value =
      said.value.empty() ? "" : ":" + said.value + ":" + zsh_action(said.value);
  const std::string tail = shell_quoted("[" + about + "]" + value);
  if (said.letter.empty()) return "--" + said.word + tail;
  return fmt::format("'(-{0} --{1})'{{-{0},--{1}}}{2}", said.letter, said.word, tail);
}

std::string zsh_options(const std::vector<Said>& options, const std::string& between) {
  std::string all;
  for (const Said& said : options) all += between + zsh_option(said);
  return all;
}

}  // namespace

std::string man_page(const CLI::App& program) {
  // "Quoin: what it is" stands behind the name already.
  const std::string about = program.get_description();
  const std::size_t colon = about.find(": ");
  std::string page = fmt::format(
      ".TH QUOIN 1 \"\" \"quoin {}\" \"User Commands\"\n.SH NAME\nquoin \\- {}\n"
      ".SH SYNOPSIS\n.B quoin\n\\fICOMMAND\\fR [\\fIOPTION\\fR]... [\\fINAME\\fR]...\n"
      ".SH DESCRIPTION\n{}\n.SH OPTIONS\nThese may stand anywhere.\n{}",
      roff(QUOIN_VERSION), roff(about.substr(colon == std::string::npos ? 0 : colon + 2)),
      roff(about), roff_list(said_by(program)));
  page += ".SH COMMANDS\n";
  for (const CLI::App* command : commands_of(program)) {
    page += fmt::format(".SS \"quoin {}\"\n{}\n{}", roff(command->get_name()),
                        roff(command->get_description()),
                        roff_list(said_by_command(*command, program)));
  }
  page +=
      ".SH EXAMPLES\n"
      ".nf\nquoin new corner > corner.yaml\nquoin solve corner.yaml \\-o corner\n.fi\n"
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
    names += fmt::format("        {}\n",
                         shell_quoted(command->get_name() + ":" + command->get_description()));
    cases += fmt::format("        {})\n          _arguments \"$anywhere[@]\"{}\n          ;;\n",
                         command->get_name(),
                         zsh_options(said_by_command(*command, program), " \\\n            "));
  }
  return fmt::format(
      "#compdef quoin\n\n_quoin() {{\n"
      "  local context state state_descr line\n  typeset -A opt_args\n"
      "  local -a anywhere commands\n  anywhere=({}\n  )\n"
      "  _arguments -C \"$anywhere[@]\" '1:command:->command' '*::name:->rest' && return\n"
      "  case $state in\n"
      "    command)\n      commands=(\n{}      )\n      _describe command commands\n      ;;\n"
      "    rest)\n      case $words[1] in\n{}      esac\n      ;;\n"
      "  esac\n}}\n\n_quoin \"$@\"\n",
      zsh_options(said_by(program), "\n    "), names, cases);
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
