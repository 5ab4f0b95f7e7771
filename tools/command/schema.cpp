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
            if (*of_findings) {
              terminal.out << findings_schema();
            } else {
              terminal.out << cases::schema_text() << '\n';
            }
            return Exit::done;
          }};
}

}  // namespace quoin::tools
