// SPDX-License-Identifier: MPL-2.0
#include "select_cases.h"

#include "command_line.h"

#include <plate/design/keys.h>

#include <algorithm>
#include <cctype>

namespace plate
{
namespace
{

std::string lower_case(std::string_view text)
{
  std::string out;
  for (const char c : text)
    out += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return out;
}

} // namespace

bool occurs_in(std::string_view text, std::string_view pattern)
{
  const std::string where = lower_case(text);
  const std::string what = lower_case(pattern);
  std::size_t from = 0;
  for (std::size_t begin = 0; begin <= what.size();)
  {
    const std::size_t end = std::min(what.find('*', begin), what.size());
    const std::string piece = what.substr(begin, end - begin);
    const std::size_t found = where.find(piece, from); // the first of each piece leaves the most room for the rest
    if (found == std::string::npos)
      return false;
    from = found + piece.size();
    begin = end + 1;
  }
  return true;
}

std::vector<const validation::ReferenceCase*> select_cases(const std::string& pattern)
{
  std::vector<const validation::ReferenceCase*> selected;
  std::vector<std::string> names;
  for (const validation::ReferenceCase& entry : validation::reference_cases())
  {
    names.push_back(entry.name);
    if (occurs_in(entry.name, pattern) || occurs_in(entry.topic, pattern) || occurs_in(entry.source, pattern))
      selected.push_back(&entry);
  }
  if (selected.empty())
    throw UsageError(message("--only ", pattern, ": no case has that in its name, topic or source; nearest name: ",
                             nearest_word(pattern, names), "; plate validate --list names all"));
  return selected;
}

} // namespace plate
