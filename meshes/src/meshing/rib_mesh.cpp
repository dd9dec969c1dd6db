// SPDX-License-Identifier: MPL-2.0
#include <plate/core/error.h>
#include <plate/meshes/body_mesh.h>

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <tuple>

namespace plate
{

namespace
{

using Eigen::Vector3d;

constexpr double corner =
    25.0 * std::numbers::pi / 180.0; // edges that turn by more are a corner, by 50 or more in a body [rad]

/// Derivative of a cubic edge by its parameter at one of its nodes, along the plane of the rim.
Vector3d tangent(const RibEdge& e, int node)
{
  constexpr double derivatives[4][4] = {
      {-5.5, 9.0, -4.5, 1.0}, {-1.0, -1.5, 3.0, -0.5}, {0.5, -3.0, 1.5, 1.0}, {-1.0, 4.5, -9.0, 5.5}};
  Vector3d d = Vector3d::Zero();
  for (int k = 0; k < 4; ++k)
    d += derivatives[node][k] * e[static_cast<std::size_t>(k)];
  d.z() = 0.0;
  return d.normalized();
}

/// A column of the ribs: what stands on one edge.
struct Column
{
  RibEdge lower, upper;
  std::array<Vector3d, 4> normal;
  bool corner_before = false; // at its first end
};

std::vector<Column> columns_of(const std::vector<RibEdge>& lower, const std::vector<RibEdge>& upper)
{
  std::vector<Column> columns;
  for (std::size_t i = 0; i < upper.size(); ++i)
  {
    Column column = {.lower = lower[i], .upper = upper[i], .normal = {}};
    for (int k = 0; k < 4; ++k)
      column.normal[static_cast<std::size_t>(k)] = tangent(upper[i], k).cross(Vector3d::UnitZ());
    columns.push_back(column);
  }
  for (std::size_t i = 0; i < columns.size(); ++i)
  {
    Column& after = columns[i];
    Column& before = columns[(i + columns.size() - 1) % columns.size()];
    after.corner_before = before.normal[3].dot(after.normal[0]) < std::cos(corner);
    if (!after.corner_before)
      before.normal[3] = after.normal[0] = (before.normal[3] + after.normal[0]).normalized();
  }
  return columns;
}

double length(const Column& column)
{
  return (column.upper[3] - column.upper[0]).norm();
}

/// How much of each column's length corner blocks back [m].
std::vector<double> backed_at_corners(const std::vector<Column>& columns, double reach)
{
  const std::size_t n = columns.size();
  std::vector<double> after(n, HUGE_VAL);  // distance of a column's first end from the corner before it [m]
  std::vector<double> before(n, HUGE_VAL); // of its second end from the corner that follows [m]
  double passed = HUGE_VAL;
  for (std::size_t k = 0; k < 2 * n; ++k) // twice round
  {
    const std::size_t i = k % n;
    passed = columns[i].corner_before ? 0.0 : passed;
    after[i] = std::min(after[i], passed);
    passed += length(columns[i]);
  }
  passed = HUGE_VAL;
  for (std::size_t k = 2 * n; k-- > 0;)
  {
    const std::size_t i = k % n;
    passed = columns[(i + 1) % n].corner_before ? 0.0 : passed;
    before[i] = std::min(before[i], passed);
    passed += length(columns[i]);
  }
  std::vector<double> backed;
  for (std::size_t i = 0; i < n; ++i)
    backed.push_back(std::min(length(columns[i]), std::max(0.0, reach - after[i]) + std::max(0.0, reach - before[i])));
  return backed;
}

/// How much of each column's length blocks at both ends of the body back [m].
std::vector<double> backed_at_ends(const std::vector<Column>& columns, double width)
{
  std::vector<double> backed;
  for (const Column& c : columns)
  {
    const Vector3d outward = c.normal[1] + c.normal[2];
    const double low = std::min(c.upper[0].y(), c.upper[3].y());
    const double high = std::max(c.upper[0].y(), c.upper[3].y());
    const double within = std::min(high, 0.5 * width) - std::max(low, -0.5 * width);
    const bool at_end = std::abs(outward.x()) > std::abs(outward.y());
    backed.push_back(at_end && within > 0.0 ? length(c) * within / (high - low) : 0.0);
  }
  return backed;
}

/// Columns that a block backs for more than half of their length.
std::vector<bool> mostly_backed(const std::vector<Column>& columns, const std::vector<double>& backed)
{
  std::vector<bool> out;
  for (std::size_t i = 0; i < columns.size(); ++i)
    out.push_back(backed[i] > 0.5 * length(columns[i]));
  return out;
}

/// Length that blocks are to back over that of the columns that stand for it.
double backing_share(const std::vector<Column>& columns, const std::vector<double>& backed,
                     const std::vector<bool>& is_backed)
{
  double designed = 0.0;
  double meshed = 0.0;
  for (std::size_t i = 0; i < columns.size(); ++i)
  {
    designed += backed[i];
    meshed += is_backed[i] ? length(columns[i]) : 0.0;
  }
  return meshed > 0.0 ? designed / meshed : 1.0;
}

double mean_height(const std::vector<Column>& columns)
{
  double height = 0.0;
  for (const Column& c : columns)
    height += (c.upper[0] - c.lower[0]).norm() / static_cast<double>(columns.size());
  return height;
}

/// Heights of the mesh lines as shares of the rib's height, and which rows are linings.
struct Rows
{
  std::vector<double> at;
  std::vector<bool> lining;
};

Rows rows_of(double height, const RibMeasures& measures, int count)
{
  const double lining = measures.lining / height;
  if (lining >= 0.5)
    throw InvalidInput(
        message("body: linings ", measures.lining * 1e3, " mm high leave nothing of ribs ", height * 1e3, " mm high"));
  const double plain = 1.0 - 2.0 * lining;
  Rows rows = {.at = {0.0}, .lining = {}};
  const auto add = [&](double to, bool is_lining)
  {
    rows.at.push_back(to);
    rows.lining.push_back(is_lining);
  };
  if (lining > 0.0)
    add(lining, true);
  for (int k = 1; k <= count; ++k)
    add(lining + plain * k / count, false);
  if (lining > 0.0)
    add(1.0, true);
  return rows;
}

/// Builds one piece; nodes are known by column, third along it and third of a row.
class PieceBuilder
{
public:
  PieceBuilder(const std::vector<Column>& columns, const Rows& rows) : columns_(columns), rows_(rows) {}

  void add_cell(std::size_t column, std::size_t row)
  {
    const int b = 3 * static_cast<int>(row);
    add_triangle(column, {0, b}, {3, b}, {3, b + 3});
    add_triangle(column, {0, b}, {3, b + 3}, {0, b + 3});
  }

  ShellMesh mesh;

private:
  using Place = std::array<int, 2>; // thirds along the column, thirds of rows

  int node(std::size_t column, int along, int up)
  {
    // The last nodes of a column are the first of the next unless a corner parts them.
    const std::size_t next = (column + 1) % columns_.size();
    if (along == 3 && !columns_[next].corner_before)
      return node(next, 0, up);
    const auto [entry, is_new] = index_.try_emplace({column, along, up}, static_cast<int>(mesh.nodes.size()));
    if (is_new)
    {
      const auto k = static_cast<std::size_t>(along);
      const auto row = static_cast<std::size_t>(up / 3);
      double share = rows_.at[row];
      if (up % 3 != 0)
        share += (rows_.at[row + 1] - rows_.at[row]) * (up % 3) / 3.0;
      const Column& c = columns_[column];
      const bool at_top = row + 1 == rows_.at.size();
      mesh.nodes.push_back(at_top ? c.upper[k] : (1.0 - share) * c.lower[k] + share * c.upper[k]);
      mesh.normals.push_back(c.normal[k]);
      mesh.thickness.push_back(1.0);
    }
    return entry->second;
  }

  void add_triangle(std::size_t column, Place p, Place q, Place r)
  {
    const auto between = [&](Place a, Place b, int step)
    { return node(column, a[0] + (b[0] - a[0]) / 3 * step, a[1] + (b[1] - a[1]) / 3 * step); };
    const auto at = [&](Place a) { return node(column, a[0], a[1]); };
    mesh.triangles.push_back({at(p), at(q), at(r), between(p, q, 1), between(p, q, 2), between(q, r, 1),
                              between(q, r, 2), between(r, p, 1), between(r, p, 2),
                              node(column, (p[0] + q[0] + r[0]) / 3, (p[1] + q[1] + r[1]) / 3)});
  }

  const std::vector<Column>& columns_;
  const Rows& rows_;
  std::map<std::tuple<std::size_t, int, int>, int> index_;
};

void check_edges(const std::vector<RibEdge>& lower, const std::vector<RibEdge>& upper)
{
  if (lower.size() != upper.size() || upper.empty())
    throw InvalidInput(
        message("body: ribs need as many edges below as above; got ", lower.size(), " and ", upper.size()));
}

} // namespace

RibLayout rib_layout(const std::vector<RibEdge>& lower, const std::vector<RibEdge>& upper, const RibMeasures& measures)
{
  check_edges(lower, upper);
  const std::vector<Column> columns = columns_of(lower, upper);
  const double plain = mean_height(columns) - 2.0 * measures.lining;
  return {.end_blocks = mostly_backed(columns, backed_at_ends(columns, measures.end_block)),
          .corner_blocks = mostly_backed(columns, backed_at_corners(columns, measures.corner_block)),
          .plain_rows = std::max(1, static_cast<int>(std::ceil(plain / (2.0 * measures.size))))};
}

std::vector<RibPiece> rib_meshes(const std::vector<RibEdge>& lower, const std::vector<RibEdge>& upper,
                                 const RibMeasures& measures, const RibLayout& layout)
{
  check_edges(lower, upper);
  if (layout.end_blocks.size() != upper.size() || layout.corner_blocks.size() != upper.size())
    throw InvalidInput(message("body: a layout of ", layout.end_blocks.size(), " edges does not fit ribs of ",
                               upper.size(), "; take that of the same ribs"));
  const std::vector<Column> columns = columns_of(lower, upper);
  const Rows rows = rows_of(mean_height(columns), measures, layout.plain_rows);
  const auto band_of = [&](std::size_t i, std::size_t row)
  {
    if (layout.end_blocks[i])
      return RibBand::end_block;
    if (layout.corner_blocks[i])
      return RibBand::corner_block;
    return rows.lining[row] ? RibBand::lining : RibBand::plain;
  };
  const auto share_of = [&](RibBand band)
  {
    if (band == RibBand::end_block)
      return backing_share(columns, backed_at_ends(columns, measures.end_block), layout.end_blocks);
    if (band == RibBand::corner_block)
      return backing_share(columns, backed_at_corners(columns, measures.corner_block), layout.corner_blocks);
    return 1.0;
  };
  std::vector<RibPiece> pieces;
  for (const RibBand band : {RibBand::plain, RibBand::lining, RibBand::end_block, RibBand::corner_block})
  {
    PieceBuilder builder(columns, rows);
    for (std::size_t i = 0; i < columns.size(); ++i)
      for (std::size_t row = 0; row < rows.lining.size(); ++row)
        if (band_of(i, row) == band)
          builder.add_cell(i, row);
    if (!builder.mesh.triangles.empty())
      pieces.push_back({.band = band, .mesh = std::move(builder.mesh), .backing_share = share_of(band)});
  }
  return pieces;
}

} // namespace plate
