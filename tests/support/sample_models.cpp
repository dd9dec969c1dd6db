// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <cmath>
#include <utility>

namespace plate::test
{

Material isotropic(double E, double nu, double density)
{
  const double G = E / (2.0 * (1.0 + nu));
  return {.name = "isotropic",
          .elastic = {.E1 = E, .E2 = E, .E3 = E, .G12 = G, .G13 = G, .G23 = G, .nu12 = nu, .nu13 = nu, .nu23 = nu},
          .density = density};
}

Material carbon_epoxy()
{
  return {.name = "carbon/epoxy",
          .elastic = {.E1 = 181e9,
                      .E2 = 10.3e9,
                      .E3 = 10.3e9,
                      .G12 = 7.17e9,
                      .G13 = 7.17e9,
                      .G23 = 3.78e9,
                      .nu12 = 0.28,
                      .nu13 = 0.28,
                      .nu23 = 0.36},
          .density = 1600.0};
}

Material quarter_cut_spruce()
{
  return {.name = "quarter-cut spruce",
          .elastic = {.E1 = 11.0e9,
                      .E2 = 0.85e9,
                      .E3 = 0.47e9,
                      .G12 = 0.70e9,
                      .G13 = 0.65e9,
                      .G23 = 0.035e9,
                      .nu12 = 0.37,
                      .nu13 = 0.47,
                      .nu23 = 0.43},
          .density = 420.0};
}

Material reference_spruce()
{
  return {.name = "spruce",
          .elastic = {.E1 = 11000e6,
                      .E2 = 858e6,
                      .E3 = 473e6,
                      .G12 = 704e6,
                      .G13 = 671e6,
                      .G23 = 33e6,
                      .nu12 = 0.372,
                      .nu13 = 0.467,
                      .nu23 = 0.435},
          .density = 400.0};
}

Material reference_carbon()
{
  return {.name = "carbon",
          .elastic = {.E1 = 142000e6,
                      .E2 = 10300e6,
                      .E3 = 10300e6,
                      .G12 = 7200e6,
                      .G13 = 7200e6,
                      .G23 = 3800e6,
                      .nu12 = 0.27,
                      .nu13 = 0.27,
                      .nu23 = 0.40},
          .density = 1580.0};
}

Material reference_balsa()
{
  return {.name = "balsa",
          .elastic = {.E1 = 60e6,
                      .E2 = 60e6,
                      .E3 = 3000e6,
                      .G12 = 30e6,
                      .G13 = 110e6,
                      .G23 = 110e6,
                      .nu12 = 0.3,
                      .nu13 = 0.0005,
                      .nu23 = 0.0005},
          .density = 100.0,
          .core = true};
}

Laminate solid(const Material& material, double thickness, double degrees, Grain grain)
{
  return {{{.material = material, .thickness = thickness, .angle = Angle::degrees(degrees), .grain = grain}}};
}

Laminate stack(const Material& material, double ply_thickness, const std::vector<double>& degrees)
{
  Laminate laminate;
  for (const double angle : degrees)
    laminate.plies.push_back({.material = material, .thickness = ply_thickness, .angle = Angle::degrees(angle)});
  return laminate;
}

Surface flat()
{
  return {.position = [](double x, double y) { return Eigen::Vector3d(x, y, 0.0); },
          .normal = [](double, double) { return Eigen::Vector3d(0.0, 0.0, 1.0); }};
}

ShellMesh rectangle(double length, double width, int cells_x, int cells_y, double thickness)
{
  const auto lines = [](double side, int cells)
  {
    std::vector<double> out;
    for (int i = 0; i <= cells; ++i)
      out.push_back(side * (static_cast<double>(i) / cells - 0.5));
    return out;
  };
  return grid_mesh(
      {.x = lines(length, cells_x), .y = lines(width, cells_y), .surface = flat(), .thickness = thickness});
}

void distort(ShellMesh& mesh, double length, double width, double amount)
{
  for (Eigen::Vector3d& node : mesh.nodes)
  {
    const double u = 2.0 * node.x() / length;
    const double v = 2.0 * node.y() / width;
    const double inside = (1.0 - u * u) * (1.0 - v * v); // zero on the outline
    node.x() += amount * length * inside * std::sin(5.0 * v + 2.0 * u + 0.4);
    node.y() += amount * width * inside * std::cos(4.0 * u - 3.0 * v);
  }
}

void straighten_edges(ShellMesh& mesh)
{
  for (const auto& triangle : mesh.triangles)
  {
    const auto node = [&](std::size_t k) -> Eigen::Vector3d&
    { return mesh.nodes[static_cast<std::size_t>(triangle[k])]; };
    for (std::size_t edge = 0; edge < 3; ++edge)
    {
      const Eigen::Vector3d from = node(edge);
      const Eigen::Vector3d step = (node((edge + 1) % 3) - from) / 3.0;
      node(3 + 2 * edge) = from + step;
      node(4 + 2 * edge) = from + 2.0 * step;
    }
    node(9) = (node(0) + node(1) + node(2)) / 3.0;
  }
}

Model plate_model(ShellMesh mesh, const Laminate& laminate)
{
  Model model;
  model.mesh = std::move(mesh);
  model.material.laminate = laminate;
  return model;
}

void support_all_sides(Model& model, EdgeSupport support)
{
  for (const char* side : {"x-", "x+", "y-", "y+"})
    model.supports.push_back({.group = side, .support = support});
}

Eigen::VectorXd unknowns_of(const Model& model, const DofMap& dofs, const Field& field)
{
  Eigen::VectorXd x = Eigen::VectorXd::Zero(dofs.num_equations);
  for (std::size_t i = 0; i < model.mesh.nodes.size(); ++i)
  {
    const Eigen::Vector3d& node = model.mesh.nodes[i];
    const Eigen::Matrix3d frame = shell_frame(model.mesh.normals[i], model.material.axes);
    const Eigen::Vector3d change = field.director_change(node);
    Eigen::Matrix<double, 5, 1> values;
    // A turn theta moves the director by theta x d: about t1 towards -t2, about t2 towards t1.
    values << field.displacement(node), -change.dot(frame.col(1)), change.dot(frame.col(0));
    for (std::size_t k = 0; k < 5; ++k)
      if (dofs.equation[i][k] != DofMap::held)
        x(dofs.equation[i][k]) = values(static_cast<Eigen::Index>(k));
  }
  return x;
}

} // namespace plate::test
