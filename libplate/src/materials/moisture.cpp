// SPDX-License-Identifier: MPL-2.0
#include <plate/materials/moisture.h>

#include <plate/core/error.h>

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

constexpr double reference_content = 0.12;
constexpr double saturation = 0.30; // content above which volume no longer changes, in the handbook's density formula

/// Basic specific gravity (green volume) from that at a moisture content, eq. 4-13 solved.
double basic_gravity(double gravity, double content)
{
  return gravity / (1.0 + 0.265 * gravity * (1.0 - content / saturation));
}

double gravity_at(double basic, double content)
{
  return basic / (1.0 - 0.265 * basic * (1.0 - content / saturation));
}

} // namespace

double equilibrium_moisture(const Climate& climate)
{
  const double T = climate.temperature;
  const double h = climate.humidity;
  if (!(T >= 0.0 && T <= 100.0 && h >= 0.0 && h <= 0.99))
    throw InvalidInput(
        message("equilibrium_moisture: the formula holds from 0 to 100 deg C and up to 99 % humidity; got ", T,
                " deg C and ", h * 100.0, " %"));
  const double W = 349.0 + 1.29 * T + 0.0135 * T * T;
  const double K = 0.805 + 0.000736 * T - 0.00000273 * T * T;
  const double K1 = 6.27 - 0.00938 * T - 0.000303 * T * T;
  const double K2 = 1.91 + 0.0407 * T - 0.000293 * T * T;
  const double Kh = K * h;
  return 18.0 / W * (Kh / (1.0 - Kh) + (K1 * Kh + 2.0 * K1 * K2 * Kh * Kh) / (1.0 + K1 * Kh + K1 * K2 * Kh * Kh));
}

double at_moisture(double at_12, double green, double content, double intersection)
{
  if (content >= intersection)
    return green;
  return at_12 * std::pow(at_12 / green, (reference_content - content) / (intersection - reference_content));
}

double density_at_moisture(double density, double from, double to)
{
  const auto capped = [](double content) { return std::min(content, saturation); };
  const double gravity = density / (1000.0 * (1.0 + from));
  const double basic = basic_gravity(gravity, capped(from));
  return 1000.0 * gravity_at(basic, capped(to)) * (1.0 + to);
}

Material in_climate(const Material& material, const Climate& climate)
{
  if (!material.moisture)
    return material;
  const MoistureData& data = *material.moisture;
  const double content = equilibrium_moisture(climate);
  const double factor = at_moisture(data.green_ratio, 1.0, content, data.intersection) /
                        at_moisture(data.green_ratio, 1.0, data.content, data.intersection);
  Material changed = material;
  for (double OrthotropicElastic::*modulus :
       {&OrthotropicElastic::E1, &OrthotropicElastic::E2, &OrthotropicElastic::E3, &OrthotropicElastic::G12,
        &OrthotropicElastic::G13, &OrthotropicElastic::G23})
    changed.elastic.*modulus *= factor;
  changed.density = density_at_moisture(material.density, data.content, content);
  changed.moisture->content = content;
  return changed;
}

} // namespace plate
