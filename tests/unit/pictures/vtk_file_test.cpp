// SPDX-License-Identifier: MPL-2.0
#include "sample_plate.h"
#include "temporary_folder.h"

#include <plate/core/error.h>
#include <plate/meshes/vtk_file.h>

#include <Eigen/Geometry>
#include <doctest/doctest.h>

#include <vtkCellData.h>
#include <vtkCellType.h>
#include <vtkDataArray.h>
#include <vtkGenericCell.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkUnstructuredGrid.h>
#include <vtkXMLUnstructuredGridReader.h>

#include <array>
#include <cmath>
#include <limits>

using namespace plate;
using test::at_nodes;
using test::bytes_of;
using test::make_mesh;

namespace
{

vtkNew<vtkUnstructuredGrid> read(const std::filesystem::path& path)
{
  vtkNew<vtkXMLUnstructuredGridReader> reader;
  reader->SetFileName(path.c_str());
  reader->Update();
  vtkNew<vtkUnstructuredGrid> grid;
  grid->ShallowCopy(reader->GetOutput());
  return grid;
}

VtkFields sample_fields(const ShellMesh& mesh)
{
  VtkFields fields;
  fields.nodal_scalars.push_back(
      {.name = "thickness mm", .values = at_nodes(mesh, [](double x, double y) { return 2.8 + x / 3.0 - y / 7.0; })});
  NodalVectors shape{.name = "mode 01 61.2 Hz M1", .values = {}};
  for (const Eigen::Vector3d& node : mesh.nodes)
    shape.values.emplace_back(std::sin(node[0]), std::exp(node[1]), node[0] * node[1]);
  fields.nodal_vectors.push_back(shape);
  fields.cell_scalars.push_back(bar_cells(mesh));
  return fields;
}

/// Area of VTK's own cell by VTK's own geometry: 6 point rule of degree 4 (Strang and Fix 1973; Dunavant 1985,
/// Int. J. Numer. Meth. Engng 21:1129, table II) on the tangents that VTK differentiates.
double area_of(vtkCell& cell)
{
  const std::array<std::array<double, 3>, 2> rules = {{{0.223381589678011, 0.108103018168070, 0.445948490915965},
                                                       {0.109951743655322, 0.816847572980459, 0.091576213509771}}};
  double area = 0.0;
  for (const auto& [weight, a, b] : rules)
    for (const auto& [r, s] : {std::pair{a, b}, std::pair{b, a}, std::pair{b, b}})
    {
      constexpr double h = 1e-5; // central differences: error h² against 1
      const auto place = [&](double u, double v)
      {
        int sub = 0;
        std::array<double, 10> weights{};
        const std::array<double, 3> pcoords = {u, v, 0.0};
        Eigen::Vector3d x;
        cell.EvaluateLocation(sub, pcoords.data(), x.data(), weights.data());
        return x;
      };
      const Eigen::Vector3d tangent_r = (place(r + h, s) - place(r - h, s)) / (2.0 * h);
      const Eigen::Vector3d tangent_s = (place(r, s + h) - place(r, s - h)) / (2.0 * h);
      area += 0.5 * weight * tangent_r.cross(tangent_s).norm();
    }
  return area;
}

} // namespace

TEST_CASE("VTK reads back the cubic cells, the points and the fields that were written")
{
  const test::TemporaryFolder folder;
  const ShellMesh mesh = make_mesh({.rise = 0.017, .hole = {4, 7, 5, 6}, .bar = {2, 10, 4, 5}});
  const VtkFields fields = sample_fields(mesh);
  write_vtu(folder / "plate.vtu", mesh, fields);
  const vtkNew<vtkUnstructuredGrid> grid = read(folder / "plate.vtu");

  REQUIRE(grid->GetNumberOfPoints() == static_cast<vtkIdType>(mesh.nodes.size()));
  REQUIRE(grid->GetNumberOfCells() == static_cast<vtkIdType>(mesh.triangles.size()));
  CHECK(grid->GetPoints()->GetDataType() == VTK_DOUBLE);
  double worst = 0.0;
  for (std::size_t i = 0; i < mesh.nodes.size(); ++i)
  {
    Eigen::Vector3d read_back;
    grid->GetPoint(static_cast<vtkIdType>(i), read_back.data());
    worst = std::max(worst, (read_back - mesh.nodes[i]).norm());
  }
  CHECK(worst <= 1e-15);
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
  {
    const auto id = static_cast<vtkIdType>(t);
    CHECK(grid->GetCellType(id) == VTK_LAGRANGE_TRIANGLE);
    vtkIdType count = 0;
    const vtkIdType* points = nullptr;
    grid->GetCellPoints(id, count, points);
    REQUIRE(count == 10);
    for (std::size_t k = 0; k < 10; ++k)
      CHECK(points[k] == mesh.triangles[t][k]);
  }

  vtkDataArray* thickness = grid->GetPointData()->GetArray("thickness mm");
  vtkDataArray* shape = grid->GetPointData()->GetArray("mode 01 61.2 Hz M1");
  vtkDataArray* bar = grid->GetCellData()->GetArray("bar");
  REQUIRE(thickness != nullptr);
  REQUIRE(shape != nullptr);
  REQUIRE(bar != nullptr);
  REQUIRE(shape->GetNumberOfComponents() == 3);
  for (std::size_t i = 0; i < mesh.nodes.size(); ++i)
  {
    const auto id = static_cast<vtkIdType>(i);
    CHECK(std::abs(thickness->GetTuple1(id) - fields.nodal_scalars[0].values[i]) <= 1e-15);
    for (int c = 0; c < 3; ++c)
      CHECK(std::abs(shape->GetComponent(id, c) - fields.nodal_vectors[0].values[i][c]) <= 1e-15);
  }
  double under_bar = 0.0;
  for (vtkIdType id = 0; id < grid->GetNumberOfCells(); ++id)
    under_bar += bar->GetTuple1(id);
  CHECK(under_bar == 16.0); // 8 cells of two triangles
}

TEST_CASE("The curved area that VTK's cells span is that of the surface")
{
  // Surface of z = H (1 - (2x/L)²), flat across: arc length of a parabola, closed form
  // W [ sqrt(1 + k²) + asinh(k) / k ] L / 2 with the end slope k = 4 H / L. Checks node order and curvature at once.
  const test::TemporaryFolder folder;
  ShellMesh mesh = make_mesh({.length = 0.36, .width = 0.21, .num_x = 12, .num_y = 7});
  const double L = 0.36;
  const double H = 0.03;
  for (Eigen::Vector3d& node : mesh.nodes)
    node[2] = H * (1.0 - 4.0 * node[0] * node[0] / (L * L));
  write_vtu(folder / "arch.vtu", mesh, {});
  const vtkNew<vtkUnstructuredGrid> grid = read(folder / "arch.vtu");
  double area = 0.0;
  vtkNew<vtkGenericCell> cell;
  for (vtkIdType id = 0; id < grid->GetNumberOfCells(); ++id)
  {
    grid->GetCell(id, cell);
    area += area_of(*cell);
  }
  const double k = 4.0 * H / L;
  const double exact = 0.21 * 0.5 * L * (std::sqrt(1.0 + k * k) + std::asinh(k) / k);
  CHECK(area == doctest::Approx(exact).epsilon(1e-8));
  CHECK(area > 1.01 * 0.21 * L); // the flat area would be far off
}

TEST_CASE("Writing the same plate twice gives the same bytes")
{
  const test::TemporaryFolder folder;
  const ShellMesh mesh = make_mesh({.rise = 0.017});
  write_vtu(folder / "a.vtu", mesh, sample_fields(mesh));
  write_vtu(folder / "b.vtu", mesh, sample_fields(mesh));
  CHECK(!bytes_of(folder / "a.vtu").empty());
  CHECK(bytes_of(folder / "a.vtu") == bytes_of(folder / "b.vtu"));
}

TEST_CASE("Fields that do not fit, have no name of their own or are not finite are refused and leave no file")
{
  const test::TemporaryFolder folder;
  const ShellMesh mesh = make_mesh({});
  const std::vector<double> good(mesh.nodes.size(), 1.0);
  std::vector<double> bad = good;
  bad[7] = std::numeric_limits<double>::infinity();
  const std::filesystem::path path = folder / "plate.vtu";
  CHECK_THROWS_AS(write_vtu(path, mesh, {.nodal_scalars = {{"short", {1.0}}}}), InvalidInput);
  CHECK_THROWS_AS(write_vtu(path, mesh, {.nodal_scalars = {{"", good}}}), InvalidInput);
  CHECK_THROWS_AS(write_vtu(path, mesh, {.nodal_scalars = {{"twice", good}, {"twice", good}}}), InvalidInput);
  CHECK_THROWS_AS(write_vtu(path, mesh, {.nodal_scalars = {{"infinite", bad}}}), InvalidInput);
  CHECK_THROWS_AS(write_vtu(path, ShellMesh{}, {}), InvalidInput);
  CHECK(std::filesystem::is_empty(folder.path()));
}

TEST_CASE("A file that cannot be written is an error that names it, and nothing is left half-written")
{
  const test::TemporaryFolder folder;
  const ShellMesh mesh = make_mesh({});
  CHECK_THROWS_WITH_AS(write_vtu(folder / "missing/plate.vtu", mesh, {}), doctest::Contains("missing/plate.vtu"),
                       IoError);
  std::filesystem::create_directory(folder / "taken.vtu"); // a folder stands where the file should go
  std::filesystem::create_directory(folder / "taken.vtu/inside");
  CHECK_THROWS_AS(write_vtu(folder / "taken.vtu", mesh, {}), IoError);
  for (const auto& entry : std::filesystem::directory_iterator(folder.path()))
    CHECK(entry.path().filename() == "taken.vtu");
}
