// SPDX-License-Identifier: MPL-2.0
#include "matrix_files.h"

#include <plate/assembly/matrix_market.h>
#include <plate/core/error.h>

#include <fstream>

namespace plate
{
namespace
{

/// What a reader of a matrix must know to use it.
std::string comment(const ModesResult& result, const std::string& matrix)
{
  const DofMap& dofs = result.system.dofs;
  return message(
      matrix, " of: ", result.design.title,
      "\nSymmetric, lower triangle stored. Mode: stiffness x = (2 pi f)^2 mass x, f in Hz.\nUnknowns: node by "
      "node as in plate.vtu (--out), five each: displacements along x, y, z in m, then rotations\nabout the "
      "tangents t1 (reference axis projected on the tangent plane) and t2 (normal x t1) in rad; those that\na "
      "support holds are left out. ",
      dofs.equation.size(), " nodes, ", dofs.num_equations, " unknowns, ", result.system.rigid_motions.cols(),
      " rigid motions.");
}

void write(const OutputFolder& folder, const std::string& name, const SparseMatrix& lower, const std::string& comment)
{
  std::ofstream out(folder.file(name), std::ios::binary);
  write_matrix_market(out, lower, comment);
  out.close();
  if (!out)
    throw IoError(message("--matrices: ", name, ": cannot be written; is the disk full?"));
}

} // namespace

void write_matrix_files(const OutputFolder& folder, const ModesResult& result)
{
  write(folder, "stiffness.mtx", result.system.K, comment(result, "Stiffness matrix in N/m, N, N m"));
  write(folder, "mass.mtx", result.system.M, comment(result, "Mass matrix in kg, kg m, kg m2, without the air around"));
}

} // namespace plate
