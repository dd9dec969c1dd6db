// SPDX-License-Identifier: MPL-2.0
#include "laminate_report.h"

#include "json_text.h"
#include "modes_report.h"
#include "text_table.h"

#include <plate/core/error.h>
#include <plate/core/units.h>

#include <nlohmann/json.hpp>

#include <cmath>
#include <numbers>

namespace plate
{
namespace
{

using Json = nlohmann::ordered_json;

constexpr double millionths = 1e6;
constexpr double percent_points = 0.01; // a percentage point of moisture as a fraction

double in_degrees(Angle angle)
{
  return angle.in_radians() * 180.0 / std::numbers::pi;
}

Json matrix_json(const Eigen::MatrixXd& matrix)
{
  Json rows = Json::array();
  for (Eigen::Index i = 0; i < matrix.rows(); ++i)
  {
    Json row = Json::array();
    for (Eigen::Index j = 0; j < matrix.cols(); ++j)
      row.push_back(rounded(matrix(i, j)));
    rows.push_back(std::move(row));
  }
  return rows;
}

Json vector_json(const Eigen::Vector3d& vector)
{
  return {rounded(vector.x()), rounded(vector.y()), rounded(vector.z())};
}

Json constants_json(const EngineeringConstants& c)
{
  return {{"Ex_GPa", rounded(c.Ex * gigapascals)},
          {"Ey_GPa", rounded(c.Ey * gigapascals)},
          {"Gxy_GPa", rounded(c.Gxy * gigapascals)},
          {"nuxy", rounded(c.nuxy)}};
}

Json plies_json(const Laminate& laminate)
{
  Json plies = Json::array();
  for (const Ply& ply : laminate.plies)
    plies.push_back({{"material", ply.material.name},
                     {"thickness_mm", rounded(ply.thickness * millimetres)},
                     {"angle_degrees", rounded(in_degrees(ply.angle))}});
  return plies;
}

Json polar_json(const LaminateResult& result)
{
  Json angles = Json::array();
  Json moduli = Json::array();
  Json bending = Json::array();
  for (std::size_t i = 0; i < result.polar.size(); ++i)
  {
    angles.push_back(static_cast<int>(i) * polar_step);
    moduli.push_back(rounded(result.polar[i].modulus * gigapascals));
    bending.push_back(rounded(result.polar[i].bending));
  }
  return {{"angle_degrees", angles}, {"E_GPa", moduli}, {"D_N_m", bending}};
}

/// Expansion and the curvature that comes with it, or null where a material has no data.
void add_expansion(Json& json, const std::string& strain_key, const std::string& curvature_key,
                   const std::optional<Vector6d>& expansion, double scale)
{
  json[strain_key] = expansion ? vector_json(scale * expansion->head<3>()) : Json();
  json[curvature_key] = expansion ? vector_json(scale / millimetres * expansion->tail<3>()) : Json();
}

/// The matrix without what rounding leaves where the exact value is zero.
Eigen::MatrixXd cleaned(const Eigen::MatrixXd& matrix, double scale)
{
  constexpr double rounding = 1e-13;
  return (matrix.array().abs() < rounding * scale).select(0.0, matrix);
}

std::string row_of(const std::string& label, const Eigen::RowVectorXd& row)
{
  std::string out = message("  ", label);
  for (const double value : row)
  {
    const std::string text = compact(value);
    out += std::string(text.size() < 14 ? 14 - text.size() : 1, ' ') + text;
  }
  return out + '\n';
}

std::string matrix_text(const std::string& name, const Eigen::MatrixXd& matrix)
{
  std::string out;
  for (Eigen::Index i = 0; i < matrix.rows(); ++i)
    out += row_of(i == 0 ? name : std::string(name.size(), ' '), matrix.row(i));
  return out;
}

std::string constants_text(const std::string& name, const EngineeringConstants& c)
{
  return message("  ", name, "  Ex ", fixed(c.Ex * gigapascals, 3), "  Ey ", fixed(c.Ey * gigapascals, 3), "  Gxy ",
                 fixed(c.Gxy * gigapascals, 3), " GPa  nuxy ", fixed(c.nuxy, 4), '\n');
}

std::string expansion_text(const std::string& name, const std::string& unit, const std::optional<Vector6d>& expansion,
                           double scale, const std::string& missing)
{
  if (!expansion)
    return message("  ", name, "  not known: ", missing, " has no data\n");
  const Vector6d e = scale * *expansion;
  return message("  ", name, "  x ", fixed(e(0), 3), "  y ", fixed(e(1), 3), "  xy ", fixed(e(2), 3), "  ", unit,
                 "; curvature x ", fixed(e(3) / millimetres, 4), "  y ", fixed(e(4) / millimetres, 4), "  xy ",
                 fixed(e(5) / millimetres, 4), "  ", unit, "/mm\n");
}

std::string plies_text(const Laminate& laminate)
{
  TextTable table({"ply", "<material", "mm", "degrees"});
  for (std::size_t i = 0; i < laminate.plies.size(); ++i)
    table.add({std::to_string(i + 1), laminate.plies[i].material.name,
               fixed(laminate.plies[i].thickness * millimetres, 3), fixed(in_degrees(laminate.plies[i].angle), 1)});
  return table.text();
}

} // namespace

std::string laminate_text(const LaminateResult& result)
{
  const Matrix6d& abd = result.abd;
  const double stretching = abd(0, 0) + abd(1, 1); // [N/m]
  const double thickness = result.thickness;
  std::string out =
      message(result.title, "\n  thickness ", fixed(result.thickness * millimetres, 3), " mm, ",
              fixed(result.areal_mass, 3), " kg/m2; from inside to outside:\n\n", plies_text(result.laminate));
  out += "\nStiffness about the mid-surface, order 11, 22, 12; transverse shear S: 13, 23\n";
  out += matrix_text("A N/m  ", cleaned(abd.topLeftCorner<3, 3>(), stretching));
  out += matrix_text("B N    ", cleaned(abd.topRightCorner<3, 3>(), stretching * thickness));
  out += matrix_text("D N m  ", cleaned(abd.bottomRightCorner<3, 3>(), stretching * thickness * thickness));
  out += matrix_text("S N/m  ", cleaned(result.shear, result.shear.trace()));
  out += "\nConstants of a homogeneous plate of this thickness\n";
  out += constants_text("stretching", result.membrane);
  out += constants_text("bending   ", result.bending);
  out += "\nFree expansion\n";
  out += expansion_text("temperature", "1e-6/K", result.thermal, millionths,
                        without_expansion(result.laminate, &Material::thermal));
  out += expansion_text("moisture   ", "1e-6/%", result.swelling, millionths * percent_points,
                        without_expansion(result.laminate, &Material::swelling));
  out += message("\nRadiation ratio sqrt(12 D/m^3) along x ",
                 fixed(radiation_ratio(result.polar.front().bending, result.areal_mass), 2), ", along y ",
                 fixed(radiation_ratio(result.polar[90 / polar_step].bending, result.areal_mass), 2), " m4/(kg s)\n\n");
  if (result.seconds)
    out += message("seconds: total ", fixed(*result.seconds, 4), "\n");
  return message(out, caution, '\n');
}

std::string laminate_json(const LaminateResult& result)
{
  const Matrix6d& abd = result.abd;
  Json json = {{"title", result.title},
               {"thickness_mm", rounded(result.thickness * millimetres)},
               {"areal_mass_kg_m2", rounded(result.areal_mass)},
               {"plies", plies_json(result.laminate)},
               {"A_N_m", matrix_json(abd.topLeftCorner<3, 3>())},
               {"B_N", matrix_json(abd.topRightCorner<3, 3>())},
               {"D_N_m", matrix_json(abd.bottomRightCorner<3, 3>())},
               {"shear_N_m", matrix_json(result.shear)}};
  json.update(constants_json(result.membrane));
  json["bending"] = constants_json(result.bending);
  add_expansion(json, "alpha_1e-6_K", "thermal_curvature_1e-6_mm_K", result.thermal, millionths);
  add_expansion(json, "beta_1e-6_percent", "moisture_curvature_1e-6_mm_percent", result.swelling,
                millionths * percent_points);
  json["radiation_ratio_m4_kg_s"] = {
      rounded(radiation_ratio(result.polar.front().bending, result.areal_mass)),
      rounded(radiation_ratio(result.polar[90 / polar_step].bending, result.areal_mass))};
  json["polar"] = polar_json(result);
  json["caution"] = caution;
  if (result.seconds)
    json["seconds"] = {{"total", *result.seconds}};
  return json_text(json);
}

std::string polar_csv(const LaminateResult& result)
{
  std::string out = csv_line({"angle_degrees", "E_GPa", "D_N_m"});
  for (std::size_t i = 0; i < result.polar.size(); ++i)
    out += csv_line({std::to_string(static_cast<int>(i) * polar_step), compact(result.polar[i].modulus * gigapascals),
                     compact(result.polar[i].bending)});
  return out;
}

} // namespace plate
