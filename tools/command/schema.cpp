// SPDX-License-Identifier: Apache-2.0
#include "cases/schema.hpp"

#include <CLI/App.hpp>
#include <memory>
#include <ostream>

#include "tools/command/command.hpp"
#include "tools/output/json/findings_schema.hpp"

namespace quoin::tools {

Command schema_command(CLI::App& program) {
  CLI::App* words = program.add_subcommand("schema", "JSON schema of the case file, for editors");
  const auto of_findings = std::make_shared<bool>(false);
  words->add_flag("--findings", *of_findings, "that of findings.json, for scripts");
  return {words, [of_findings](const Terminal& terminal) {
            terminal.out << spelt_lines(
                *of_findings ? std::string(findings_schema()) : cases::schema_text() + '\n',
                terminal.style);
            return Exit::done;
          }};
}

}  // namespace quoin::tools
