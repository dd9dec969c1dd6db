// SPDX-License-Identifier: MPL-2.0
#include "open_design.h"

#include "output_folder.h"

namespace plate
{

namespace
{

template <class Document>
Document open(const CommonOptions& options)
{
  Document document = Document::from_file(options.file, {.folder = {}, .allow_outside = options.allow_outside});
  for (const auto& [key, value] : options.overrides)
    document.set(key, value);
  if (!options.out.empty())
    check_output_folder({.path = options.out});
  return document;
}

} // namespace

DesignDocument open_design(const CommonOptions& options)
{
  return open<DesignDocument>(options);
}

CommonOptions options_for(CommonOptions options, const std::string& file)
{
  options.file = file;
  options.overrides.clear();
  return options;
}

bool is_body_file(const CommonOptions& options)
{
  return DesignDocument::from_file(options.file, {.folder = {}, .allow_outside = options.allow_outside}).is_body();
}

BodyDocument open_body(const CommonOptions& options)
{
  return open<BodyDocument>(options);
}

} // namespace plate
