// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/vtk_file.h>

#include "file_output.h"

#include <plate/core/error.h>

#include <vtkCellArray.h>
#include <vtkCellData.h>
#include <vtkCellType.h>
#include <vtkDoubleArray.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkPoints.h>
#include <vtkUnstructuredGrid.h>
#include <vtkXMLUnstructuredGridWriter.h>

#include <set>
#include <utility>

namespace plate
{

namespace
{

void check_finite(double value, const std::string& name, std::size_t index)
{
  if (!std::isfinite(value))
    throw InvalidInput(message("write_vtu: field '", name, "' has the value ", value, " at index ", index,
                               "; all values must be finite"));
}

/// Refuses what the file format cannot hold or a reader would show wrongly.
template <class Field>
void check_field(const Field& field, std::size_t expected, std::set<std::string>& used_names)
{
  if (field.name.empty())
    throw InvalidInput("write_vtu: a field has no name; give each field one");
  if (!used_names.insert(field.name).second)
    throw InvalidInput(message("write_vtu: the field name '", field.name, "' is used twice; names must differ"));
  if (field.values.size() != expected)
    throw InvalidInput(message("write_vtu: field '", field.name, "' has ", field.values.size(), " values, the mesh ",
                               expected, "; was it computed on another mesh?"));
}

vtkNew<vtkPoints> vtk_points(const ShellMesh& mesh)
{
  vtkNew<vtkPoints> points;
  points->SetDataTypeToDouble();
  points->SetNumberOfPoints(static_cast<vtkIdType>(mesh.nodes.size()));
  vtkIdType id = 0;
  for (const Eigen::Vector3d& node : mesh.nodes)
    points->SetPoint(id++, node.data());
  return points;
}

/// Our order of nodes (corners, two nodes along each edge, centre) is VTK's own for degree 3.
vtkNew<vtkCellArray> vtk_cells(const ShellMesh& mesh)
{
  const int num_nodes = static_cast<int>(mesh.nodes.size());
  vtkNew<vtkCellArray> cells;
  for (const auto& triangle : mesh.triangles)
  {
    cells->InsertNextCell(ShellMesh::nodes_per_triangle);
    for (const int node : triangle)
    {
      if (node < 0 || node >= num_nodes)
        throw InvalidInput(message("write_vtu: a triangle uses node ", node, ", the mesh has ", num_nodes, " nodes"));
      cells->InsertCellPoint(node);
    }
  }
  return cells;
}

vtkNew<vtkDoubleArray> vtk_scalars(const std::string& name, const std::vector<double>& values)
{
  vtkNew<vtkDoubleArray> array;
  array->SetName(name.c_str());
  array->SetNumberOfTuples(static_cast<vtkIdType>(values.size()));
  for (std::size_t i = 0; i < values.size(); ++i)
  {
    check_finite(values[i], name, i);
    array->SetValue(static_cast<vtkIdType>(i), values[i]);
  }
  return array;
}

vtkNew<vtkDoubleArray> vtk_vectors(const NodalVectors& field)
{
  vtkNew<vtkDoubleArray> array;
  array->SetName(field.name.c_str());
  array->SetNumberOfComponents(3);
  array->SetNumberOfTuples(static_cast<vtkIdType>(field.values.size()));
  for (std::size_t i = 0; i < field.values.size(); ++i)
  {
    for (const double component : field.values[i])
      check_finite(component, field.name, i);
    array->SetTuple(static_cast<vtkIdType>(i), field.values[i].data());
  }
  return array;
}

void add_fields(vtkUnstructuredGrid& grid, const ShellMesh& mesh, const VtkFields& fields)
{
  std::set<std::string> nodal_names;
  for (const NodalScalars& field : fields.nodal_scalars)
  {
    check_field(field, mesh.nodes.size(), nodal_names);
    grid.GetPointData()->AddArray(vtk_scalars(field.name, field.values));
  }
  for (const NodalVectors& field : fields.nodal_vectors)
  {
    check_field(field, mesh.nodes.size(), nodal_names);
    grid.GetPointData()->AddArray(vtk_vectors(field));
  }
  std::set<std::string> cell_names;
  for (const CellScalars& field : fields.cell_scalars)
  {
    check_field(field, mesh.triangles.size(), cell_names);
    grid.GetCellData()->AddArray(vtk_scalars(field.name, field.values));
  }
}

} // namespace

CellScalars bar_cells(const ShellMesh& mesh, std::string name)
{
  CellScalars cells{.name = std::move(name), .values = std::vector<double>(mesh.triangles.size(), 0.0)};
  for (const BarFootprint& bar : mesh.bars)
    for (const int triangle : bar.triangles)
      cells.values.at(static_cast<std::size_t>(triangle)) = 1.0;
  return cells;
}

void write_vtu(const std::filesystem::path& path, const ShellMesh& mesh, const VtkFields& fields)
{
  if (mesh.nodes.empty() || mesh.triangles.empty())
    throw InvalidInput(message("write_vtu: the mesh is empty (", mesh.nodes.size(), " nodes, ", mesh.triangles.size(),
                               " triangles); make a mesh first"));
  vtkNew<vtkUnstructuredGrid> grid;
  grid->SetPoints(vtk_points(mesh));
  grid->SetCells(VTK_LAGRANGE_TRIANGLE, vtk_cells(mesh));
  add_fields(*grid, mesh, fields);

  vtkNew<vtkXMLUnstructuredGridWriter> writer;
  writer->SetInputData(grid);
  writer->WriteToOutputStringOn();
  if (writer->Write() != 1)
    throw IoError(message("cannot write ", path.string(), ": the VTK writer failed"));
  write_whole_file(path, writer->GetOutputString());
}

} // namespace plate
