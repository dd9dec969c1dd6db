// SPDX-License-Identifier: MPL-2.0
// Writes REFERENCE.md, design.schema.json and match.schema.json into a folder.
#include "design_schema.h"
#include "reference_page.h"
#include "written_file.h"

#include <exception>
#include <iostream>

int main(int argc, char** argv)
{
  if (argc != 2)
  {
    std::cerr << "usage: plate_reference FOLDER\n";
    return 2;
  }
  try
  {
    const std::filesystem::path folder = argv[1];
    plate::write_file(folder / "REFERENCE.md", plate::reference_page(), true);
    plate::write_file(folder / "design.schema.json", plate::design_schema(), true);
    plate::write_file(folder / "match.schema.json", plate::match_schema(), true);
    return 0;
  }
  catch (const std::exception& error)
  {
    std::cerr << error.what() << '\n';
    return 2;
  }
}
