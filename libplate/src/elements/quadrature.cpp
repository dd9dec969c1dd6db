// SPDX-License-Identifier: MPL-2.0
#include <plate/elements/quadrature.h>

namespace plate
{

namespace
{

constexpr std::array<TrianglePoint, num_triangle_points> make_points()
{
  // Two orbits of three points (a, a, 1 - 2a) and one of six (a, b, 1 - a - b); weights of a rule that sums to one.
  constexpr double a1 = 0.249286745170910421;
  constexpr double w1 = 0.116786275726379366;
  constexpr double a2 = 0.063089014491502227;
  constexpr double w2 = 0.050844906370206817;
  constexpr double a3 = 0.053145049844816947;
  constexpr double b3 = 0.310352451033784405;
  constexpr double c3 = 1.0 - a3 - b3;
  constexpr double w3 = 0.082851075618373575;
  return {{{a1, a1, 0.5 * w1},
           {a1, 1.0 - 2.0 * a1, 0.5 * w1},
           {1.0 - 2.0 * a1, a1, 0.5 * w1},
           {a2, a2, 0.5 * w2},
           {a2, 1.0 - 2.0 * a2, 0.5 * w2},
           {1.0 - 2.0 * a2, a2, 0.5 * w2},
           {a3, b3, 0.5 * w3},
           {b3, a3, 0.5 * w3},
           {a3, c3, 0.5 * w3},
           {c3, a3, 0.5 * w3},
           {b3, c3, 0.5 * w3},
           {c3, b3, 0.5 * w3}}};
}

constexpr std::array<TrianglePoint, num_quartic_triangle_points> make_quartic_points()
{
  // The centre, three orbits of three points and one of six, as above.
  constexpr double w0 = 0.144315607677787;
  constexpr double a1 = 0.459292588292723;
  constexpr double w1 = 0.095091634267285;
  constexpr double a2 = 0.170569307751760;
  constexpr double w2 = 0.103217370534718;
  constexpr double a3 = 0.050547228317031;
  constexpr double w3 = 0.032458497623198;
  constexpr double a4 = 0.008394777409958;
  constexpr double b4 = 0.263112829634638;
  constexpr double c4 = 1.0 - a4 - b4;
  constexpr double w4 = 0.027230314174435;
  return {{{1.0 / 3.0, 1.0 / 3.0, 0.5 * w0},
           {a1, a1, 0.5 * w1},
           {a1, 1.0 - 2.0 * a1, 0.5 * w1},
           {1.0 - 2.0 * a1, a1, 0.5 * w1},
           {a2, a2, 0.5 * w2},
           {a2, 1.0 - 2.0 * a2, 0.5 * w2},
           {1.0 - 2.0 * a2, a2, 0.5 * w2},
           {a3, a3, 0.5 * w3},
           {a3, 1.0 - 2.0 * a3, 0.5 * w3},
           {1.0 - 2.0 * a3, a3, 0.5 * w3},
           {a4, b4, 0.5 * w4},
           {b4, a4, 0.5 * w4},
           {a4, c4, 0.5 * w4},
           {c4, a4, 0.5 * w4},
           {b4, c4, 0.5 * w4},
           {c4, b4, 0.5 * w4}}};
}

std::array<TrianglePoint, num_fine_triangle_points> make_fine_points()
{
  constexpr int parts = 4; // along each side
  std::array<TrianglePoint, num_fine_triangle_points> fine;
  auto next = fine.begin();
  const auto add = [&](double xi0, double eta0, double side)
  {
    for (const TrianglePoint& p : triangle_points())
      *next++ = {xi0 + side * p.xi, eta0 + side * p.eta, side * side * p.weight};
  };
  constexpr double side = 1.0 / parts;
  for (int row = 0; row < parts; ++row)
    for (int column = 0; row + column < parts; ++column)
    {
      add(column * side, row * side, side);
      if (row + column + 1 < parts) // the upside-down one beside it
        add((column + 1) * side, (row + 1) * side, -side);
    }
  return fine;
}

} // namespace

const std::array<TrianglePoint, num_triangle_points>& triangle_points()
{
  static constexpr auto points = make_points();
  return points;
}

const std::array<TrianglePoint, num_quartic_triangle_points>& quartic_triangle_points()
{
  static constexpr auto points = make_quartic_points();
  return points;
}

const std::array<TrianglePoint, num_fine_triangle_points>& fine_triangle_points()
{
  static const auto points = make_fine_points();
  return points;
}

} // namespace plate
