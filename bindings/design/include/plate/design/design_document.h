// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/design/file_access.h>
#include <plate/laminates/laminate.h>

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace plate
{

struct BodyDesign;
struct BodyLoadDesign;
struct Design;
struct LayupDesign;
struct LoadDesign;
struct Node;
class PointFiles;

/// A material with the thickness of its sheet, where the file states it.
struct SheetMaterial
{
  Material material;
  std::optional<double> sheet_thickness; ///< [m]
};

/// A parsed design file whose keys can still be read and changed, in the units of the file.
///
/// Copies are independent; files of points are read once for all of them. Dotted keys count list entries from 1:
/// "layup.plies.2.angle", "soundhole.1.where.2". All functions throw DesignError, the file's name and line in front, if
/// a key or value is wrong.
class DesignDocument
{
public:
  /// @throws IoError if the file cannot be read
  [[nodiscard]] static DesignDocument from_file(const std::filesystem::path& path, FileAccess access = {});

  /// @param name    stands for the file in messages
  /// @param access  a design that names files needs their folder
  [[nodiscard]] static DesignDocument from_text(std::string_view text, std::string name, FileAccess access = {});

  /// Sets a key from text as after --set: a TOML value or a bare word.
  void set(std::string_view key, std::string_view value);

  /// Sets a numeric key, in the unit of the key.
  void set_number(std::string_view key, double value);

  /// Value of a numeric key in its unit: as given, else its default.
  /// @throws DesignError if the key is not numeric, or not given and without a default that is a number
  [[nodiscard]] double number(std::string_view key) const;

  /// Numeric keys that the file (or set()) gives, each number of a list of numbers by itself, in the order of the file.
  [[nodiscard]] std::vector<std::string> numeric_keys() const;

  /// Unit of a numeric key as shown, e.g. "mm"; empty for pure numbers.
  [[nodiscard]] std::string unit(std::string_view key) const;

  /// Value of a text key that must be given.
  [[nodiscard]] std::string text(std::string_view key) const;

  /// Where a key stands and what it holds, for the head of a message: "top.toml:14: mesh.size = 0.05"; of a key that is
  /// not given, the file and the key.
  [[nodiscard]] std::string place(std::string_view key) const;

  /// Whether this is the file of a body: it has a table [body].
  [[nodiscard]] bool is_body() const;

  /// Puts a laminate in place of the layup, ply by ply, with all that goes with the old one.
  ///
  /// @param laminate  of materials of this design
  void set_layup(const Laminate& laminate);

  /// Puts laminates in place of the plies of all patches, in their order; one without plies takes its patch away.
  ///
  /// @param laminates  of materials of this design, one for each patch
  void set_patches(const std::vector<Laminate>& laminates);

  /// The design as a file: keys and values, no comments.
  [[nodiscard]] std::string text() const;

  /// A material of the file or a built-in one, in the climate of the file.
  /// @throws InvalidInput naming the nearest if there is none of that name
  [[nodiscard]] SheetMaterial material(std::string_view name) const;

  /// The whole design, checked, in SI.
  [[nodiscard]] Design design() const;

  /// The layup alone; the file needs no more than [layup] and, for solid plates, [thickness].
  [[nodiscard]] LayupDesign layup() const;

  /// What the plate has to carry.
  [[nodiscard]] LoadDesign load() const;

  /// The body that a body's file describes, between the plates of the files that it names (see BodyDocument).
  [[nodiscard]] BodyDesign body(const Design& top, const Design& back) const;

  /// What that body has to carry.
  [[nodiscard]] BodyLoadDesign body_load(const Design& top) const;

private:
  DesignDocument(std::shared_ptr<const Node> root, std::string name, std::shared_ptr<PointFiles> files);

  std::shared_ptr<const Node> root_; ///< never changed in place: copies share it
  std::string name_;
  std::shared_ptr<PointFiles> files_; ///< only remembers what is in the files
};

} // namespace plate
