// SPDX-License-Identifier: MPL-2.0
#include "run_plate.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <string>

using nlohmann::json;
using namespace plate::test;

namespace
{

/// The textbook lamina [Kaw2006] table 2.1 in a quasi-isotropic stack, with its expansion.
const std::string quasi_isotropic =
    "title = \"Quasi-isotropic\"\n[material.lamina]\nE1 = 181\nE2 = 10.3\nG12 = 7.17\nnu12 = 0.28\ndensity = 1600\n"
    "expansion = [0.02, 22.5]\n"
    "[layup]\ncode = \"[0/45/-45/90]s\"\nply = { material = \"lamina\", thickness = 0.125 }\n";

} // namespace

TEST_CASE("laminate prints the promised keys with the textbook's values")
{
  const Workshop shop;
  const Run run = run_plate({"laminate", shop.write("skin.toml", quasi_isotropic), "--json"});
  CHECK(run.status == 0);
  CHECK(run.err.empty());
  const json result = json::parse(run.out);
  // Recomputed independently: A11 76.3682177, A12 22.6073555, A66 26.8804311 MN/m; D in N m; GPa.
  CHECK(result.at("thickness_mm").get<double>() == doctest::Approx(1.0));
  CHECK(result.at("areal_mass_kg_m2").get<double>() == doctest::Approx(1.6));
  CHECK(result.at("A_N_m").at(0).at(0).get<double>() == doctest::Approx(7.63682177e7).epsilon(1e-8));
  CHECK(result.at("A_N_m").at(0).at(1).get<double>() == doctest::Approx(2.26073555e7).epsilon(1e-8));
  CHECK(result.at("A_N_m").at(2).at(2).get<double>() == doctest::Approx(2.68804311e7).epsilon(1e-8));
  CHECK(std::abs(result.at("B_N").at(0).at(0).get<double>()) < 1e-6);
  CHECK(result.at("D_N_m").at(0).at(0).get<double>() == doctest::Approx(10.6907041).epsilon(1e-8));
  CHECK(result.at("D_N_m").at(0).at(2).get<double>() == doctest::Approx(0.6697851).epsilon(1e-7));
  CHECK(result.at("Ex_GPa").get<double>() == doctest::Approx(69.675741).epsilon(1e-7));
  CHECK(result.at("Gxy_GPa").get<double>() == doctest::Approx(26.880431).epsilon(1e-7));
  CHECK(result.at("nuxy").get<double>() == doctest::Approx(0.29603094).epsilon(1e-7));
  // A quasi-isotropic laminate expands as a cross-ply of the same lamina: 1.52393e-6/K.
  CHECK(result.at("alpha_1e-6_K").at(0).get<double>() == doctest::Approx(1.52393).epsilon(1e-5));
  CHECK(result.at("alpha_1e-6_K").at(1).get<double>() == doctest::Approx(1.52393).epsilon(1e-5));
  CHECK(result.at("beta_1e-6_percent").is_null()); // no swelling was given
  CHECK(result.at("shear_N_m").size() == 2);
  CHECK(result.at("polar").at("E_GPa").size() == result.at("polar").at("angle_degrees").size());
}

TEST_CASE("laminate writes its files and prints a report that names what is not known")
{
  const Workshop shop;
  const Run run = run_plate({"laminate", shop.write("skin.toml", quasi_isotropic), "--out", shop.path("out"), "--set",
                             "layup.ply.thickness=0.25"});
  CHECK(run.status == 0);
  CHECK(run.out.find("Quasi-isotropic") != std::string::npos);
  CHECK(run.out.find("thickness 2.000 mm") != std::string::npos);
  CHECK(run.out.find("not known: lamina has no data") != std::string::npos);
  CHECK(run.out.find("69.676") != std::string::npos);
  CHECK(shop.content("out").count("laminate.json") == 1);
  CHECK(shop.content("out").count("polar.csv") == 1);
}

TEST_CASE("laminate states the seconds it took only when asked")
{
  const Workshop shop;
  const std::string file = shop.write("skin.toml", quasi_isotropic);
  CHECK(json::parse(run_plate({"laminate", file, "--json"}).out).count("seconds") == 0);
  CHECK(json::parse(run_plate({"laminate", file, "--json", "--timing"}).out).at("seconds").at("total").get<double>() >=
        0.0);
}

TEST_CASE("laminate on wrong input says so")
{
  const Workshop shop;
  const Run run = run_plate({"laminate", shop.write("skin.toml", "[layup]\ncode = \"[0/90\"\n")});
  CHECK(run.status == 2);
  CHECK(run.out.empty());
  CHECK(run.err.find("skin.toml:2: layup.code") != std::string::npos);
}
