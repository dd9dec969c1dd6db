// SPDX-License-Identifier: MPL-2.0
#include "self_convergence.h"

#include <plate/solvers/modal.h>

#include <cmath>

namespace plate::test
{

std::vector<double> observed_orders(const std::function<Model(int)>& model, int mode, int num_meshes)
{
  return orders_of_systems([&](int cells) { return assemble(model(cells)); }, mode, num_meshes);
}

std::vector<double> orders_of_systems(const std::function<System(int)>& system, int mode, int num_meshes)
{
  std::vector<double> frequencies;
  for (int mesh = 0; mesh < num_meshes; ++mesh)
    frequencies.push_back(
        solve_modes(system(1 << mesh), {.num_modes = mode + 3, .tolerance = 1e-13}).frequencies_hz[mode]);
  std::vector<double> orders;
  for (std::size_t i = 2; i < frequencies.size(); ++i)
    orders.push_back(std::log2((frequencies[i - 2] - frequencies[i - 1]) / (frequencies[i - 1] - frequencies[i])));
  return orders;
}

} // namespace plate::test
