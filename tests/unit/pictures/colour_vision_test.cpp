// SPDX-License-Identifier: MPL-2.0
#include "pictures/curve_style.h"

#include <Eigen/Core>

#include <doctest/doctest.h>

#include <cmath>
#include <set>
#include <string>

using namespace plate;

namespace
{

/// The common kinds of colour blindness at full strength, on linear RGB: [Machado2009], table for severity 1.0.
struct Deficiency
{
  std::string name;
  Eigen::Matrix3d matrix;
};

Eigen::Matrix3d rows(const Eigen::Vector3d& red, const Eigen::Vector3d& green, const Eigen::Vector3d& blue)
{
  Eigen::Matrix3d matrix;
  matrix << red.transpose(), green.transpose(), blue.transpose();
  return matrix;
}

const Deficiency deficiencies[] = {
    {"none", Eigen::Matrix3d::Identity()},
    {"protanopia",
     rows({0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998})},
    {"deuteranopia",
     rows({0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881})},
    {"tritanopia",
     rows({1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900})}};

double decode(double stored) // IEC 61966-2-1
{
  return stored <= 0.04045 ? stored / 12.92 : std::pow((stored + 0.055) / 1.055, 2.4);
}

double encode(double linear)
{
  return linear <= 0.0031308 ? 12.92 * linear : 1.055 * std::pow(linear, 1.0 / 2.4) - 0.055;
}

Lab seen(const Colour& colour, const Deficiency& deficiency)
{
  const Eigen::Vector3d linear(decode(colour.red), decode(colour.green), decode(colour.blue));
  const Eigen::Vector3d out = (deficiency.matrix * linear).cwiseMax(0.0).cwiseMin(1.0);
  return to_lab({.red = encode(out[0]), .green = encode(out[1]), .blue = encode(out[2])});
}

double difference(const Lab& p, const Lab& q)
{
  return std::hypot(p.L - q.L, p.a - q.a, p.b - q.b);
}

} // namespace

TEST_CASE("Curves are told apart by lightness, and by colour for every kind of eye")
{
  // Least steps by common practice, no source: 2.3 in L*a*b* is just noticeable side by side; thin lines apart from
  // each other need several times that. In grey the patterns of the lines help as well.
  constexpr double least_lightness = 8.0;
  constexpr double least_difference = 20.0;
  constexpr double lightest = 70.0; // on white paper
  for (const Deficiency& deficiency : deficiencies)
    for (std::size_t i = 0; i < num_curve_pens; ++i)
    {
      CAPTURE(deficiency.name);
      CAPTURE(i);
      const Lab one = seen(curve_pen(i).colour, deficiency);
      CHECK(one.L < lightest);
      for (std::size_t j = 0; j < i; ++j)
      {
        CAPTURE(j);
        const Lab other = seen(curve_pen(j).colour, deficiency);
        CHECK(difference(one, other) > least_difference);
        if (deficiency.name == "none") // as grey print has it
          CHECK(std::abs(one.L - other.L) > least_lightness);
      }
    }
}

TEST_CASE("Each curve has a line pattern of its own")
{
  std::set<std::array<double, 4>> patterns;
  for (std::size_t i = 0; i < num_curve_pens; ++i)
    patterns.insert(curve_pen(i).dashes);
  CHECK(patterns.size() == num_curve_pens);
}

TEST_CASE("Both senses of a mode and its zero stay apart for every kind of eye, by lightness alone")
{
  constexpr double least_lightness = 12.0; // at half the largest displacement; a quarter of it gives half
  for (const Deficiency& deficiency : deficiencies)
  {
    CAPTURE(deficiency.name);
    const double inward = seen(displacement_map().colour(0.25), deficiency).L;
    const double none = seen(displacement_map().colour(0.5), deficiency).L;
    const double outward = seen(displacement_map().colour(0.75), deficiency).L;
    CHECK(none - inward > least_lightness);
    CHECK(outward - none > least_lightness);
  }
}
