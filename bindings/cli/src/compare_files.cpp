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
#include <utility>

namespace plate
{
namespace
{

/// "5 · 272.3 Hz", "M5 · 272.3 Hz"
std::string mode_label(int number, const std::string& name, double frequency_hz)
{
  return message(name.empty() ? std::to_string(number) : name, " \u00b7 ", fixed(frequency_hz, 1), " Hz");
}

std::vector<ModePair> mode_pairs(const PairedModes& paired)
{
  std::vector<ModePair> pairs;
  for (const ComparedPair& pair : paired.pairs)
    pairs.push_back({.first = pair.reference, .second = pair.mode});
  return pairs;
}

std::vector<std::string> mode_labels(const std::vector<ComparedMode>& modes)
{
  std::vector<std::string> labels;
  for (const ComparedMode& mode : modes)
    labels.push_back(mode_label(mode.number, mode.name, mode.frequency_hz));
  return labels;
}

/// A plate or one of the plates of a body: pairs of modes beside each other, and the layups.
struct PlatePictures
{
  std::string name; ///< end of the files' names; empty for a plate
  std::optional<DesignModes> reference = {};
  std::optional<DesignModes> design = {};
  PolarPicture polar = {};
};

/// A plate with what is drawn of it.
struct DrawnPlate
{
  std::string name;
  std::string title;
  DesignModes modes;
  const std::vector<StripStiffness>& layup;
};

std::vector<DrawnPlate> drawn_plates(const Compared& design)
{
  std::vector<DrawnPlate> out;
  if (const ComparedPlate* plate = design.plate())
    out.push_back(
        {.name = "", .title = design.title, .modes = design_modes(plate->result), .layup = plate->layup.polar});
  if (const ComparedBody* body = design.body())
    for (const std::size_t part : {BodyModel::top, BodyModel::back})
    {
      const std::string name = part == BodyModel::top ? "top" : "back";
      out.push_back({.name = "_" + name,
                     .title = message(design.title, ", ", name),
                     .modes = body_plate_modes(body->result, part),
                     .layup = (part == BodyModel::top ? body->top : body->back).polar});
    }
  return out;
}

/// What is drawn of one design in each format.
struct DesignPictures
{
  std::optional<MacPicture> likeness = {};
  std::vector<ModePair> pairs = {};
  std::vector<PlatePictures> plates = {};
};

DesignPictures pictures_of(const CompareOutcome& outcome, const ComparedDesign& compared)
{
  DesignPictures pictures{.pairs = mode_pairs(compared.paired)};
  if (compared.paired.assurance.size() > 0)
    pictures.likeness = MacPicture{.rows = outcome.title,
                                   .columns = compared.design.title,
                                   .row_labels = mode_labels(outcome.reference),
                                   .column_labels = mode_labels(compared.design.modes),
                                   .values = compared.paired.assurance,
                                   .pairs = pictures.pairs};
  std::vector<DrawnPlate> reference;
  if (outcome.reference_design)
    reference = drawn_plates(*outcome.reference_design);
  std::vector<DrawnPlate> design = drawn_plates(compared.design);
  for (std::size_t i = 0; i < design.size(); ++i)
  {
    PlatePictures& plate = pictures.plates.emplace_back(PlatePictures{.name = design[i].name});
    std::vector<LayupCurve> layups;
    if (!reference.empty())
    {
      layups.push_back({.label = "reference: " + reference[i].title, .strips = reference[i].layup});
      plate.reference.emplace(std::move(reference[i].modes));
      plate.design.emplace(std::move(design[i].modes));
    }
    layups.push_back({.label = design[i].title, .strips = design[i].layup});
    plate.polar = polar_picture("Stiffness over direction", layups);
  }
  return pictures;
}

void write_pictures(const OutputFolder& folder, const DesignPictures& pictures, const std::string& ending)
{
  if (pictures.likeness)
    write_mac_picture(folder.file("mac" + ending), *pictures.likeness);
  for (const PlatePictures& plate : pictures.plates)
  {
    if (plate.reference && !pictures.pairs.empty())
      write_side_by_side(folder.file("side_by_side" + plate.name + ending), *plate.reference, *plate.design,
                         pictures.pairs);
    write_polar_picture(folder.file("polar" + plate.name + ending), plate.polar);
  }
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
