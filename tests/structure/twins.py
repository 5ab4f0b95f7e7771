# SPDX-License-Identifier: Apache-2.0
"""Runs one check of tools/checks on small trees: a sound one it must take, broken ones it must refuse.

usage: twins.py CHECK [ARGUMENT...]    (the arguments follow the tree on the check's command line)
"""

import pathlib
import subprocess
import sys
import tempfile

CHECKS = pathlib.Path(__file__).resolve().parents[2] / "tools" / "checks"
STYLE = pathlib.Path(__file__).resolve().parents[2] / ".clang-format"
SPDX = "// SPDX-License-" + "Identifier: Apache-2.0\n"
HEADER = SPDX + "#pragma once\n"

SOUND = {
    "CMakeLists.txt": "#" + SPDX[2:],
    "LICENSE": "Apache License\n",
    "README.md": "See https://example.org/home/page and build/work/log, tests/home/x.\n",
    "geometry/grid.hpp": HEADER + "\ninline int rows() { return 1; }\n",
    "solver/scheme/system.hpp": HEADER + '\n#include "geometry/grid.hpp"\n\nint unknowns();\n',
    "solver/scheme/system.cpp": SPDX + '#include "solver/scheme/system.hpp"\n\n#include <Eigen/Sparse>\n\n'
                                "int unknowns() { return rows(); }\n",
    "cases/text/yaml_tree.cpp": SPDX + "#include <yaml-cpp/yaml.h>\n",
    "tools/output/field/vtk_field.cpp": SPDX + '#include <vtkPoints.h>\n\n#include "solver/scheme/system.hpp"\n',
    "tools/page/vendor/editor.js": "var editor;\n",
    "tools/page/vendor/editor.licence.txt": "MIT\n",
    "tests/benchmarks/timing.hpp": HEADER + "\n#include <benchmark/missing_everywhere.h>\n",
    # Built files, which a tree without git tells by its list of what to ignore.
    ".gitignore": "/build-*/\n__pycache__/\n",
    "build-old/geometry/grid.hpp": "/" + "home/ann\n",
    "tests/__pycache__/tree.py": "/" + "home/ann\n",
    "tests/solver/test_system.cpp": SPDX + '#include "solver/scheme/system.hpp"\n',
    "solver/linear/order.hpp": HEADER + "\ninline constexpr int order[2] = {0, 1};\n"
                               "inline int order_of(int side) { return order[side]; }\n",
    # One name in two namespaces, or in a namespace without a name, is two types.
    "solver/a.hpp": HEADER + "namespace quoin::solver {\nstruct Row {};\n}  // namespace quoin::solver\n",
    "solver/b.cpp": SPDX + "namespace quoin::solver {\nnamespace {\nstruct Row {};\n}  // namespace\n"
                           "struct Row::Part {};\n}  // namespace quoin::solver\n",
}

# Check: list of (files laid over the sound tree, text the refusal must contain).
BROKEN = {
    "layers": [
        ({"geometry/grid.hpp": '#include "materials/law.hpp"\n'},
         "geometry/grid.hpp:1: geometry/ may not include materials/"),
        ({"materials/law.hpp": '#include "geometry/grid.hpp"\n'},
         "materials/ may not include geometry/"),
        ({"solver/scheme/system.hpp": '\n#  include "cases/model/case.hpp"\n'},
         "solver/scheme/system.hpp:2: solver/ may not include cases/"),
        ({"cases/model/case.hpp": '#include "solver/scheme/system.hpp"\n'}, "cases/ may not include solver/"),
        ({"cases/model/case.hpp": '#include "tools/answer/run.hpp"\n'}, "cases/ may not include tools/"),
        ({"solver/scheme/system.hpp": '#include "solver/findings/spots.hpp"\n'},
         "solver/scheme/ may not include solver/findings/, which stands above it"),
        ({"solver/attic/system.hpp": '#include "solver/scheme/system.hpp"\n'},
         "solver/attic/ is not a room of solver/"),
        ({"cases/grammar/quantity.hpp": '#include "cases/read.hpp"\n'},
         "cases/grammar/ may not include cases/, which stands above it"),
        ({"tools/output/pdf/report.cpp": '#include "tools/output/html/parts.hpp"\n'},
         "stand side by side"),
        ({"tools/answer/run.cpp": '#include "tests/support/within.hpp"\n'},
         "tools/ may not include tests/"),
        ({"solver/scheme/system.cpp": '#include "system.hpp"\n'}, "does not start at the top"),
        ({"solver/scheme/system.cpp": '#include "../geometry/grid.hpp"\n'}, "does not start at the top"),
        ({"cases/grammar/quantity.cpp": "#include <yaml-cpp/yaml.h>\n"},
         "yaml-cpp only in cases/text/yaml_tree.cpp"),
        ({"tools/report.cpp": "#include <vtkPoints.h>\n"}, "VTK only in tools/output/field/vtk_*.?pp"),
        ({"solver/scheme/system.hpp": "#include <Eigen/Sparse>\n"}, "Eigen only in solver/*.cpp"),
        ({"cases/case.cpp": "#include <Eigen/Dense>\n"}, "Eigen only in solver/*.cpp"),
        ({"solver/findings.cpp": "#include <nlohmann/json.hpp>\n"}, "nlohmann-json only in"),
        ({"tools/answer/run.cpp": "#include <CLI/CLI.hpp>\n"}, "CLI11 only in tools/main.cpp, tools/command/*.cpp"),
        ({"geometry/grid.cpp": "#include <doctest/doctest.h>\n"}, "doctest only in tests/"),
        ({"geometry/grid.hpp": '#include "geometry/line.hpp"\n',
          "geometry/line.hpp": '#include "geometry/grid.hpp"\n'},
         "cycle: geometry/grid.hpp -> geometry/line.hpp -> geometry/grid.hpp"),
        ({"geometry/grid.hpp": '#include "geometry/line.hpp"\n',
          "geometry/line.hpp": '#include "geometry/point.hpp"\n',
          "geometry/point.hpp": '#include "geometry/line.hpp"\n'},
         "cycle: geometry/line.hpp -> geometry/point.hpp -> geometry/line.hpp"),
        ({"cases/case.cpp": '#include "yaml-cpp/yaml.h"\n'}, "does not start at the top"),
    ],
    "headers": [
        ({"geometry/grid.hpp": "#pragma once\nstd::vector<int> rows();\n"},
         "geometry/grid.hpp: does not compile on its own"),
        ({"geometry/grid.hpp": "inline int rows() { return 1; }\n"},
         "geometry/grid.hpp: does not compile on its own"),
        ({"geometry/grid.hpp": "#pragma once\ninline int rows(long n) { return n; }\n"},
         "geometry/grid.hpp: does not compile on its own"),
        ({"geometry/grid.hpp": "#pragma once\n#include <fmt/missing_everywhere.h>\n"},
         "geometry/grid.hpp: does not compile on its own"),
    ],
    "format": [
        ({"geometry/grid.hpp": HEADER + "\ninline int rows(){ return 1; }\n"},
         "geometry/grid.hpp:4"),
        ({"solver/scheme/system.cpp": SPDX + "\n   int unknowns();\n"}, "solver/scheme/system.cpp:"),
    ],
    "licence": [
        ({"tools/page/vendor/reader.js": "var reader;\n"}, "no notice beside it, reader.licence.txt"),
        ({"tools/page/editor.js": "var editor;\n", "tools/page/editor.licence.txt": "MIT\n"}, "tools/page/editor.js: no line"),
        ({"geometry/grid.hpp": "#pragma once\n"}, "geometry/grid.hpp: no line"),
        ({"geometry/grid.cpp": "\n\n" + SPDX}, "geometry/grid.cpp: no line"),
        ({"CMakeLists.txt": "project(quoin)\n"}, "CMakeLists.txt: no line"),
        ({"tools/demo": "#!/bin/sh\n"}, "tools/demo: no line"),
        ({"tools/checks/tree.py": "import sys\n"}, "tools/checks/tree.py: no line"),
    ],
    "top_level": [
        ({"src/grid.cpp": SPDX}, "src: not a name of the top level"),
        ({"notes.txt": "\n"}, "notes.txt: not a name of the top level"),
        ({".gitignore": "__pycache__/\n"}, "build-old: not a name of the top level"),
        ({"tests/.gitignore": "/build-*/\n", ".gitignore": "__pycache__\n/build/\n"},
         "build-old: not a name of the top level"),
    ],
    "places": [
        ({"README.md": "Built in /" + "home/ann/quoin.\n"}, "README.md:1: names /" + "home/ann"),
        ({"tests/solver/test_system.cpp": SPDX + 'auto f = "/' + 'work/case.yaml";\n'},
         "test_system.cpp:2: names /" + "work/case"),
    ],
    "constants": [
        ({"geometry/grid.hpp": HEADER + "\ninline const double reach = root(0.6);\n"},
         "geometry/grid.hpp:4: reach is computed when the program starts"),
        ({"geometry/grid.hpp": HEADER + "\ninline const double places[3] = {root(0.6), 0, 1};\n"},
         "geometry/grid.hpp:4: places is computed when the program starts"),
        ({"geometry/grid.hpp": HEADER + "\ninline std::vector<int> rows{1, 2};\n"},
         "geometry/grid.hpp:4: rows is computed when the program starts"),
    ],
    "one_definition": [
        ({"solver/scheme/row.hpp": HEADER + "namespace quoin::solver {\nstruct Line {};\n}  // namespace quoin::solver\n",
          "solver/scheme/run.cpp": SPDX + "namespace quoin::solver {\nclass Line final : Base {};\n}  // namespace quoin::solver\n"},
         "solver/scheme/run.cpp:3: quoin::solver::Line is defined in solver/scheme/row.hpp, too"),
    ],
}


def verdict(check, contents, arguments):
    """Exit code and output of a check on a tree of the given files."""
    with tempfile.TemporaryDirectory() as folder:
        root = pathlib.Path(folder)
        for name, content in {".clang-format": STYLE.read_text(encoding="utf-8"),
                              **contents}.items():
            (root / name).parent.mkdir(parents=True, exist_ok=True)
            (root / name).write_text(content, encoding="utf-8")
        ran = subprocess.run([sys.executable, CHECKS / f"{check}.py", root, *arguments],
                             capture_output=True, text=True, check=False)
        return ran.returncode, ran.stdout + ran.stderr


def main():
    check, arguments = sys.argv[1], sys.argv[2:]
    code, output = verdict(check, SOUND, arguments)
    if code == 77:
        print(output)
        sys.exit(77)
    failures = [] if code == 0 else [f"a sound tree was refused:\n{output}"]
    for changes, expected in BROKEN[check]:
        code, output = verdict(check, {**SOUND, **changes}, arguments)
        if code != 1 or expected not in output:
            failures.append(f"expected exit 1 and '{expected}', got exit {code}:\n{output}")
    print("\n".join(failures))
    print(f"{check}: {len(BROKEN[check]) + 1} trees, {len(failures)} wrongly judged")
    sys.exit(1 if failures else 0)


if __name__ == "__main__":
    main()
