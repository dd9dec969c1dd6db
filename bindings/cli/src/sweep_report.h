// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "output_folder.h"

#include <plate/solvers/studies/sweep.h>

#include <string>
#include <vector>

namespace plate
{

/// A sweep with what its report needs beside the modes.
struct SweepOutcome
{
  std::string title;
  std::vector<std::string> keys;
  std::vector<std::string> units;          ///< of the keys; empty for pure numbers
  std::vector<std::vector<double>> points; ///< values of the keys at each point asked for [units]
  std::size_t row = 0;                     ///< points per row of the grid
  SweepResult result;
  bool in_air = false; ///< with the mass of the air around the plate
  int num_remeshed = 0;
  double seconds = 0.0; ///< for the whole sweep [s]
};

/// The sweep as a table for the terminal.
[[nodiscard]] std::string sweep_text(const SweepOutcome& sweep, bool timing);
/// The sweep as JSON; a frequency is null where a mode was lost.
[[nodiscard]] std::string sweep_json(const SweepOutcome& sweep, bool timing);
/// The sweep as CSV, one line for each point.
[[nodiscard]] std::string sweep_csv(const SweepOutcome& sweep);

/// Writes sweep.csv, sweep.json and the picture of frequency against the key; with two keys one picture for each value
/// of the first.
void write_sweep_files(const OutputFolder& folder, const SweepOutcome& sweep, bool timing);

} // namespace plate
