// SPDX-License-Identifier: MPL-2.0
#include "commands.h"

#include "design_schema.h"
#include "interrupt.h"
#include "output_folder.h"
#include "written_file.h"

#include <nlohmann/json.hpp>

#include <cstddef>
#include <iostream>

namespace plate
{
namespace
{

const std::string& family_of(const StartRequest& request)
{
  return family_names()[static_cast<std::size_t>(request.family)];
}

const std::string& make_of(const StartRequest& request)
{
  return make_names()[static_cast<std::size_t>(request.make)];
}

/// Writes into the folder and returns the path of the design.
std::string write_into_folder(const StartRequest& request, const std::string& design)
{
  const std::string name = message(family_of(request), "_", make_of(request), "_top.toml");
  std::string path = (std::filesystem::path(request.out) / name).string();
  if (!request.force)
    check_not_there(path);
  const DeferredInterrupt deferred; // the files appear together or not at all
  OutputFolder folder({.path = request.out});
  folder.write(name, design);
  folder.write("design.schema.json", design_schema());
  folder.publish();
  return path;
}

/// Writes what is to be written and returns the path of the design, empty for none.
std::string write_design(const StartRequest& request, const std::string& design)
{
  if (!request.out.empty())
    return write_into_folder(request, design);
  if (!request.file.empty())
    write_file(request.file, design, request.force);
  return request.file;
}

} // namespace

int run_command(const StartRequest& request)
{
  const std::string design = starter_design(request.family, request.make);
  const std::string path = write_design(request, design);
  if (request.json)
    std::cout << nlohmann::ordered_json(
                     {{"family", family_of(request)}, {"make", make_of(request)}, {"design", design}})
                     .dump(2)
              << '\n';
  else if (path.empty())
    std::cout << design;
  else
    std::cout << "wrote " << path << "; next: plate modes " << path << '\n';
  std::cout << std::flush;
  return exit_done;
}

} // namespace plate
