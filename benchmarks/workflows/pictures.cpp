// SPDX-License-Identifier: MPL-2.0
// Pictures of twelve modes, each alone and all on a sheet, with the maps of thickness and arching.
#include "support/plates.h"

#include <plate/meshes/picture.h>
#include <plate/post/surface_integral.h>
#include <plate/solvers/modal.h>

#include <benchmark/benchmark.h>

#include <filesystem>

#include <unistd.h>

namespace plate::benchmarks
{
namespace
{

namespace fs = std::filesystem;

/// A folder that disappears with the object.
class Folder
{
public:
  Folder() : path_(fs::temp_directory_path() / ("plate-benchmarks-" + std::to_string(::getpid())))
  {
    fs::create_directories(path_);
  }
  ~Folder()
  {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  [[nodiscard]] fs::path operator/(const std::string& name) const { return path_ / name; }

private:
  fs::path path_;
};

std::vector<ModeShapePicture> twelve_modes(const Plate& plate)
{
  const ModalResult modes = solve_modes(plate.system, {.num_modes = 12});
  std::vector<ModeShapePicture> pictures;
  for (Eigen::Index mode = 0; mode < modes.shapes.cols(); ++mode)
  {
    const Eigen::VectorXd normal =
        normal_displacement(plate.model.mesh, nodal_displacements(plate.system.dofs, modes.shapes.col(mode)));
    pictures.push_back({.number = static_cast<int>(mode + 1),
                        .frequency_hz = modes.frequencies_hz[mode],
                        .normal_displacement = {normal.begin(), normal.end()}});
  }
  return pictures;
}

void pictures(benchmark::State& state, const std::string& ending)
{
  const Plate& plate = viola(Size::demo);
  const std::vector<ModeShapePicture> modes = twelve_modes(plate);
  const PlateView view{.mesh = plate.model.mesh, .title = plate.design.title};
  const Folder folder;
  for (auto _ : state)
  {
    for (const ModeShapePicture& mode : modes)
      write_mode_picture(folder / (std::to_string(mode.number) + ending), view, mode);
    write_contact_sheet(folder / ("modes" + ending), view, modes);
    write_thickness_map(folder / ("thickness" + ending), view);
    write_arching_map(folder / ("arching" + ending), view);
  }
}

BENCHMARK_CAPTURE(pictures, png, ".png")->Iterations(1)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(pictures, svg, ".svg")->Iterations(1)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace plate::benchmarks
