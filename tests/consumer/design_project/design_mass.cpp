// SPDX-License-Identifier: MPL-2.0
// A program outside libplate that reads a design, meshes it and solves. Exit status 0 if the mass of a flat ellipse is
// density times thickness times pi a b, and the plate is free.
#include <plate/assembly/assemble.h>
#include <plate/design/build_model.h>
#include <plate/design/design.h>
#include <plate/design/design_document.h>
#include <plate/solvers/modal.h>

#include <cmath>
#include <cstdlib>
#include <iostream>
#include <numbers>

int main()
{
  const char* const text = R"(
outline = { kind = "ellipse", length = 200.0, width = 100.0 }
thickness = { kind = "uniform", value = 3.0 }
layup = { solid = "test_wood", grain = "follows" }
[material.test_wood]
E1 = 10.0
E2 = 1.0
G12 = 0.7
nu12 = 0.3
density = 400.0
)";
  const plate::Design design = plate::DesignDocument::from_text(text, "ellipse").design();
  const plate::System system = plate::assemble(plate::build_model(design));
  const plate::ModalResult modes = plate::solve_modes(system, {.num_modes = 1});

  const double expected = 400.0 * 3e-3 * std::numbers::pi * 0.100 * 0.050; // [kg]
  std::cout << "mass " << system.mass << " kg, expected " << expected << " kg; " << modes.summary() << '\n';
  return std::abs(system.mass / expected - 1.0) < 1e-5 && modes.rigid_frequencies_hz.size() == 6 ? EXIT_SUCCESS : EXIT_FAILURE;
}
