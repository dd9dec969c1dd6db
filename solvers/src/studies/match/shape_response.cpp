// SPDX-License-Identifier: MPL-2.0
#include "shape_response.h"

#include "least_value.h"

#include <plate/core/error.h>

#include <cmath>

namespace plate::match
{

namespace
{

constexpr int num_values = 7; // of each parameter, where shapes are spread over their ranges

/// Zero where a mode was not found: nothing is known of it then.
Eigen::VectorXd known(const Eigen::VectorXd& values)
{
  return values.array().isNaN().select(0.0, values);
}

} // namespace

ShapeResponse::ShapeResponse(const MatchShape& shape, const ModeTargets& targets) : shape_(shape), targets_(targets)
{
  const std::size_t count = shape.start.size();
  if (count == 0 || shape.plate == nullptr || shape.low.size() != count || shape.high.size() != count)
    throw InvalidInput(message("match: a free shape needs a plate and as many limits as start values; got ",
                               shape.low.size(), " and ", shape.high.size(), " limits for ", count, " values"));
  for (std::size_t k = 0; k < count; ++k)
    if (!(shape.low[k] < shape.high[k] && shape.low[k] <= shape.start[k] && shape.start[k] <= shape.high[k]))
      throw InvalidInput(message("match: parameter ", k + 1, " of the shape: limits ", shape.low[k], " and ",
                                 shape.high[k], " must be ascending with the start, ", shape.start[k],
                                 ", between them"));
}

Model ShapeResponse::model(const Laminate& laminate, const std::vector<double>& point) const
{
  return with_laminate(shape_.plate->build(point), laminate);
}

Eigen::VectorXd ShapeResponse::log_hz(const Laminate& laminate, const std::vector<double>& point)
{
  ++num_solved_;
  return targets_.solve(model(laminate, point), Losses::left_out).found.frequencies_hz.array().log();
}

void ShapeResponse::measure(const Laminate& laminate, const Eigen::VectorXd& at_start)
{
  const Eigen::VectorXd middle = at_start.array().log();
  correction_ = Eigen::VectorXd::Zero(at_start.size());
  slope_.clear();
  bend_.clear();
  for (std::size_t k = 0; k < shape_.start.size(); ++k)
  {
    // A parabola through zero at the start; at a limit of the range half the way to the other serves instead.
    const double width = shape_.high[k] - shape_.low[k];
    const auto step_to = [&](double value) { return value - shape_.start[k]; };
    const double below = step_to(shape_.low[k]) < -0.1 * width ? step_to(shape_.low[k]) : 0.5 * width;
    const double above = step_to(shape_.high[k]) > 0.1 * width ? step_to(shape_.high[k]) : -0.5 * width;
    const auto change = [&](double step)
    {
      std::vector<double> point = shape_.start;
      point[k] += step;
      return known(log_hz(laminate, point) - middle);
    };
    const Eigen::VectorXd a = change(below) / below;
    const Eigen::VectorXd b = change(above) / above;
    bend_.emplace_back((b - a) / (above - below));
    slope_.emplace_back(a - bend_.back() * below);
  }
}

void ShapeResponse::correct(const std::vector<double>& point, const Eigen::VectorXd& at_start,
                            const Eigen::VectorXd& there)
{
  correction_ += known((there.array() / at_start.array()).log().matrix() - shift(point));
}

Eigen::VectorXd ShapeResponse::shift(const std::vector<double>& point) const
{
  Eigen::VectorXd out = correction_;
  for (std::size_t k = 0; k < point.size(); ++k)
  {
    const double step = point[k] - shape_.start[k];
    out += step * (slope_[k] + step * bend_[k]);
  }
  return out;
}

Eigen::MatrixXd ShapeResponse::shifts() const
{
  std::vector<std::vector<double>> points = {shape_.start};
  for (std::size_t k = 0; k < shape_.start.size(); ++k)
  {
    std::vector<std::vector<double>> more;
    for (const std::vector<double>& point : points)
      for (int i = 0; i < num_values; ++i)
      {
        more.push_back(point);
        more.back()[k] = shape_.low[k] + (shape_.high[k] - shape_.low[k]) * i / (num_values - 1);
      }
    points = std::move(more);
  }
  Eigen::MatrixXd out(slope_.front().size(), static_cast<Eigen::Index>(points.size()));
  for (std::size_t i = 0; i < points.size(); ++i)
    out.col(static_cast<Eigen::Index>(i)) = shift(points[i]);
  return out;
}

std::vector<double> ShapeResponse::best(const Eigen::VectorXd& at_start) const
{
  const auto mismatch = [&](const std::vector<double>& point)
  { return targets_.mismatch_as_is((at_start.array().log() + shift(point).array()).exp().matrix()); };
  return least_value(mismatch, {.low = shape_.low, .high = shape_.high, .start = shape_.start});
}

} // namespace plate::match
