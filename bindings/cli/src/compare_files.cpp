// SPDX-License-Identifier: MPL-2.0
#include "compare_files.h"

#include "compare_report.h"
#include "design_pictures.h"
#include "layup_pictures.h"
#include "text_table.h"

#include <plate/core/error.h>
#include <plate/meshes/mac_picture.h>
#include <plate/meshes/polar_picture.h>
#include <plate/meshes/side_by_side_picture.h>

#include <future>
#include <optional>

namespace plate
{
namespace
{

/// "5 · 272.3 Hz", "M5 · 272.3 Hz"
std::string mode_label(int number, const std::string& name, double frequency_hz)
{
  return message(name.empty() ? std::to_string(number) : name, " \u00b7 ", fixed(frequency_hz, 1), " Hz");
}

std::vector<ModePair> mode_pairs(const ComparedDesign& design)
{
  std::vector<ModePair> pairs;
  for (const ComparedPair& pair : design.pairs)
    pairs.push_back({.first = pair.reference, .second = pair.mode});
  return pairs;
}

MacPicture mac_picture(const CompareOutcome& outcome, const ComparedDesign& design)
{
  MacPicture picture{.rows = outcome.title,
                     .columns = design.plate.modes.design.title,
                     .row_labels = {},
                     .column_labels = {},
                     .values = design.assurance,
                     .pairs = mode_pairs(design)};
  for (const ReferenceMode& mode : outcome.reference)
    picture.row_labels.push_back(mode_label(mode.number, mode.name, mode.frequency_hz));
  const ModesResult& modes = design.plate.modes;
  for (std::size_t i = 0; i < modes.names.size(); ++i)
    picture.column_labels.push_back(
        mode_label(static_cast<int>(i + 1), modes.names[i], modes.modal.frequencies_hz[static_cast<Eigen::Index>(i)]));
  return picture;
}

/// What is drawn of one design in each format.
struct DesignPictures
{
  std::optional<MacPicture> likeness = {};
  std::optional<DesignModes> reference = {};
  std::optional<DesignModes> design = {};
  std::vector<ModePair> pairs = {};
  PolarPicture polar = {};
};

DesignPictures pictures_of(const CompareOutcome& outcome, const ComparedDesign& design)
{
  DesignPictures pictures{.pairs = mode_pairs(design)};
  if (design.assurance.size() > 0)
    pictures.likeness = mac_picture(outcome, design);
  std::vector<LayupCurve> layups;
  if (outcome.reference_plate)
  {
    pictures.reference.emplace(design_modes(outcome.reference_plate->modes));
    pictures.design.emplace(design_modes(design.plate.modes));
    layups.push_back({.label = "reference: " + outcome.title, .strips = outcome.reference_plate->layup.polar});
  }
  layups.push_back({.label = design.plate.modes.design.title, .strips = design.plate.layup.polar});
  pictures.polar = polar_picture("Stiffness over direction", layups);
  return pictures;
}

void write_pictures(const OutputFolder& folder, const DesignPictures& pictures, const std::string& ending)
{
  if (pictures.likeness)
    write_mac_picture(folder.file("mac" + ending), *pictures.likeness);
  if (pictures.reference && !pictures.pairs.empty())
    write_side_by_side(folder.file("side_by_side" + ending), *pictures.reference, *pictures.design, pictures.pairs);
  write_polar_picture(folder.file("polar" + ending), pictures.polar);
}

} // namespace

void write_compare_files(const OutputFolder& folder, const CompareOutcome& outcome, bool timing)
{
  folder.write("compare.json", compare_json(outcome, timing));
  folder.write("compare.csv", compare_csv(outcome));
  for (std::size_t i = 0; i < outcome.designs.size(); ++i)
  {
    const DesignPictures pictures = pictures_of(outcome, outcome.designs[i]);
    const std::string number = outcome.designs.size() > 1 ? message("_", i + 1) : "";
    // The two formats share nothing but the data they read.
    std::future<void> svg = std::async(std::launch::async, [&] { write_pictures(folder, pictures, number + ".svg"); });
    write_pictures(folder, pictures, number + ".png");
    svg.get();
  }
}

} // namespace plate
