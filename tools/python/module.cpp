// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>
#include <pybind11/numpy.h>
#include <pybind11/pybind11.h>
#include <pybind11/stl.h>

#include <cerrno>
#include <memory>
#include <optional>
#include <string>

#include "cases/meaning/catalogue.hpp"
#include "cases/meaning/starting_survey.hpp"
#include "cases/read.hpp"
#include "cases/schema.hpp"
#include "cases/starting_case.hpp"
#include "cases/text/faults.hpp"
#include "cases/text/words.hpp"
#include "materials/conductivity.hpp"
#include "materials/moisture.hpp"
#include "solver/linear/errors.hpp"
#include "tools/answer/results/version.hpp"
#include "tools/answer/run.hpp"
#include "tools/command/case_files.hpp"
#include "tools/disk/output_folder.hpp"
#include "tools/draw/pictures.hpp"
#include "tools/output/html/report.hpp"
#include "tools/output/json/findings.hpp"
#include "tools/output/json/findings_schema.hpp"
#include "tools/output/outputs.hpp"
#include "tools/python/interruptible.hpp"

namespace py = pybind11;
using namespace pybind11::literals;

namespace quoin::python {
namespace {

using Shared = std::shared_ptr<const tools::Results>;

/// The work was told to leave off.
struct Left : std::exception {};

/// An array that shows values of the results and keeps them alive. Shape: as given.
template <class T>
py::array view(const Shared& results, const T* values, std::vector<py::ssize_t> shape) {
  const auto keep = new Shared(results);
  const py::capsule owner(keep, [](void* kept) { delete static_cast<Shared*>(kept); });
  py::array array(py::dtype::of<T>(), std::move(shape), values, owner);
  // What is found does not change.
  array.attr("flags").attr("writeable") = false;
  return array;
}

/// The field of one variant for one purpose.
struct Field {
  py::array x, y;
  py::dict basis;
  py::array temperature;
  py::array solid;
};

Field field_of(const Shared& results, const tools::SolvedVariant& solved,
               const std::string& purpose) {
  if (purpose != "surface" && purpose != "heat")
    throw py::value_error("a purpose is \"surface\" or \"heat\", not \"" + purpose + "\"");
  const solver::Solution& solution = purpose == "surface" ? solved.surface : solved.heat;
  const geometry::Mesh& mesh = solution.field.mesh;
  const auto nx = static_cast<py::ssize_t>(mesh.nx()), ny = static_cast<py::ssize_t>(mesh.ny());
  Field field;
  field.x = view(results, mesh.x.data(), {nx});
  field.y = view(results, mesh.y.data(), {ny});
  for (std::size_t a = 0; a < solution.field.airs.size(); ++a) {
    const std::string& name = solved.variant.spaces[solution.field.airs[a]].name;
    field.basis[py::str(name)] = view(results, solution.field.basis[a].data(), {ny, nx});
  }
  field.temperature = view(results, solution.temperature.data(), {ny, nx});
  static_assert(sizeof(bool) == sizeof(char));
  field.solid = view(results, reinterpret_cast<const bool*>(solution.field.solid.data()), {ny, nx});
  return field;
}

/// One variant of results that live as long as it does.
struct Variant {
  Shared results;
  std::size_t index = 0;

  [[nodiscard]] const tools::SolvedVariant& solved() const { return results->variants[index]; }
};

/// A solved case.
class Solved {
 public:
  explicit Solved(Shared results) : results_(std::move(results)) {}

  [[nodiscard]] std::string findings() const { return tools::findings_json(*results_); }

  [[nodiscard]] py::dict variants() const {
    py::dict all;
    for (std::size_t v = 0; v < results_->variants.size(); ++v)
      all[py::str(results_->variants[v].variant.name)] = Variant{results_, v};
    return all;
  }

  [[nodiscard]] std::string svg(const std::string& kind,
                                const std::optional<std::string>& variant) {
    const std::size_t v = variant ? index_of(*variant) : 0;
    const tools::Pictures& drawn = pictures();
    const tools::Picture* picture = kind == "section"   ? &drawn.sections[v]
                                    : kind == "field"   ? &drawn.fields[v]
                                    : kind == "flow"    ? &drawn.flows[v]
                                    : kind == "surface" ? &drawn.surface
                                    : kind == "compare" ? &drawn.compare
                                                        : nullptr;
    if (picture == nullptr)
      throw py::value_error(
          "a picture is \"section\", \"field\", \"flow\", \"surface\" or \"compare\", not \"" +
          kind + "\"");
    return picture->noted(results_->note).svg();
  }

  [[nodiscard]] std::string report() { return tools::report_page(*results_, pictures()); }

  void save(const std::string& folder, bool replace) const {
    const Shared results = results_;
    run_interruptible([results, folder, replace](const std::function<bool()>&) {
      tools::write_folder(folder, tools::files_of(*results),
                          replace ? tools::Foreign::replaced : tools::Foreign::refused);
    });
  }

 private:
  [[nodiscard]] std::size_t index_of(const std::string& name) const {
    for (std::size_t v = 0; v < results_->variants.size(); ++v) {
      if (results_->variants[v].variant.name == name) return v;
    }
    throw py::key_error(name);
  }
  [[nodiscard]] const tools::Pictures& pictures() {
    if (!pictures_) pictures_ = tools::pictures_of(*results_);
    return *pictures_;
  }

  Shared results_;
  std::optional<tools::Pictures> pictures_;
};

/// The case in a file; a house has several, to be solved one by one.
cases::Case case_in_file(const std::string& file) {
  tools::CaseOrHouse read = tools::case_or_house_in(file);
  if (!read.house) return std::move(read.source);
  cases::Fault fault;
  fault.file = file;
  fault.what = "this is a house, not a case";
  fault.remedy = "solve the case files that it names, or the house by `quoin solve`";
  throw cases::InputError({fault});
}

/// Without a text: that of the file.
Solved solve(const std::optional<std::string>& text, const std::string& file, int threads) {
  if (threads < 1) throw py::value_error("threads is a whole number from 1");
  const auto found = std::make_shared<Shared>();
  run_interruptible([=](const std::function<bool()>& left) {
    const cases::Case source = text ? cases::case_of(*text, "the case") : case_in_file(file);
    solver::Effort effort;
    effort.linear.threads = threads;
    *found = std::make_shared<const tools::Results>(
        tools::results_of(source, file, effort, [&](const std::string&, std::size_t, std::size_t) {
          if (left()) throw Left{};
        }));
  });
  return Solved(*found);
}

py::list faults_of(const cases::InputError& error) {
  py::list all;
  for (const cases::Fault& fault : error.faults) {
    all.append(py::dict("file"_a = fault.file, "line"_a = fault.line, "column"_a = fault.column,
                        "source"_a = fault.source, "what"_a = fault.what, "found"_a = fault.found,
                        "expected"_a = fault.expected, "remedy"_a = fault.remedy));
  }
  return all;
}

std::string words_of(const cases::InputError& error) {
  std::string text;
  for (const cases::Fault& fault : error.faults) text += cases::text_of(fault) + '\n';
  return text;
}

std::string start(const std::string& recipe) {
  if (recipe == "survey") return std::string(cases::starting_survey());
  if (recipe == "house") return std::string(cases::starting_house());
  if (const auto text = cases::starting_case(recipe)) return *text;
  std::vector<std::string> known;
  for (const cases::StartingPoint& point : cases::starting_points()) known.emplace_back(point.name);
  known.insert(known.end(), {"survey", "house"});
  throw py::value_error(fmt::format("no recipe has the name \"{}\"; there are: {}", recipe,
                                    cases::joined(known, ", ")));
}

py::dict materials() {
  py::dict all;
  for (const materials::Material& material : cases::catalogue().materials) {
    py::dict states;
    for (const auto& [name, state] : materials::named_states) {
      const auto moisture = materials::moisture_of(material, state);
      const double* known = std::get_if<double>(&moisture);
      if (known == nullptr) continue;
      states[py::str(std::string(name))] =
          py::dict("moisture_m3_m3"_a = *known,
                   "conductivity_W_mK"_a = materials::conductivity_of(material, *known).value);
    }
    all[py::str(material.name)] = py::dict(
        "about"_a = material.about, "conductivity_dry_W_mK"_a = material.conductivity.value,
        "density_kg_m3"_a = material.density.value,
        "law"_a = std::string(materials::name_of(material.law)),
        "source"_a = material.conductivity.source, "states"_a = states);
  }
  return all;
}

/// What is thrown here as Python has it.
void add_errors(py::module_& module) {
  // Held for as long as the process lives: what throws may outlive the module.
  static const py::handle input =
      py::exception<cases::InputError>(module, "InputError", PyExc_ValueError).release();
  static const py::handle numerics =
      py::exception<solver::SolveError>(module, "SolveError", PyExc_RuntimeError).release();
  py::register_exception_translator([](std::exception_ptr thrown) {
    try {
      if (thrown) std::rethrow_exception(thrown);
    } catch (const cases::InputError& error) {
      const py::object raised = input(words_of(error));
      raised.attr("faults") = faults_of(error);
      PyErr_SetObject(input.ptr(), raised.ptr());
    } catch (const solver::SolveError& error) {
      PyErr_SetString(numerics.ptr(), error.what());
    } catch (const tools::DiskError& error) {
      PyErr_SetString(PyExc_OSError, error.what());
    }
  });
}

}  // namespace

PYBIND11_MODULE(_quoin, module) {
  module.attr("version") = QUOIN_VERSION;
  add_errors(module);
  py::class_<Field>(
      module, "Field",
      "A field on its grid. Arrays are views without copies that outlive the results.")
      .def_readonly("x", &Field::x, "Of the columns of nodes, m.")
      .def_readonly("y", &Field::y, "Of the rows of nodes, m.")
      .def_readonly("basis", &Field::basis,
                    "By the name of an air: g, 1 in it and 0 in all others. Rows by columns.")
      .def_readonly("temperature", &Field::temperature,
                    "degC, rows by columns; 0 outside the material.")
      .def_readonly("solid", &Field::solid, "Where there is material, rows by columns.");
  py::class_<Variant>(module, "Variant", "One variant of a solved case.")
      .def_property_readonly("name", [](const Variant& self) { return self.solved().variant.name; })
      .def(
          "field",
          [](const Variant& self, const std::string& purpose) {
            return field_of(self.results, self.solved(), purpose);
          },
          "purpose"_a = "surface",
          "Its field with the surface resistances of a purpose: \"surface\" for temperatures and "
          "humidity, \"heat\" for heat flow.")
      .def("__repr__", [](const Variant& self) {
        return fmt::format("<quoin.Variant '{}'>", self.solved().variant.name);
      });
  py::class_<Solved>(module, "Solved")
      .def("findings_json", &Solved::findings)
      .def_property_readonly("variants", &Solved::variants)
      .def("svg", &Solved::svg)
      .def("report", &Solved::report)
      .def("save", &Solved::save);
  module.def("solve", &solve);
  module.def("start", &start);
  module.def("schema", [](bool findings) {
    return findings ? std::string(tools::findings_schema()) : cases::schema_text();
  });
  module.def("materials", &materials);
  py::module_::import("atexit").attr("register")(py::cpp_function(&wait_for_left_work));
}

}  // namespace quoin::python
