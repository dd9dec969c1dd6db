// SPDX-License-Identifier: MPL-2.0
// Found by designs drawn at random: meshes of coarse edges on bends and thin strips. They ended the process inside Gmsh
// or held triangles inside out.
#include <plate/design/design.h>
#include <plate/design/design_document.h>
#include <plate/meshes/mesher.h>

#include <doctest/doctest.h>

#include <cmath>
#include <string>

using namespace plate;

namespace
{

/// Meshes the plate of a design; the mesher itself refuses what is inside out. The area is that of the curves.
void check_meshes(const std::string& text)
{
  const Design design = DesignDocument::from_text(text, "random.toml").design();
  const MeshQuality quality = mesh_quality(mesh_planform(design.geometry, design.mesh));
  CHECK(quality.least_jacobian > 0.0);
  CHECK(std::abs(quality.area / planform_area(design.geometry) - 1.0) < 1e-3);
}

} // namespace

TEST_CASE("edges inside the strips that cross at the ends of a narrow slot")
{
  check_meshes("[outline]\nkind = \"bouts\"\nlength = 441.411\nlower_bout = 270.1\nupper_bout = 262.386\n"
               "centre_bout = 182.566\n[layup]\nsolid = \"spruce\"\n[thickness]\nvalue = 7.3843\n"
               "[[soundhole]]\nkind = \"slot\"\ncentre = [59.7558, 93.2933]\nlength = 11.3713\nwidth = 0.686488\n"
               "angle = 155.562\nmirror = false\n[[soundhole]]\nkind = \"slot\"\ncentre = [-48.7939, 31.1607]\n"
               "length = 40.5499\nwidth = 3.94208\nangle = -38.4884\n[mesh]\nsize = 35.7211\n");
}

TEST_CASE("a thin laminate with edges a hundred times as long as its strip is wide")
{
  check_meshes("[outline]\nkind = \"bouts\"\nlength = 612.081\nlower_bout = 335.494\nupper_bout = 285.922\n"
               "centre_bout = 169.641\n[layup]\ncode = \"[0/90/~0]s\"\nscale = 0.768263\n"
               "ply = { material = \"flax_ud\", thickness = 0.0813672 }\n[mesh]\nsize = 98.7682\n");
}

TEST_CASE("a thick plate with a wide strip around the small round end of a slot")
{
  check_meshes("[outline]\nkind = \"ellipse\"\nlength = 400\nwidth = 300\n[layup]\nsolid = \"spruce\"\n"
               "[thickness]\nvalue = 4.5\n[[soundhole]]\nkind = \"slot\"\ncentre = [50, 70]\nlength = 60\nwidth = 3\n"
               "angle = 20\n[mesh]\nsize = 60\n");
}

TEST_CASE("one point of a patch's edge with room between the bar and a soundhole, its neighbours without")
{
  check_meshes("[outline]\nkind = \"rectangle\"\nlength = 350\nwidth = 200\n[thickness]\nvalue = 2.5\n"
               "[layup]\nsolid = \"spruce\"\n[[soundhole]]\nkind = \"f\"\nlength = 70\n"
               "[bar]\nmaterial = \"spruce\"\nlength = 250\nwidth = 5.5\nheight = 12\noffset = 10\n"
               "[[patch]]\nside = \"inside\"\nshape = \"ellipse\"\ncentre = [-20.0, 0.0]\naxes = [120.0, 60.0]\n"
               "plies = [{ material = \"carbon_ud\", thickness = 0.1, angle = 0.0 }]\n");
}
