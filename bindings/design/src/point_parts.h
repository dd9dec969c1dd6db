// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "point_file.h"
#include "table_reader.h"

#include <plate/design/design.h>
#include <plate/design/file_access.h>
#include <plate/meshes/arch_fit.h>
#include <plate/meshes/curve_fit.h>
#include <plate/meshes/direction_fit.h>
#include <plate/meshes/thickness_fit.h>

#include <map>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace plate
{

/// The files of points of a design, each read once and fitted once; shared by the copies of a document, whose other
/// keys may differ.
class PointFiles
{
public:
  explicit PointFiles(FileAccess access) : access_(std::move(access)) {}

  /// A fit with the lines of the file that its points come from.
  template <class Fit>
  struct Fitted
  {
    Fit fit;
    std::vector<int> lines;
  };

  /// Closed curve through a file with the columns x, y and perhaps corner.
  ///
  /// @param name  as written in the design
  /// @throws InvalidInput if there is no such file or it gives no curve; DesignError if a line of it is wrong
  [[nodiscard]] Fitted<CurveFit> curve(const std::string& name);

  /// Arch through a file with the columns x, y, z. @throws as curve()
  [[nodiscard]] Fitted<ArchFit> arching(const std::string& name, const Outline& outline);

  /// Thickness through a file with the columns x, y, t. @throws as curve()
  [[nodiscard]] Fitted<ThicknessFit> thickness(const std::string& name, const Outline& outline);

  /// Thickness that half of the points of a file with the columns x, y, t exceed [m]. @throws as curve()
  [[nodiscard]] double median_thickness(const std::string& name);

  /// Directions through a file with the columns x, y, angle (degrees). @throws as curve()
  [[nodiscard]] Fitted<DirectionFit> directions(const std::string& name, const Outline& outline);

private:
  /// A fit for the outline asked for last.
  template <class Fit>
  struct OverOutline
  {
    PointTable table;
    std::vector<Eigen::Vector2d> region; ///< [m]
    std::optional<Fitted<Fit>> fitted;
  };
  template <class Fit>
  OverOutline<Fit>& read_once(std::map<std::string, OverOutline<Fit>>& known, const std::string& name,
                              std::string_view column) const;
  template <class Fit, class MakeFit>
  Fitted<Fit> fitted_over(std::map<std::string, OverOutline<Fit>>& known, const std::string& name,
                          std::string_view column, const Outline& outline, const MakeFit& make_fit);

  [[nodiscard]] PointTable read(const std::string& name, std::span<const PointColumn> columns) const;

  FileAccess access_;
  std::mutex mutex_;
  std::map<std::string, Fitted<CurveFit>> curves_;
  std::map<std::string, OverOutline<ArchFit>> archings_;
  std::map<std::string, OverOutline<ThicknessFit>> thicknesses_;
  std::map<std::string, OverOutline<DirectionFit>> directions_;
};

/// Reads the parts of one design that are given by points, and keeps how well they fit.
class PointParts
{
public:
  explicit PointParts(PointFiles& files) : files_(files) {}

  /// The closed curve of the file named in a table. @throws DesignError at its key `file`
  [[nodiscard]] CurveLoop curve(const TableReader& table, const std::string& part);

  /// The arch over an outline of the file named in a table. @throws DesignError at its key `file`
  [[nodiscard]] SurfaceArching arching(const TableReader& table, const Outline& outline);

  /// The thickness over an outline of the file named in a table. @throws DesignError at its key `file`
  [[nodiscard]] SurfaceThickness thickness(const TableReader& table, const Outline& outline);

  /// The directions over an outline of the file named by a ply. @throws DesignError at its key `angle_file`
  [[nodiscard]] DirectionField directions(const TableReader& ply, const std::string& part, const Outline& outline);

  [[nodiscard]] const std::vector<PartFit>& fits() const { return fits_; }

private:
  void add(const std::string& file, const std::string& part, const FitReport& report, const std::vector<int>& lines,
           FitQuantity quantity = FitQuantity::distance);

  PointFiles& files_;
  std::vector<PartFit> fits_;
};

} // namespace plate
