// SPDX-License-Identifier: MPL-2.0
#include "study_cases.h"

namespace plate::test
{
namespace
{

const std::string rectangle = R"(
[outline]
kind = "rectangle"
length = 350.0
width = 200.0
)";

const std::string ellipse = R"(
[outline]
kind = "ellipse"
length = 350.0
width = 200.0
)";

const std::string viola = R"(
[outline]
kind = "bouts"
length = 405.0
lower_bout = 236.0
centre_bout = 131.0
upper_bout = 193.0
[arching]
kind = "cycloid"
height = 12.1
)";

const std::string flat = R"(
[arching]
kind = "flat"
)";

const std::string arched = R"(
[arching]
kind = "biparabolic"
height = 15.0
)";

const std::string elliptic_arch = R"(
[arching]
kind = "elliptic"
height = 15.0
)";

const std::string carved_spruce = R"(
[thickness]
kind = "uniform"
value = 2.5
[layup]
solid = "spruce"
)";

const std::string laid_spruce = carved_spruce + R"(grain = "follows"
)";

const std::string turned_spruce = carved_spruce + R"(angle = 25.0
)";

const std::string graduated_spruce = R"(
[thickness]
kind = "graduated"
centre = 3.1
bouts = 2.5
channel = 2.3
edge = 3.9
[layup]
solid = "spruce"
)";

const std::string thin_carbon = R"(
[layup]
code = "[0/60/-60]s"
ply = { material = "carbon_ud", thickness = 0.15 }
)";

const std::string sandwich = R"(
[layup]
plies = [
  { material = "carbon_ud", thickness = 0.2, angle = 0.0 },
  { material = "balsa", thickness = 2.0, angle = 0.0 },
  { material = "carbon_ud", thickness = 0.2, angle = 0.0 },
]
)";

const std::string f_holes = R"(
[[soundhole]]
kind = "f"
length = 80.0
)";

const std::string slots = R"(
[[soundhole]]
kind = "slot"
centre = [-20.0, 56.0]
length = 70.0
width = 8.0
)";

const std::string bar = R"(
[bar]
material = "spruce"
length = 250.0
width = 6.0
height = 12.0
end_height = 3.0
offset = 18.0
)";

const std::string patch = R"(
[[patch]]
side = "inside"
shape = "ellipse"
centre = [10.0, 5.0]
axes = [60.0, 35.0]
plies = [{ material = "carbon_ud", thickness = 0.2, angle = 0.0 }]
)";

const std::string clay = R"(
[[mass]]
at = [40.0, 30.0]
grams = 5.0
)";

const std::string clamped = R"(
[support]
edge = "clamped"
)";

const std::string hinged = R"(
[support]
edge = "hinged"
)";

} // namespace

std::vector<StudyCase> study_cases()
{
  return {
      {"flat spruce", rectangle + flat + laid_spruce},
      {"arched spruce, laid", rectangle + arched + laid_spruce},
      {"arched spruce, carved", rectangle + arched + carved_spruce},
      {"arched spruce, grain turned", ellipse + elliptic_arch + turned_spruce},
      {"arched thin carbon", rectangle + arched + thin_carbon},
      {"flat thin carbon ellipse", ellipse + flat + thin_carbon},
      {"arched sandwich", rectangle + arched + sandwich},
      {"arched spruce with slots", rectangle + arched + carved_spruce + slots},
      {"arched spruce with a bar", rectangle + arched + carved_spruce + bar},
      {"arched spruce with a patch", rectangle + arched + carved_spruce + patch},
      {"arched spruce with clay", rectangle + arched + laid_spruce + clay},
      {"arched spruce, clamped", rectangle + flat + carved_spruce + clamped},
      {"arched carbon, hinged", rectangle + arched + thin_carbon + hinged},
      {"viola, no holes", viola + graduated_spruce},
      {"viola with f-holes", viola + graduated_spruce + f_holes},
      {"viola with f-holes and bar", viola + graduated_spruce + f_holes + bar},
      {"viola, thin carbon with f-holes", viola + thin_carbon + f_holes},
      {"viola, sandwich with f-holes, bar and patch", viola + sandwich + f_holes + bar + patch},
  };
}

} // namespace plate::test
