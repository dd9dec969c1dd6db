// SPDX-License-Identifier: MPL-2.0
#include <plate/design/body_document.h>

#include "named_file.h"

#include <plate/core/error.h>
#include <plate/design/body_design.h>
#include <plate/design/design_error.h>
#include <plate/design/load_design.h>

#include <system_error>
#include <utility>

namespace plate
{

namespace
{

/// A body may lie in a folder of its own below that of its plates.
std::filesystem::path plate_file(const std::string& name, const FileAccess& access)
{
  std::error_code error;
  const std::filesystem::path folder = std::filesystem::canonical(access.folder, error);
  if (error)
    return resolve(name, access); // which says what is wrong with the folder
  return resolve((folder.filename() / name).string(),
                 {.folder = folder.parent_path(), .allow_outside = access.allow_outside});
}

DesignDocument plate_document(const DesignDocument& body, std::string_view key, const FileAccess& access)
{
  const std::string name = body.text(key);
  try
  {
    const std::filesystem::path path = plate_file(name, access);
    return DesignDocument::from_file(path, {.folder = path.parent_path(), .allow_outside = access.allow_outside});
  }
  catch (const InvalidInput& error)
  {
    if (dynamic_cast<const DesignError*>(&error) != nullptr)
      throw; // of the plate's file itself, which it names
    throw DesignError(message(body.place(key), ": ", error.what()));
  }
}

} // namespace

BodyDocument::BodyDocument(DesignDocument body, DesignDocument top, DesignDocument back)
    : body_(std::move(body)), top_(std::move(top)), back_(std::move(back))
{
}

BodyDocument BodyDocument::from_file(const std::filesystem::path& path, FileAccess access)
{
  return from_text(text_of(path), path.string(), with_folder(std::move(access), path));
}

BodyDocument BodyDocument::from_text(std::string_view text, std::string name, FileAccess access)
{
  DesignDocument body = DesignDocument::from_text(text, std::move(name), access);
  if (!body.is_body())
    throw DesignError(message(body.place("body"), ": missing; the table [body] names the design files of top and back, "
                                                  "and this is no file of a body"));
  DesignDocument top = plate_document(body, "body.top", access);
  DesignDocument back = plate_document(body, "body.back", access);
  return {std::move(body), std::move(top), std::move(back)};
}

DesignDocument BodyDocument::*BodyDocument::document_of(std::string_view& key)
{
  for (const auto& [prefix, document] :
       {std::pair{std::string_view("top."), &BodyDocument::top_}, {"back.", &BodyDocument::back_}})
    if (key.starts_with(prefix))
    {
      key.remove_prefix(prefix.size());
      return document;
    }
  return &BodyDocument::body_;
}

void BodyDocument::set(std::string_view key, std::string_view value)
{
  const auto document = document_of(key);
  (this->*document).set(key, value);
}

void BodyDocument::set_number(std::string_view key, double value)
{
  const auto document = document_of(key);
  (this->*document).set_number(key, value);
}

double BodyDocument::number(std::string_view key) const
{
  const auto document = document_of(key);
  return (this->*document).number(key);
}

std::string BodyDocument::unit(std::string_view key) const
{
  const auto document = document_of(key);
  return (this->*document).unit(key);
}

std::vector<std::string> BodyDocument::numeric_keys() const
{
  std::vector<std::string> keys = body_.numeric_keys();
  for (const auto& [prefix, document] : {std::pair{"top.", &BodyDocument::top_}, {"back.", &BodyDocument::back_}})
    for (const std::string& key : (this->*document).numeric_keys())
      keys.push_back(prefix + key);
  return keys;
}

std::string BodyDocument::place(std::string_view key) const
{
  const auto document = document_of(key);
  return (this->*document).place(key);
}

BodyDesign BodyDocument::design() const
{
  return body_.body(top_.design(), back_.design());
}

BodyLoadDesign BodyDocument::load() const
{
  return body_.body_load(top_.design());
}

} // namespace plate
