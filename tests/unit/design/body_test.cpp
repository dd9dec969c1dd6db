// SPDX-License-Identifier: MPL-2.0
#include "relative.h"
#include "sample_text.h"
#include "temporary_folder.h"

#include <plate/air/cavity_space.h>
#include <plate/core/error.h>
#include <plate/design/body_document.h>
#include <plate/design/build_body.h>

#include <cmath>
#include <fstream>
#include <numbers>

using namespace plate;
using namespace plate::test;

namespace
{

const std::string box_plate =
    "[outline]\nkind = \"rectangle\"\nlength = 350\nwidth = 200\n[thickness]\nvalue = 3\n"
    "[layup]\nsolid = \"wood\"\ngrain = \"follows\"\n[material.wood]\nE1 = 10\nE2 = 1\nG12 = 0.7\nnu12 = 0.37\n"
    "density = 400\n";
const std::string heads = "[body]\ntop = \"plate.toml\"\nback = \"plate.toml\"\n"; // lines 1 to 3
const std::string bare_ribs = "[ribs]\nheight = 40\nthickness = 1\noverhang = 2.5\nmaterial = \"wood\"\n[linings]\n"
                              "height = 0\n[blocks]\nend = [0, 0]\ncorner = [0, 0]\n[material.wood]\nE1 = 10\nE2 = 1\n"
                              "G12 = 0.7\nnu12 = 0.37\ndensity = 500\n[bridge]\nmass = 2\n";

/// A folder with the plates that the bodies of these tests name.
class BodyFolder
{
public:
  BodyFolder()
  {
    write("plate.toml", box_plate);
    write("held.toml", box_plate + "[support]\nedge = \"clamped\"\n");
  }

  void write(const std::string& name, const std::string& text) const { std::ofstream(folder_ / name) << text; }

  [[nodiscard]] BodyDocument document(const std::string& text) const
  {
    return BodyDocument::from_text(text, "body.toml", {.folder = folder_.path()});
  }

  [[nodiscard]] std::string error_of(const std::string& text) const
  {
    try
    {
      static_cast<void>(document(text).design());
    }
    catch (const DesignError& error)
    {
      return error.what();
    }
    return "no error";
  }

private:
  TemporaryFolder folder_;
};

const std::filesystem::path demo = std::filesystem::path(EXAMPLES_DIR) / "viola" / "body";

} // namespace

// Expected values: the text of the files, converted by hand to SI.

TEST_CASE("the body of the examples is read in SI")
{
  const BodyDesign body = BodyDocument::from_file(demo / "wooden_body.toml").design();
  CHECK(body.top.title == "Viola 405: spruce top (invented demo data)");
  CHECK(body.back.title == "Viola 405: maple back (invented demo data)");
  CHECK(1e3 * body.ribs.height == relative(38.0));
  CHECK(1e3 * body.ribs.neck_height == relative(36.5));
  CHECK(1e3 * body.ribs.overhang == relative(2.5));
  REQUIRE(body.ribs.laminate.plies.size() == 1);
  CHECK(1e3 * total_thickness(body.ribs.laminate) == relative(1.2));
  REQUIRE(body.linings.has_value());
  CHECK(1e3 * body.linings->height == relative(8.0));
  CHECK(1e3 * body.linings->thickness == relative(2.0));
  CHECK((1e3 * body.blocks.end - Eigen::Vector2d(52.0, 16.0)).norm() < 1e-12);
  CHECK((1e3 * body.blocks.corner - Eigen::Vector2d(24.0, 6.0)).norm() < 1e-12);
  REQUIRE(body.soundpost.has_value());
  CHECK((1e3 * body.soundpost->at - Eigen::Vector2d(-26.0, -17.0)).norm() < 1e-12);
  CHECK(1e3 * body.soundpost->diameter == relative(6.5));
  CHECK(1e3 * body.bridge_mass == relative(3.0));
  CHECK(body.strings.tension == relative(230.0));
  CHECK(body.air_temperature == 20.0);
}

TEST_CASE("a body of two plates alone has the usual measures of its length, and no post")
{
  // Usual rib heights: common practice, no source.
  const BodyFolder folder;
  for (const auto& [length, height] : {std::pair{350.0, 30.0}, {405.0, 38.0}, {755.0, 115.0}})
  {
    BodyDocument document = folder.document(heads);
    document.set_number("top.outline.length", length);
    document.set_number("back.outline.length", length);
    const BodyDesign body = document.design();
    CHECK(1e3 * body.ribs.height == relative(height));
    CHECK(body.ribs.neck_height == body.ribs.height);
    CHECK(body.linings.has_value());
    CHECK_FALSE(body.soundpost.has_value());
    CHECK(document.number("top.outline.length") == length);
    CHECK(document.unit("back.outline.length") == "mm");
  }
}

TEST_CASE("laminated ribs are plies along the rim")
{
  const BodyFolder folder;
  const BodyDesign body =
      folder.document(heads + "[ribs]\nplies = [{ material = \"carbon_ud\", thickness = 0.2, angle = 30 }]\n").design();
  REQUIRE(body.ribs.laminate.plies.size() == 1);
  CHECK(1e3 * total_thickness(body.ribs.laminate) == relative(0.2));
  // The fibre rises to the right at 30 degrees, seen from outside.
  for (const BodyPart& part : build_body(body).body.parts)
    if (part.name == "ribs")
    {
      const Eigen::Vector3d& normal = part.model.mesh.normals.front();
      const Eigen::Matrix3d frame = shell_frame(normal, part.model.material.axes);
      const double a = part.model.material.laminate.plies.front().angle.in_radians();
      const Eigen::Vector3d fibre = std::cos(a) * frame.col(0) + std::sin(a) * frame.col(1);
      const Eigen::Vector3d right = Eigen::Vector3d::UnitZ().cross(normal);
      CHECK(fibre.z() == doctest::Approx(0.5));
      CHECK(fibre.dot(right) == doctest::Approx(std::sqrt(0.75)));
    }
}

TEST_CASE("faults of a body's file are reported at their line")
{
  const BodyFolder folder;
  const auto fault = [&](const std::string& text) { return folder.error_of(heads + text); };
  check_message(fault("[ribs]\nheigth = 3\n"), "body.toml:5", {"ribs.heigth = 3", "unknown key", "ribs.height"});
  check_message(fault("[ribs]\nheight = \"low\"\n"), "body.toml:5", {"ribs.height", "a number in mm"});
  check_message(fault("[ribs]\nheight = 0\n"), "body.toml:5", {"ribs.height = 0", "greater than 0"});
  check_message(fault("[ribs]\nmaterial = \"mapel\"\n"), "body.toml:5", {"ribs.material", "maple"});
  check_message(fault("[ribs]\nthickness = 1\nplies = [{ material = \"carbon_ud\" }]\n"), "body.toml:5",
                {"ribs.thickness", "contradicts ribs.plies"});
  check_message(fault("[ribs]\nheight = 12\n[linings]\nheight = 6\n"), "body.toml:7",
                {"linings.height = 6", "at most 0.45"});
  check_message(fault("[blocks]\nend = [50, 0]\n"), "body.toml:5", {"blocks.end", "depth"});
  check_message(fault("[soundpost]\nat = [-300, 0]\n"), "body.toml:5", {"soundpost.at", "beside the top"});
  check_message(fault("[soundpost]\nat = [0, 0]\nlength = 50\n"), "body.toml:6", {"soundpost.length", "leave it out"});
  check_message(fault("[bridge]\nmass = 0\n"), "body.toml:5", {"bridge.mass", "greater than 0"});
  check_message(fault("[blocks]\nend = [0, 0]\n[neck]\nmass = 200\ncentre = [300, 10]\n"), "body.toml:6",
                {"neck", "blocks.end"});
  check_message(fault("[neck]\nmass = 200\n"), "body.toml:4", {"neck.centre", "missing"});
  check_message(fault("[arching]\nheight = 3\n"), "body.toml:4", {"arching", "no table of a body's file"});
  check_message(fault("[mesh]\nsize = 90\n"), "body.toml:5", {"mesh.size", "50 mm"});
  check_message(folder.error_of("[body]\ntop = \"plate.toml\"\n"), "body.toml:1", {"body.back", "missing"});
  check_message(folder.error_of("[body]\ntop = \"none.toml\"\nback = \"plate.toml\"\n"), "body.toml:2",
                {"body.top = \"none.toml\"", "no such file"});
  check_message(folder.error_of("[body]\ntop = \"held.toml\"\nback = \"plate.toml\"\n"), "body.toml:2",
                {"body.top", "[support]"});
  check_message(folder.error_of("[body]\ntop = \"plate.toml\"\nback = \"../../etc/x.toml\"\n"), "body.toml:3",
                {"outside the folder"});
  check_message(test::error_of(small_plate + "[ribs]\nheight = 30\n"), "top.toml:9", {"ribs", "body's file"});
}

TEST_CASE("a box weighs and holds what its measures say")
{
  const BodyFolder folder;
  const BodyModel model = build_body(folder.document(heads + bare_ribs).design());
  const double inside = (0.35 - 2.0 * 3e-3) * (0.2 - 2.0 * 3e-3); // within the middle of ribs 1 mm thick
  CHECK(1e3 * CavitySpace(model.cavity, 0).volume() == relative(1e3 * inside * 0.04));
  REQUIRE(model.cavity.planform.boundary.size() == 1);
  double enclosed = 0.0; // by the edges, counter-clockwise from above
  for (const auto& edge : model.cavity.planform.boundary.front().edges)
  {
    const Eigen::Vector3d& a = model.cavity.planform.nodes[static_cast<std::size_t>(edge[0])];
    const Eigen::Vector3d& b = model.cavity.planform.nodes[static_cast<std::size_t>(edge[3])];
    enclosed += 0.5 * (a.x() * b.y() - a.y() * b.x());
  }
  CHECK(enclosed == relative(inside));
  const BodySystem system = assemble(model.body);
  CHECK(1e3 * system.parts[BodyModel::top].mass == relative(400.0 * 0.35 * 0.2 * 3e-3 * 1e3 + 2.0));
  const double ribs = 500.0 * 2.0 * (0.344 + 0.194) * (0.04 + 3e-3) * 1e-3; // from mid-surface to mid-surface
  CHECK(1e3 * (system.system.mass - 2.0 * 400.0 * 0.35 * 0.2 * 3e-3 - 2e-3) == relative(1e3 * ribs));
  CHECK(system.system.centre_of_gravity.y() == doctest::Approx(0.0).epsilon(1e-9));
  CHECK(model.body.struts.empty());
}

TEST_CASE("blocks and linings weigh what their measures say, whatever the mesh")
{
  const BodyFolder folder;
  const double bare = assemble(build_body(folder.document(heads + bare_ribs).design()).body).system.mass;
  const auto mass_with = [&](std::string_view key, std::string_view value, std::string_view size)
  {
    BodyDocument document = folder.document(heads + bare_ribs + "[soundpost]\nat = [0, 0]\n");
    document.set("blocks.material", "wood");
    document.set("linings.material", "wood");
    document.set(key, value);
    document.set("mesh.size", size);
    BodyModel model = build_body(document.design());
    CHECK(model.body.struts.size() == 1);
    model.body.struts.clear();
    return assemble(model.body).system.mass;
  };
  const double between = 0.04 + 3e-3; // mid-surfaces [m]
  for (const char* size : {"15", "40"})
  {
    CHECK(1e3 * (mass_with("blocks.end", "[52, 16]", size) - bare) ==
          doctest::Approx(1e3 * 500.0 * 2.0 * 0.052 * 0.016 * between).epsilon(1e-6));
    CHECK(1e3 * (mass_with("blocks.corner", "[24, 6]", size) - bare) ==
          doctest::Approx(1e3 * 500.0 * 8.0 * 0.024 * 0.006 * between).epsilon(1e-6));
    // Linings keep their share of the height between mid-surfaces: 8 mm of 43.
    CHECK(1e3 * (mass_with("linings.height", "8", size) - bare) ==
          doctest::Approx(1e3 * 500.0 * 2.0 * 0.008 * 0.002 * 2.0 * (0.344 + 0.194)).epsilon(1e-6));
  }
}

TEST_CASE("ribs that are lower at the neck tilt the back")
{
  const BodyFolder folder;
  BodyDocument document = folder.document(heads + bare_ribs);
  document.set("ribs.neck_height", "30");
  const BodyModel model = build_body(document.design());
  const BodyPart& back = model.body.parts[BodyModel::back];
  // Inner faces: half the plate's thickness from the mid-surface.
  const auto height = [&](double x) { return -(back.placement * Eigen::Vector3d(x, 0.0, 0.0)).z() - 3e-3; };
  CHECK(1e3 * height(-0.175) == doctest::Approx(40.0).epsilon(1e-3));
  CHECK(1e3 * height(0.175) == doctest::Approx(30.0).epsilon(1e-3));
  CHECK(CavitySpace(model.cavity, 0).volume() == relative(0.344 * 0.194 * 0.035, 1e-3));
}

TEST_CASE("the demo body moves freely as a whole and nothing of it hangs loose")
{
  BodyDocument document = BodyDocument::from_file(demo / "wooden_body.toml");
  document.set("mesh.size", "45");
  const BodyModel model = build_body(document.design());
  const BodySystem s = assemble(model.body);
  REQUIRE(s.system.rigid_motions.cols() == 6);
  const Eigen::MatrixXd& R = s.system.rigid_motions;
  const Eigen::MatrixXd force = s.system.K.selfadjointView<Eigen::Lower>() * R;
  CHECK(force.cwiseAbs().maxCoeff() < 1e-9 * s.system.K.diagonal().maxCoeff());
  const Eigen::Matrix3d shifted =
      R.leftCols<3>().transpose() * (s.system.M.selfadjointView<Eigen::Lower>() * R.leftCols<3>());
  CHECK((shifted - s.system.mass * Eigen::Matrix3d::Identity()).norm() < 1e-9 * s.system.mass);
  // Every node of a rib's rim is glued: ribs alone have no boundary that is not in a joint.
  std::vector<std::size_t> glued(model.body.parts.size(), 0);
  for (const auto& joint : model.body.joints)
    for (const PartNode& node : joint)
      ++glued[node.part];
  for (std::size_t p = 0; p < glued.size(); ++p)
    CHECK(glued[p] > 0);
  // Shares of the energy in any state add up to one; a state of the top alone strains the top and what it pulls.
  Eigen::MatrixXd state = Eigen::MatrixXd::Zero(s.system.dofs.num_equations, 1);
  state(s.system.dofs.num_equations / 2) = 1.0;
  const Eigen::MatrixXd shares = energy_shares(s, state);
  CHECK(shares.sum() == doctest::Approx(1.0));
  CHECK(shares.topRows(shares.rows() - 1).minCoeff() > -1e-12);
}

TEST_CASE("plates of measured outlines make a body although these are not quite symmetric")
{
  const std::string text = "[body]\ntop = \"viola/measured_top.toml\"\nback = \"viola/measured_top.toml\"\n";
  BodyDocument document = BodyDocument::from_text(text, "body.toml", {.folder = EXAMPLES_DIR});
  document.set("mesh.size", "40");
  const BodyModel model = build_body(document.design());
  const BodySystem s = assemble(model.body);
  CHECK(s.system.rigid_motions.cols() == 6);
  // Both plates weigh the same but for the bridge: the outline of one is the mirror image of the other's.
  CHECK(s.parts[BodyModel::top].mass - 3e-3 == relative(s.parts[BodyModel::back].mass, 1e-3));
}

TEST_CASE("a neck weighs on the body at its end")
{
  const BodyFolder folder;
  const auto body_with = [&](const std::string& neck)
  { return assemble(build_body(folder.document(heads + neck).design()).body); };
  const System bare = body_with("").system;
  const System with = body_with("[neck]\nmass = 200\ncentre = [300, 10]\nlength = 250\n").system;
  CHECK(1e3 * (with.mass - bare.mass) == relative(200.0));
  const Eigen::Vector3d moment = with.centre_of_gravity * with.mass - bare.centre_of_gravity * bare.mass;
  CHECK((moment - 0.2 * Eigen::Vector3d(0.3, 0.0, 0.01)).norm() < 1e-12);
  const auto turning = [](const System& s)
  {
    const Eigen::VectorXd R = s.rigid_motions.col(5); // about z
    return R.dot(s.M.selfadjointView<Eigen::Lower>() * R);
  };
  CHECK(turning(with) - turning(bare) == relative(0.2 * (0.3 * 0.3 + 0.25 * 0.25 / 12.0)));
}

TEST_CASE("keys of the plates are reached through the body")
{
  BodyDocument document = BodyDocument::from_file(demo / "laminate_body.toml");
  const double before = areal_mass(document.design().top.laminate);
  document.set("top.layup.scale", "2");
  CHECK(areal_mass(document.design().top.laminate) > 1.2 * before);
  CHECK_THROWS_AS(document.set("top.ribs.hight", "3"), DesignError);
  CHECK_THROWS_AS(document.set("ribs.hight", "3"), DesignError);
}
