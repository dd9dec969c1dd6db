// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/side_by_side_picture.h>

#include <Eigen/Core>

#include <filesystem>
#include <string>
#include <vector>

namespace plate
{

/// How alike the modes of two plates are.
struct MacPicture
{
  std::string rows = {};                       ///< what the rows are, e.g. the title of a design
  std::string columns = {};                    ///< what the columns are
  std::vector<std::string> row_labels = {};    ///< e.g. "5 · 272.3 Hz"
  std::vector<std::string> column_labels = {}; ///< as row_labels
  Eigen::MatrixXd values = {};                 ///< modal assurance criterion, (rows, columns), 0...1 [-]
  std::vector<ModePair> pairs = {};            ///< row and column of fields to be framed
};

/// A field for each two modes, coloured by the modal assurance criterion, with its value from 0.1 on; pairs are framed.
///
/// Format, errors and repeatability as in picture.h; InvalidInput also for no values, for values outside 0...1, for
/// labels that do not fit in number, and for a pair that is not there.
void write_mac_picture(const std::filesystem::path& path, const MacPicture& picture);

} // namespace plate
