// SPDX-License-Identifier: MPL-2.0
// The order at which energy converges: a plate without Poisson contraction under its own weight, hinged on two sides,
// is a hinged beam, and the work of its weight is known in closed form.
#include "sample_models.h"

#include <plate/solvers/sparse_cholesky.h>

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

using namespace plate;

namespace
{

constexpr double length = 0.3;    // [m]
constexpr double width = 0.1;     // [m]
constexpr double E = 10e9;        // [Pa]
constexpr double density = 500.0; // [kg/m3]

/// Work of the weight for g = 1 m/s2 on a beam with bending stiffness D and shear stiffness S per width: the integral
/// of q w, w = q/(24 D) (x^4 - 2 L x^3 + L^3 x) + q x (L - x)/(2 S) [J].
double exact_work(double thickness)
{
  const double q = density * thickness;
  const double D = E * std::pow(thickness, 3) / 12.0;
  const double S = 5.0 / 6.0 * E / 2.0 * thickness;
  return width * q * q * (std::pow(length, 5) / (120.0 * D) + std::pow(length, 3) / (12.0 * S));
}

double work_error(double thickness, int cells)
{
  Model model = test::plate_model(test::rectangle(length, width, cells, 1, thickness),
                                  test::solid(test::isotropic(E, 0.0, density), thickness));
  model.supports = {{.group = "x-", .support = EdgeSupport::hinged}, {.group = "x+", .support = EdgeSupport::hinged}};
  const System system = assemble(model);
  // The weight does work on held nodes, too, in the sense that it is spread over all: from the mass of the free plate.
  model.supports.clear();
  const System unheld = assemble(model);
  const test::Field lift = {.displacement = [](const Eigen::Vector3d&) { return Eigen::Vector3d::UnitZ(); },
                            .director_change = [](const Eigen::Vector3d&) { return Eigen::Vector3d::Zero(); }};
  const Eigen::VectorXd all = unheld.M.selfadjointView<Eigen::Lower>() * test::unknowns_of(model, unheld.dofs, lift);
  Eigen::VectorXd load(system.dofs.num_equations);
  for (std::size_t node = 0; node < system.dofs.equation.size(); ++node)
    for (std::size_t k = 0; k < DofMap::dofs_per_node; ++k)
      if (const int equation = system.dofs.equation[node][k]; equation != DofMap::held)
        load(equation) = all(unheld.dofs.equation[node][k]);
  Eigen::VectorXd u(load.size());
  SparseCholesky(system.K, unknowns_by_node(system.dofs)).solve(load, u);
  return 1.0 - load.dot(u) / exact_work(thickness);
}

/// Checks the orders between meshes of 1, 2, 4, ... times `cells`.
void check_order(double thickness, int cells, double order)
{
  std::vector<double> errors;
  for (const int n : {1, 2, 4})
    errors.push_back(work_error(thickness, cells * n));
  for (std::size_t i = 1; i < errors.size(); ++i)
  {
    const double observed = std::log2(errors[i - 1] / errors[i]);
    MESSAGE("thickness ", thickness, ": error ", errors[i - 1], " -> ", errors[i], ", order ", observed);
    CHECK(std::abs(observed - order) < 0.3);
  }
}

} // namespace

TEST_CASE("the energy of a thick plate converges with the sixth power of the element size")
{
  // The energy of polynomials of degree p errs by h^2p, p = 3, once the elements are smaller than the thickness.
  check_order(0.3, 2, 6.0);
}

TEST_CASE("the energy of a thin plate converges with the fourth power while elements are larger than its thickness")
{
  // Without shear strain the rotation is the slope of a cubic deflection: curvature errs by h^2, its energy by h^4.
  check_order(0.001, 2, 4.0);
}
