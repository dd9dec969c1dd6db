// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/design/design_document.h>

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace plate
{

struct BodyDesign;
struct BodyLoadDesign;

/// A body's file with the files of its plates, which can be read and changed together.
///
/// Keys that begin with "top." or "back." lead into the plates' files: "top.layup.scale". All functions throw
/// DesignError, the file's name and line in front, if a key or value is wrong.
class BodyDocument
{
public:
  /// @throws IoError if the file cannot be read
  [[nodiscard]] static BodyDocument from_file(const std::filesystem::path& path, FileAccess access = {});

  /// @param access  with the folder in which the plates' files lie
  [[nodiscard]] static BodyDocument from_text(std::string_view text, std::string name, FileAccess access);

  void set(std::string_view key, std::string_view value);     ///< as DesignDocument::set()
  void set_number(std::string_view key, double value);        ///< as DesignDocument::set_number()
  [[nodiscard]] double number(std::string_view key) const;    ///< as DesignDocument::number()
  [[nodiscard]] std::string unit(std::string_view key) const; ///< as DesignDocument::unit()

  /// Numeric keys that the files give, see DesignDocument: the body's own, then those of top and back.
  [[nodiscard]] std::vector<std::string> numeric_keys() const;

  [[nodiscard]] std::string place(std::string_view key) const; ///< as DesignDocument::place()

  /// The whole body, checked, in SI.
  [[nodiscard]] BodyDesign design() const;

  /// What the body has to carry beside its strings.
  [[nodiscard]] BodyLoadDesign load() const;

private:
  BodyDocument(DesignDocument body, DesignDocument top, DesignDocument back);
  /// The document that a key leads into; the key is shortened to what it is there.
  [[nodiscard]] static DesignDocument BodyDocument::*document_of(std::string_view& key);

  DesignDocument body_;
  DesignDocument top_;
  DesignDocument back_;
};

} // namespace plate
