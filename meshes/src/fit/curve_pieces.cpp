// SPDX-License-Identifier: MPL-2.0
#include "curve_pieces.h"

#include "../gauss.h"

#include <cmath>

namespace plate
{

namespace
{

constexpr int most_halvings = 7;
constexpr int checks_per_piece = 12;
constexpr int least_pieces = 4; // of a curve without corners

// Cuts a run into pieces by halving until each follows its splines.
class RunCutter
{
public:
  RunCutter(const SplineCurve& curve, const SplineRun& run, double tolerance)
      : curve_(curve), run_(run), tolerance_(tolerance)
  {
  }

  void cut(double from, double to, int halvings, std::vector<CurvePiece>& pieces) const
  {
    const double reach = length_between(from, to);
    const CurvePiece piece = smooth_piece(end_at(from, reach), end_at(to, reach));
    if (halvings == 0 || follows(piece, from, to))
    {
      pieces.push_back(piece);
      return;
    }
    const double middle = 0.5 * (from + to);
    cut(from, middle, halvings - 1, pieces);
    cut(middle, to, halvings - 1, pieces);
  }

private:
  [[nodiscard]] CurveEnd end_at(double u, double reach) const
  {
    // The end of a closed curve is its beginning to the last bit.
    const CurvePoint p = evaluate(curve_, run_, curve_.closed && u >= end_of(run_) ? 0.0 : u);
    return {.position = p.position, .direction = p.tangent(), .curvature = p.curvature(), .reach = reach};
  }

  [[nodiscard]] double length_between(double from, double to) const
  {
    double sum = 0.0;
    for (const auto& [x, w] : gauss_points_16)
      sum += w * (to - from) * evaluate(curve_, run_, from + x * (to - from)).first.norm();
    return sum;
  }

  [[nodiscard]] bool follows(const CurvePiece& piece, double from, double to) const
  {
    for (int k = 1; k < checks_per_piece; ++k)
    {
      const double t = static_cast<double>(k) / checks_per_piece;
      const Eigen::Vector2d p = evaluate(piece, t).position;
      const double u = nearest_parameter(curve_, run_, p, from + t * (to - from));
      if (!((evaluate(curve_, run_, u).position - p).norm() < tolerance_))
        return false;
    }
    return true;
  }

  const SplineCurve& curve_;
  const SplineRun& run_;
  double tolerance_;
};

} // namespace

CurveLoop pieces_of(const SplineCurve& curve, double tolerance)
{
  CurveLoop loop;
  for (const SplineRun& run : curve.runs)
  {
    if (run.basis.degree() == 1)
    {
      loop.pieces.push_back(line(evaluate(curve, run, 0.0).position, evaluate(curve, run, end_of(run)).position));
      continue;
    }
    const RunCutter cutter(curve, run, tolerance);
    const int parts = curve.closed ? least_pieces : 1;
    for (int k = 0; k < parts; ++k)
      cutter.cut(end_of(run) * k / parts, end_of(run) * (k + 1) / parts, most_halvings, loop.pieces);
  }
  return loop;
}

} // namespace plate
