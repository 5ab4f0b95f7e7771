// SPDX-License-Identifier: Apache-2.0
#include "solver/findings/courses.hpp"

#include <utility>

namespace quoin::solver {

std::vector<Course> courses_of(const Solution& solution) {
  const bool in_triangles = solution.triangles.has_value();
  std::vector<Course> courses;
  std::vector<geometry::Surface> surfaces =
      in_triangles ? solution.triangles->surfaces
                   : geometry::surfaces(solution.field.mesh, solution.physics.air);
  for (geometry::Surface& surface : surfaces) {
    Course course{std::move(surface), {}, {}};
    for (std::size_t k = 0; k < course.surface.along.size(); ++k) {
      const std::size_t node = course.surface.node(k);
      course.place.push_back(in_triangles ? solution.triangles->places[node]
                                          : solution.field.mesh.place(node));
      course.temperature.push_back(in_triangles ? solution.triangles->temperature[node]
                                                : solution.temperature[node]);
    }
    courses.push_back(std::move(course));
  }
  return courses;
}

}  // namespace quoin::solver
