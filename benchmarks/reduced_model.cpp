// SPDX-License-Identifier: MPL-2.0
// Reduced model of the laminated demo viola beside full solves, one table of ratios.
//
//   reduced_model_benchmark [CASE]     one_scale, one_angle, three_plies; none: all
#include <plate/design/build_model.h>
#include <plate/design/design_document.h>
#include <plate/solvers/air_modes.h>
#include <plate/solvers/reduced_model.h>

#include <algorithm>
#include <cstddef>
#include <cstdio>
#include <ctime>
#include <memory>
#include <random>
#include <string_view>
#include <vector>

using namespace plate;

namespace
{

constexpr int num_modes = 20;
constexpr int num_full = 5;     // full solves timed, and points at which errors are taken
constexpr int num_rounds = 5;   // of reduced solves timed
constexpr int num_reduced = 50; // reduced solves in a round: the clock is coarse

/// The demo top with its outer plies' thickness, cloth thickness and cloth angle free, symmetric, or a factor on all.
class DemoTop : public ParametricModel
{
public:
  enum class Free
  {
    scale,      // factor on all plies but the core
    angle,      // of the cloth [degrees]
    three_plies // thickness of the outer plies, of the cloth [mm], angle of the cloth [degrees]
  };
  explicit DemoTop(Free free)
      : free_(free), base_(build_model(DesignDocument::from_file(EXAMPLES_DIR "/viola/laminate_top.toml").design()))
  {
  }

  Model build(std::span<const double> parameters) override
  {
    Model model = base_;
    rebuild(parameters, model);
    return model;
  }

  void rebuild(std::span<const double> p, Model& model) override
  {
    model.material.laminate = base_.material.laminate;
    std::vector<Ply>& plies = model.material.laminate.plies;
    for (const std::size_t outer : {0, 4})
      plies[outer].thickness *= free_ == Free::scale ? p[0] : 1.0;
    for (const std::size_t cloth : {1, 3})
      plies[cloth].thickness *= free_ == Free::scale ? p[0] : 1.0;
    if (free_ == Free::angle)
      set_angle(plies, p[0]);
    if (free_ == Free::three_plies)
    {
      plies[0].thickness = plies[4].thickness = p[0] * 1e-3;
      plies[1].thickness = plies[3].thickness = p[1] * 1e-3;
      set_angle(plies, p[2]);
    }
    const double thickness = total_thickness(model.material.laminate);
    std::fill(model.mesh.thickness.begin(), model.mesh.thickness.end(), thickness);
  }

private:
  static void set_angle(std::vector<Ply>& plies, double degrees)
  {
    plies[1].angle = plies[3].angle = Angle::degrees(degrees);
  }

  Free free_;
  Model base_;
};

struct Case
{
  const char* name;
  DemoTop::Free free;
  ParameterBox box;
  double tolerance;
  double wanted_ratio;
};

/// Time of the processor, so that others on the machine do not count.
double seconds_of(const auto& work)
{
  const std::clock_t start = std::clock();
  work();
  return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

double median(std::vector<double> values)
{
  std::nth_element(values.begin(), values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2), values.end());
  return values[values.size() / 2];
}

std::vector<double> random_point(const ParameterBox& box, std::mt19937& random)
{
  std::vector<double> point;
  for (std::size_t k = 0; k < box.low.size(); ++k)
    point.push_back(box.low[k] + (box.high[k] - box.low[k]) * static_cast<double>(random()) /
                                     static_cast<double>(std::mt19937::max()));
  return point;
}

void run(const Case& what)
{
  DemoTop design(what.free);
  std::unique_ptr<ReducedModel> reduced;
  const double building = seconds_of(
      [&]
      {
        reduced = std::make_unique<ReducedModel>(design, what.box,
                                                 ReducedOptions{.num_modes = num_modes, .tolerance = what.tolerance});
      });
  std::mt19937 random(1);
  std::vector<double> full_seconds;
  std::vector<double> reduced_seconds;
  double worst = 0.0;
  int modes_within = 0;
  for (int i = 0; i < num_full; ++i)
  {
    const std::vector<double> point = random_point(what.box, random);
    ModalResult full;
    full_seconds.push_back(seconds_of(
        [&]
        {
          const Model model = design.build(point);
          full = solve_modes(assemble(model), {.num_modes = num_modes});
        }));
    const ReducedModes modes = reduced->modes(point);
    const Eigen::VectorXd errors = (modes.frequencies_hz - full.frequencies_hz).cwiseAbs();
    worst = std::max(worst, errors.cwiseQuotient(full.frequencies_hz).maxCoeff());
    modes_within += static_cast<int>((errors.array() <= modes.errors_hz.array()).count());
  }
  for (int i = 0; i < num_rounds; ++i)
    reduced_seconds.push_back(seconds_of(
                                  [&]
                                  {
                                    for (int k = 0; k < num_reduced; ++k)
                                      static_cast<void>(reduced->modes(random_point(what.box, random)));
                                  }) /
                              num_reduced);
  const double full = median(full_seconds);
  const double one = median(reduced_seconds);
  const auto [fastest, slowest] = std::minmax_element(full_seconds.begin(), full_seconds.end());
  std::printf(
      "%-12s full %.2f s (%.2f to %.2f), reduced %.3f ms, ratio %.0f (wanted %.0f), building %.1f full solves\n",
      what.name, full, *fastest, *slowest, one * 1e3, full / one, what.wanted_ratio, building / full);
  std::printf("             largest error of %d modes %.1e (wanted %.1e), estimate holds in %d of %d\n", num_modes,
              worst, what.tolerance, modes_within, num_full * num_modes);
  std::printf("             %s, effectivity %.2f from %d checks\n", reduced->summary().c_str(),
              reduced->figures().effectivity, reduced->figures().num_checks);
}

} // namespace

int main(int argc, char** argv)
{
  const std::vector<Case> cases = {
      {"one_scale", DemoTop::Free::scale, {{0.7}, {1.3}}, 1e-5, 400},
      {"one_angle", DemoTop::Free::angle, {{45.0}, {75.0}}, 1e-5, 400},
      {"three_plies", DemoTop::Free::three_plies, {{0.035, 0.175, 45.0}, {0.065, 0.325, 75.0}}, 5e-4, 120}};
  for (const Case& what : cases)
    if (argc < 2 || std::string_view(argv[1]) == what.name)
      run(what);
}
