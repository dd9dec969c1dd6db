// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/air/body_air.h>
#include <plate/assembly/body.h>

#include <span>

namespace plate
{

/// A body with its air at a point of a parameter space.
struct BodyPoint
{
  Body body;
  BodyAir air;
};

/// Parameters in, body out, as ParametricModel does it for plates.
class ParametricBody
{
public:
  virtual ~ParametricBody() = default;
  ParametricBody() = default;
  ParametricBody(const ParametricBody&) = delete;
  ParametricBody& operator=(const ParametricBody&) = delete;

  /// The body at a point: the same parts, triangles, joints and cavity mesh at every point, moved.
  ///
  /// @throws InvalidInput if there is no such body
  [[nodiscard]] virtual BodyPoint build(std::span<const double> parameters) = 0;
};

} // namespace plate
