// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/arching.h>

#include <plate/core/error.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace plate
{

namespace
{

using std::numbers::pi;

// A value with its slope by one variable.
struct Slope
{
  double value;
  double slope;
};

// Ramp that is 0 up to 0, rises smoothly and runs on with slope 1 from 2: r = (s/2)^3 (2 - s/2) below 2, s - 1 above.
// Continuous to the second derivative. Zero edge of the arched region, its bend spread over a width of 2.
Slope soft_ramp(double s)
{
  if (s <= 0.0)
    return {0.0, 0.0};
  if (s >= 2.0)
    return {s - 1.0, 1.0};
  const double q = 0.5 * s;
  return {q * q * q * (2.0 - q), 0.5 * (6.0 * q * q - 4.0 * q * q * q)};
}

// Share of the way from crown (0) to rim (1), slowed down near the rim over the width w; slope by `share`, and by w.
struct Eased
{
  double value;
  double by_share;
  double by_width;
};

Eased ease_into_rim(double share, double w)
{
  const Slope ramp = soft_ramp((1.0 - share) / w);
  const double rest = w * ramp.value / (1.0 - w); // 1 - eased share
  const double d_rest_d_w =
      (ramp.value - ramp.slope * (1.0 - share) / w) / (1.0 - w) + w * ramp.value / ((1.0 - w) * (1.0 - w));
  return {1.0 - rest, ramp.slope / (1.0 - w), -d_rest_d_w};
}

// Long arch, as part of the height: a cosine over a share of the half length that leaves a long, full crown.
Slope long_arch(double x, double half_length, double channel)
{
  const double s = x / half_length;
  const double share = 0.5 * s * s * (1.0 + s * s);
  const double share_slope = (s + 2.0 * s * s * s) / half_length;
  const Eased eased = ease_into_rim(share, 2.0 * channel / half_length);
  const double angle = pi * eased.value;
  return {0.5 * (1.0 + std::cos(angle)), -0.5 * pi * std::sin(angle) * eased.by_share * share_slope};
}

// Solves y = b/pi a + h/2 sin(a) for a in [0, pi]; the left side grows with a as long as h < 2b/pi.
double cycloid_angle(double y, double b, double h)
{
  double low = 0.0;
  double high = pi;
  double a = std::clamp(pi * y / b, 0.0, pi);
  for (int i = 0; i < 60; ++i)
  {
    const double miss = b / pi * a + 0.5 * h * std::sin(a) - y;
    (miss > 0.0 ? high : low) = a;
    double next = a - miss / (b / pi + 0.5 * h * std::cos(a));
    if (!(next >= low && next <= high))
      next = 0.5 * (low + high);
    if (std::abs(next - a) < 1e-15)
      return next;
    a = next;
  }
  return a;
}

Height cycloid_height(const Eigen::Vector2d& point, double H, const InnerShape& shape)
{
  constexpr Height rim{0.0, 0.0, 0.0};
  const InnerShape::Width width = shape.at(point.x());
  const double y = std::abs(point.y());
  if (width.squared <= y * y || std::abs(point.x()) >= shape.half_length())
    return rim;
  const double b = std::sqrt(width.squared);
  const double b_x = 0.5 * width.slope / b;
  const Slope arch = long_arch(point.x(), shape.half_length(), shape.channel() - shape.rim());
  const double h = H * arch.value;
  const double h_x = H * arch.slope;

  // Width of the channel's bend as part of b; bounded where b goes to zero at the ends.
  const double w0 = shape.channel() - shape.rim();
  const double root = std::sqrt(width.squared + 4.0 * w0 * w0);
  const double w = w0 / root;
  const double w_x = -0.5 * w0 * width.slope / (root * root * root);

  const double share = y / b;
  const Eased eased = ease_into_rim(share, w);
  const double eased_y = b * eased.value; // distance from the centre line at which the pure cycloid is taken
  const double eased_y_x = b_x * eased.value + b * (eased.by_share * (-share * b_x / b) + eased.by_width * w_x);

  const double a = cycloid_angle(eased_y, b, h);
  const double sin_a = std::sin(a);
  const double d = b / pi + 0.5 * h * std::cos(a);
  const double a_x = (eased_y_x - b_x / pi * a - 0.5 * h_x * sin_a) / d;
  const double a_y = eased.by_share / d;
  return {.z = 0.5 * h * (1.0 + std::cos(a)),
          .z_x = 0.5 * h_x * (1.0 + std::cos(a)) - 0.5 * h * sin_a * a_x,
          .z_y = std::copysign(0.5 * h * sin_a * a_y, -point.y())};
}

double height_of(const Arching& arching)
{
  if (const auto* cycloid = std::get_if<CycloidArching>(&arching))
    return cycloid->height;
  if (const auto* biparabolic = std::get_if<BiparabolicArching>(&arching))
    return biparabolic->height;
  if (const auto* elliptic = std::get_if<EllipticArching>(&arching))
    return elliptic->height;
  if (const auto* measured = std::get_if<SurfaceArching>(&arching))
    return measured->cycloid_height;
  return 0.0;
}

// Greatest height of the crown for which no cross arch becomes upright: h < 2 b / pi with some room to spare.
double greatest_height(const InnerShape& shape)
{
  constexpr double room = 0.75; // steepest slope 48 degrees
  constexpr int stations = 400;
  double most = HUGE_VAL;
  for (int k = 1; k < stations; ++k)
  {
    const double x = shape.half_length() * (2.0 * k / stations - 1.0);
    const double squared = shape.at(x).squared;
    if (!(squared > 0.0))
      throw InvalidInput(message("arching cycloid: the outline is not wide enough at x = ", x * 1e3,
                                 " mm for a cross arch inside its rim; take another kind of arching"));
    const double b = std::sqrt(squared);
    const double part = long_arch(x, shape.half_length(), shape.channel() - shape.rim()).value;
    most = std::min(most, room * 2.0 * b / (pi * part));
  }
  return most;
}

bool has_cycloid(const Arching& arching)
{
  return std::holds_alternative<CycloidArching>(arching) || std::holds_alternative<SurfaceArching>(arching);
}

} // namespace

double greatest_cycloid_height(const Outline& outline)
{
  return greatest_height(InnerShape(outline));
}

ArchSurface::ArchSurface(const Outline& outline, const Arching& arching)
    : arching_(arching), length_(outline_length(outline)), width_(outline_width(outline)), shape_(outline)
{
  const double height = height_of(arching);
  if (!(std::isfinite(height) && height >= 0.0))
    throw InvalidInput(message("arching: height must be zero or positive; got ", height * 1e3, " mm"));
  if (!(has_cycloid(arching) && height > 0.0))
    return;
  const double most = greatest_height(shape_);
  if (height > most)
    throw InvalidInput(message("arching cycloid: height ", height * 1e3,
                               " mm is too great for this outline, the cross arch at the narrowest place would stand "
                               "upright; it must be below ",
                               most * 1e3, " mm"));
}

Height ArchSurface::at(const Eigen::Vector2d& point) const
{
  const double H = height_of(arching_);
  const double u = 2.0 * point.x() / length_;
  const double v = 2.0 * point.y() / width_;
  const double u_x = 2.0 / length_;
  const double v_y = 2.0 / width_;
  if (std::holds_alternative<BiparabolicArching>(arching_))
    return {H * (1.0 - u * u) * (1.0 - v * v), -2.0 * H * u * u_x * (1.0 - v * v), -2.0 * H * v * v_y * (1.0 - u * u)};
  if (std::holds_alternative<EllipticArching>(arching_))
    return {H * (1.0 - u * u - v * v), -2.0 * H * u * u_x, -2.0 * H * v * v_y};
  const Height cycloid = H > 0.0 ? cycloid_height(point, H, shape_) : Height{0.0, 0.0, 0.0};
  const auto* measured = std::get_if<SurfaceArching>(&arching_);
  if (measured == nullptr)
    return cycloid;
  const SurfaceValue rest = evaluate(measured->deviation, point);
  return {cycloid.z + rest.value, cycloid.z_x + rest.slope_x, cycloid.z_y + rest.slope_y};
}

} // namespace plate
