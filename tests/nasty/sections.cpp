// SPDX-License-Identifier: Apache-2.0
#include "tests/nasty/sections.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "geometry/flaws.hpp"
#include "tests/laws/random_section.hpp"

namespace quoin::testing {
namespace {

using geometry::Outline;
using geometry::Point;

constexpr SpaceId room{0}, outside{1};

/// A problem with its two airs; sometimes one of them has no surface resistance.
Problem with_airs(Dice& dice) {
  Problem problem;
  const bool bare = dice.share() < 0.1;
  problem.space(20, bare ? 0.0 : dice.scaled_between(0.04, 0.3));
  problem.space(0, dice.share() < 0.1 ? 0.0 : dice.scaled_between(0.02, 0.1));
  return problem;
}

/// A wall between the room on the left and outside on the right.
struct Wall {
  double thickness;
  double height;
};

Wall paint_wall(Problem& problem, Dice& dice) {
  const Wall wall{dice.between(0.1, 0.5), dice.between(0.3, 1.0)};
  problem.paint(room, -0.1, 0, 0, wall.height);
  problem.paint(outside, wall.thickness, wall.thickness + 0.1, 0, wall.height);
  problem.paint(problem.material(dice.scaled_between(0.2, 2.0)), 0, wall.thickness, 0, wall.height);
  return wall;
}

Outline turned(Outline outline, double angle) {
  const double c = std::cos(angle), s = std::sin(angle);
  for (Point& p : outline) p = {c * p.x - s * p.y, s * p.x + c * p.y};
  return outline;
}

Outline box(double x0, double x1, double y0, double y1, double angle) {
  return turned(geometry::rectangle(x0, x1, y0, y1), angle);
}

Problem rectangles(Dice& dice) {
  Problem problem = with_airs(dice);
  const Wall wall = paint_wall(problem, dice);
  for (std::size_t k = 2 + dice.below(6); k > 0; --k) {
    const double x = dice.between(0, 0.8) * wall.thickness, y = dice.between(0, 0.8) * wall.height;
    problem.paint(problem.material(dice.scaled_between(0.02, 200)), x,
                  x + dice.between(0.05, 1) * (wall.thickness - x), y,
                  y + dice.between(0.05, 1) * (wall.height - y));
  }
  return problem;
}

Problem thin_metal(Dice& dice) {
  Problem problem = with_airs(dice);
  const Wall wall = paint_wall(problem, dice);
  const RegionId insulation = problem.material(dice.between(0.03, 0.05));
  problem.paint(insulation, 0.3 * wall.thickness, 0.8 * wall.thickness, 0, wall.height);
  for (std::size_t k = 1 + dice.below(3); k > 0; --k) {
    const double y = dice.between(0.1, 0.8) * wall.height, t = dice.scaled_between(2e-4, 5e-3);
    problem.paint(problem.material(dice.scaled_between(15, 380)),
                  dice.between(0.0, 0.3) * wall.thickness, dice.between(0.7, 1) * wall.thickness, y,
                  y + t);
  }
  return problem;
}

Problem reentrant(Dice& dice) {
  Problem problem = with_airs(dice);
  const double t = dice.between(0.1, 0.5);
  problem.paint(outside, -0.2, 1.5, -0.2, 1.5);
  problem.paint(problem.material(dice.scaled_between(0.1, 2.0)), 0, 1.5, 0, 1.5);
  if (dice.share() < 0.5) {
    problem.paint(problem.material(dice.between(0.03, 0.06)), t - 0.05, 1.5, t - 0.05, 1.5);
  }
  problem.paint(room, t, 1.5, t, 1.5);
  if (dice.share() < 0.5) {
    problem.paint(problem.material(dice.scaled_between(0.1, 2.0)), t, t + 0.3, t + 0.4, t + 0.5);
  }
  return problem;
}

void paint_checkerboard(Problem& problem, Dice& dice, double angle) {
  const double depth = dice.share() < 0.5 ? 0.02 : 0.06;
  const std::size_t n = 2 + dice.below(3);
  const double side = dice.between(0.03, 0.12), all = side * static_cast<double>(n);
  const double contrast = dice.scaled_between(20, 1000), low = dice.scaled_between(0.03, 1.0);
  const RegionId poor = problem.material(low), good = problem.material(low * contrast);
  const RegionId cover = problem.material(dice.scaled_between(0.2, 2.0));
  problem.paint(room, box(-0.1, -depth, 0, all, angle));
  problem.paint(outside, box(all + depth, all + depth + 0.1, 0, all, angle));
  problem.paint(cover, box(-depth, all + depth, 0, all, angle));
  for (std::size_t j = 0; j < n; ++j) {
    for (std::size_t i = 0; i < n; ++i) {
      const double x = side * static_cast<double>(i), y = side * static_cast<double>(j);
      problem.paint((i + j) % 2 == 0 ? poor : good, box(x, x + side, y, y + side, angle));
    }
  }
}

Problem checkerboard(Dice& dice) {
  Problem problem = with_airs(dice);
  paint_checkerboard(problem, dice, 0.0);
  return problem;
}

Problem turned_checkerboard(Dice& dice) {
  Problem problem = with_airs(dice);
  paint_checkerboard(problem, dice, dice.share() < 0.5 ? std::atan(1.0) : dice.between(0.1, 0.7));
  return problem;
}

Problem fins(Dice& dice) {
  Problem problem = with_airs(dice);
  problem.paint(room, -0.4, 0, 0, 0.6);
  const Wall wall{dice.between(0.1, 0.4), 0.6};
  problem.paint(outside, wall.thickness, wall.thickness + 0.4, 0, wall.height);
  problem.paint(problem.material(dice.scaled_between(0.1, 2.0)), 0, wall.thickness, 0, wall.height);
  for (std::size_t k = 1 + dice.below(3); k > 0; --k) {
    const double y = dice.between(0.05, 0.5), t = dice.scaled_between(1e-3, 2e-2);
    const bool in_room = dice.share() < 0.5;
    const double from = in_room ? dice.between(-0.3, -0.02) : dice.between(0, 0.9) * wall.thickness;
    const double to =
        in_room ? dice.between(0, 0.9) * wall.thickness : wall.thickness + dice.between(0.02, 0.3);
    problem.paint(problem.material(dice.scaled_between(0.2, 200)), from, to, y, y + t);
  }
  return problem;
}

Problem islands(Dice& dice) {
  Problem problem = with_airs(dice);
  const Wall wall = paint_wall(problem, dice);
  for (std::size_t k = 3 + dice.below(6); k > 0; --k) {
    const double x = dice.between(0.02, 0.8) * wall.thickness;
    const double y = dice.between(0.02, 0.8) * wall.height;
    problem.paint(problem.material(dice.share() < 0.5 ? dice.scaled_between(0.02, 0.1)
                                                      : dice.scaled_between(20, 400)),
                  x, x + dice.between(0.02, 0.15) * wall.thickness, y,
                  y + dice.between(0.02, 0.15) * wall.height);
  }
  return problem;
}

Problem voids(Dice& dice) {
  Problem problem = with_airs(dice);
  const SpaceId duct = problem.space(dice.between(-5, 25), dice.scaled_between(0.05, 0.3));
  const Wall wall = paint_wall(problem, dice);
  for (std::size_t k = 1 + dice.below(4); k > 0; --k) {
    const double x = dice.between(0.1, 0.7) * wall.thickness;
    const double y = dice.between(0.1, 0.7) * wall.height;
    const geometry::Fill fill = dice.share() < 0.5 ? geometry::Fill{std::monostate{}} : duct;
    problem.paint(fill, x, x + dice.between(0.05, 0.25) * wall.thickness, y,
                  y + dice.between(0.05, 0.25) * wall.height);
  }
  return problem;
}

/// Two ducts of the room's own air, or two bridges, nearly alike.
Problem near_equal(Dice& dice) {
  Problem problem = with_airs(dice);
  const double thickness = dice.between(0.2, 0.4);
  problem.paint(room, -0.1, 0, 0, 1);
  problem.paint(outside, thickness, thickness + 0.1, 0, 1);
  problem.paint(problem.material(dice.scaled_between(0.1, 2.0)), 0, thickness, 0, 1);
  const bool ducts = dice.share() < 0.5;
  for (const double y : {0.25, 0.65}) {
    const double a = dice.between(0.97, 1.03), b = dice.between(0.97, 1.03);
    if (ducts) {
      problem.paint(room, thickness - 0.1 * a, thickness - 0.03 * b, y, y + 0.08 * a);
    } else {
      problem.paint(problem.material(dice.scaled_between(1, 100)), 0.02 * a, thickness - 0.02 * b,
                    y, y + 0.02 * b);
    }
  }
  return problem;
}

Problem airs_in_a_point(Dice& dice) {
  Problem problem = with_airs(dice);
  const double x = dice.between(0.1, 0.3), y = dice.between(0.1, 0.3);
  const double skew = dice.share() < 0.5 ? 0.0 : dice.between(0.02, 0.06);
  const RegionId one = problem.material(dice.scaled_between(0.1, 5.0));
  const RegionId other = dice.share() < 0.5 ? one : problem.material(dice.scaled_between(0.1, 5.0));
  problem.paint(room, 0, x, y, 0.4);
  problem.paint(outside, x, 0.4, 0, y);
  problem.paint(one, Outline{{0, 0}, {x - skew, 0}, {x, y}, {0, y}});
  problem.paint(other, Outline{{x, y}, {0.4, y}, {0.4, 0.4}, {x + skew, 0.4}});
  return problem;
}

Problem parallel_slopes(Dice& dice) {
  Problem problem = with_airs(dice);
  const double rise = dice.between(0.1, 0.8), t = dice.between(0.05, 0.3), w = 0.6;
  const auto band = [&](geometry::Fill fill, double low, double high) {
    problem.paint(fill, Outline{{0, low}, {w, low + rise}, {w, high + rise}, {0, high}});
  };
  band(outside, -0.2, 0);
  band(problem.material(dice.scaled_between(0.03, 2.0)), 0, t);
  band(problem.material(dice.scaled_between(0.03, 2.0)), t, 1.5 * t);
  band(room, 1.5 * t, 1.5 * t + 0.2);
  return problem;
}

/// A jamb with its frame, turned by any angle.
Problem odd_slopes(Dice& dice) {
  Problem problem = with_airs(dice);
  const double angle = dice.between(0.05, 1.5), t = dice.between(0.2, 0.5);
  const double reveal = dice.between(0.3, 0.7) * t;
  problem.paint(room, box(-0.1, 0.0, 0, 0.9, angle));
  problem.paint(outside, box(t, t + 0.1, 0, 0.9, angle));
  problem.paint(problem.material(dice.scaled_between(0.3, 2.0)), box(0, t, 0, 0.6, angle));
  problem.paint(room, box(-0.1, reveal, 0.6, 0.9, angle));
  problem.paint(outside, box(reveal + 0.06, t + 0.1, 0.6, 0.9, angle));
  problem.paint(problem.material(0.13, false), box(reveal, reveal + 0.06, 0.6, 0.9, angle));
  if (dice.share() < 0.5) {
    problem.paint(problem.material(160), box(reveal, reveal + 0.01, 0.5, 0.6, angle));
  }
  return problem;
}

Problem slivers(Dice& dice) {
  Problem problem = with_airs(dice);
  const Wall wall = paint_wall(problem, dice);
  const double angle = dice.scaled_between(0.01, 0.1), x = 0.3 * wall.thickness;
  const double tip = std::min(wall.height, 0.5 * wall.thickness / angle);
  problem.paint(problem.material(dice.scaled_between(0.03, 200)),
                Outline{{x, 0}, {x + angle * tip, 0}, {x, tip}});
  const double t = dice.scaled_between(1e-4, 1e-3);
  problem.paint(problem.material(dice.scaled_between(0.03, 200)), 0.9 * wall.thickness,
                0.9 * wall.thickness + t, 0, wall.height);
  return problem;
}

Problem two_airs_on_a_surface(Dice& dice) {
  Problem problem = with_airs(dice);
  const Wall wall = paint_wall(problem, dice);
  const SpaceId other = problem.space(dice.between(5, 19), dice.scaled_between(0.05, 0.3));
  const double y = dice.between(0.2, 0.8) * wall.height;
  problem.paint(other, -0.1, 0, y, wall.height);
  if (dice.share() < 0.5) {
    problem.paint(problem.material(dice.scaled_between(0.2, 100)), 0, 0.3 * wall.thickness,
                  y - 0.05, y + 0.05);
  }
  return problem;
}

struct Family {
  const char* name;
  Problem (*draw)(Dice&);
};

constexpr std::array<Family, 14> families = {
    {{"painted rectangles", rectangles},
     {"thin metal", thin_metal},
     {"re-entrant corners", reentrant},
     {"checkerboards", checkerboard},
     {"turned checkerboards", turned_checkerboard},
     {"fins", fins},
     {"islands", islands},
     {"voids", voids},
     {"two near-equal spots", near_equal},
     {"airs that meet in a point", airs_in_a_point},
     {"parallel slopes", parallel_slopes},
     {"odd slopes", odd_slopes},
     {"slivers", slivers},
     {"a surface that meets two airs", two_airs_on_a_surface}}};

bool is_valid(const Problem& problem) {
  const std::vector<geometry::Flaw> found = geometry::flaws(problem.sheet(), problem.section());
  return std::none_of(found.begin(), found.end(), [](const geometry::Flaw& flaw) {
    return flaw.kind == geometry::FlawKind::island ||
           flaw.kind == geometry::FlawKind::no_material ||
           flaw.kind == geometry::FlawKind::no_space || flaw.kind == geometry::FlawKind::idle_space;
  });
}

}  // namespace

NastySection nasty_section(std::uint64_t seed) {
  const Family& family = families[seed % families.size()];
  Dice dice(seed + 1);
  for (;;) {
    NastySection section{family.name, family.draw(dice)};
    if (is_valid(section.problem)) return section;
  }
}

}  // namespace quoin::testing
