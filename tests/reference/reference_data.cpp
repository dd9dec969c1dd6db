// SPDX-License-Identifier: MPL-2.0
#include "reference_data.h"

#include <plate/core/error.h>
#include <plate/solvers/modal.h>

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <sstream>

namespace plate::test
{

std::vector<ReferenceValue> reference_values(const std::string& file, const std::string& name)
{
  const std::string path = std::string(LIBPLATE_REFERENCE_DATA) + "/" + file;
  std::ifstream in(path);
  if (!in)
    throw IoError(message("cannot read ", path));
  std::vector<ReferenceValue> values;
  for (std::string line; std::getline(in, line);)
  {
    std::istringstream fields(line);
    std::string row_case, quantity, value, tolerance;
    std::getline(fields, row_case, ',');
    std::getline(fields, quantity, ',');
    std::getline(fields, value, ',');
    std::getline(fields, tolerance, ',');
    if (row_case == name)
      values.push_back({.quantity = quantity, .value = std::stod(value), .tolerance_percent = std::stod(tolerance)});
  }
  if (values.empty())
    throw IoError(message(path, " has no case ", name));
  return values;
}

void check_modes(const Model& model, const std::string& file, const std::string& name, double scale)
{
  std::vector<ReferenceValue> values = reference_values(file, name);
  const System system = assemble(model);
  if (values.front().quantity == "mass_g")
  {
    CHECK(std::abs(1e3 * system.mass / values.front().value - 1.0) < 1e-2 * values.front().tolerance_percent);
    values.erase(values.begin());
  }
  const ModalResult modes = solve_modes(system, {.num_modes = static_cast<int>(values.size())});
  REQUIRE(modes.status == Status::converged);
  CHECK(modes.residuals.maxCoeff() < 1e-4); // rounding leaves up to 2e-5 in the thinnest plates, 1e-7 in others
  if (model.supports.empty())
  {
    REQUIRE(modes.rigid_frequencies_hz.size() == 6);
    CHECK(modes.rigid_frequencies_hz(5) < 0.05);
  }
  double worst = 0.0;
  for (std::size_t i = 0; i < values.size(); ++i)
  {
    const double computed = scale * modes.frequencies_hz(static_cast<Eigen::Index>(i));
    const double difference = 100.0 * (computed / values[i].value - 1.0);
    CHECK_MESSAGE(std::abs(difference) < values[i].tolerance_percent, name, " ", values[i].quantity, ": computed ",
                  computed, ", reference ", values[i].value, ", difference ", difference, " %");
    worst = std::max(worst, std::abs(difference));
  }
  MESSAGE(name, ": ", system.K.rows(), " unknowns, largest difference ", worst, " % of at most ",
          values.front().tolerance_percent, " %");
}

} // namespace plate::test
