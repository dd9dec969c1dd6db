// SPDX-License-Identifier: MPL-2.0
#include <plate/laminates/failure.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace plate
{

namespace
{

constexpr double unlimited = std::numeric_limits<double>::infinity();

/// Strength of one component in both senses.
struct Limits
{
  double tension;     // [Pa]
  double compression; // positive [Pa]
  FailureMode in_tension;
  FailureMode in_compression;
};

StrengthMargin component_margin(const Limits& limits, double load, double held)
{
  if (held >= limits.tension)
    return {0.0, limits.in_tension};
  if (held <= -limits.compression)
    return {0.0, limits.in_compression};
  if (load > 0.0)
    return {(limits.tension - held) / load, limits.in_tension};
  if (load < 0.0)
    return {(limits.compression + held) / -load, limits.in_compression};
  return {unlimited, limits.in_tension};
}

Limits along(const Strength& s)
{
  return {s.Xt, s.Xc, FailureMode::tension_along, FailureMode::compression_along};
}

Limits across(const Strength& s)
{
  return {s.Yt, s.Yc, FailureMode::tension_across, FailureMode::compression_across};
}

Limits in_shear(double strength, FailureMode mode)
{
  return {strength, strength, mode, mode};
}

StrengthMargin lesser(const StrengthMargin& a, const StrengthMargin& b)
{
  return b.factor < a.factor ? b : a;
}

PlaneStress plane_part(const MaterialComponents& load, const MaterialComponents& held)
{
  return {.load = {load(0), load(1), load(5)}, .held = {held(0), held(1), held(5)}};
}

/// Along and across the grain; the third direction, which a slope tilts into the plane, is as weak as the second.
StrengthMargin wood_margin(const Strength& s, const MaterialComponents& load, const MaterialComponents& held)
{
  return lesser(maximum_stress_margin(s, plane_part(load, held)), component_margin(across(s), load(2), held(2)));
}

StrengthMargin ply_margin(const Strength& s, const MaterialComponents& load, const MaterialComponents& held)
{
  const PlaneStress stress = plane_part(load, held);
  return lesser(maximum_stress_margin(s, stress), {tsai_wu_factor(s, stress), FailureMode::combined});
}

StrengthMargin through_margin(const ThroughStrength& s, const MaterialComponents& load, const MaterialComponents& held)
{
  constexpr FailureMode mode = FailureMode::shear_through;
  return lesser(component_margin(in_shear(s.S13, mode), load(4), held(4)),
                component_margin(in_shear(s.S23, mode), load(3), held(3)));
}

} // namespace

std::string_view words(FailureMode mode)
{
  switch (mode)
  {
  case FailureMode::tension_along:
    return "tension along";
  case FailureMode::compression_along:
    return "compression along";
  case FailureMode::tension_across:
    return "tension across";
  case FailureMode::compression_across:
    return "compression across";
  case FailureMode::shear:
    return "shear in the plane";
  case FailureMode::shear_through:
    return "shear through the thickness";
  case FailureMode::combined:
    return "stresses together";
  }
  return {};
}

double tsai_wu_factor(const Strength& strength, const PlaneStress& stress)
{
  const double F11 = 1.0 / (strength.Xt * strength.Xc);
  const double F22 = 1.0 / (strength.Yt * strength.Yc);
  const double F12 = -0.5 * std::sqrt(F11 * F22);
  Eigen::Matrix3d F;
  F << F11, F12, 0.0, F12, F22, 0.0, 0.0, 0.0, 1.0 / (strength.S * strength.S);
  const Eigen::Vector3d f(1.0 / strength.Xt - 1.0 / strength.Xc, 1.0 / strength.Yt - 1.0 / strength.Yc, 0.0);
  // a R^2 + b R + c = 0 on the surface.
  const double a = stress.load.dot(F * stress.load);
  const double b = stress.load.dot(f + 2.0 * F * stress.held);
  const double c = stress.held.dot(f + F * stress.held) - 1.0;
  if (c >= 0.0)
    return 0.0;
  if (a == 0.0)
    return unlimited;
  const double root = std::sqrt(b * b - 4.0 * a * c);
  return b > 0.0 ? -2.0 * c / (b + root) : (root - b) / (2.0 * a); // without cancellation
}

StrengthMargin maximum_stress_margin(const Strength& strength, const PlaneStress& stress)
{
  const StrengthMargin direct = lesser(component_margin(along(strength), stress.load(0), stress.held(0)),
                                       component_margin(across(strength), stress.load(1), stress.held(1)));
  const Limits shear = in_shear(strength.S, FailureMode::shear);
  return lesser(direct, component_margin(shear, stress.load(2), stress.held(2)));
}

std::optional<StrengthMargin> strength_margin(const Material& material, const MaterialComponents& load,
                                              const MaterialComponents& held)
{
  std::optional<StrengthMargin> margin;
  if (material.strength)
    margin = material.wood ? wood_margin(*material.strength, load, held) : ply_margin(*material.strength, load, held);
  if (material.through_strength)
  {
    const StrengthMargin through = through_margin(*material.through_strength, load, held);
    margin = margin ? lesser(*margin, through) : through;
  }
  return margin;
}

} // namespace plate
