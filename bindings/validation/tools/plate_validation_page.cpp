// SPDX-License-Identifier: MPL-2.0
// Writes the page of the validation into a file.
#include <plate/validation/validation_page.h>

#include <exception>
#include <fstream>
#include <iostream>

int main(int argc, char** argv)
{
  using namespace plate::validation;
  if (argc != 2)
  {
    std::cerr << "usage: plate_validation_page FILE\n";
    return 2;
  }
  try
  {
    std::vector<CaseResult> results;
    for (const ReferenceCase& reference : reference_cases())
      results.push_back(run_case(reference));
    std::ofstream out(argv[1], std::ios::binary);
    out << validation_page(results) << std::flush;
    if (!out)
      std::cerr << argv[1] << ": cannot be written\n";
    return out ? 0 : 2;
  }
  catch (const std::exception& error)
  {
    std::cerr << error.what() << '\n';
    return 2;
  }
}
