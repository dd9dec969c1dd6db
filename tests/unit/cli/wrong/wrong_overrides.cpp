// SPDX-License-Identifier: MPL-2.0
#include "wrong_files.h"

namespace plate::test
{
namespace
{

WrongFile set(const std::string& name, const std::string& override, std::vector<std::string> says)
{
  says.insert(says.begin(), "--set");
  return {name, solid_plate(), std::move(says), {"--set", override}};
}

} // namespace

std::vector<WrongFile> wrong_overrides()
{
  return {
      set("no equals sign", "arching.height", {"KEY=VALUE"}),
      set("no key", "=3", {"KEY=VALUE"}),
      set("unknown key", "arching.hieght=3", {"arching.hieght", "nearest: arching.height"}),
      set("no value", "outline.length=", {"outline.length = \"\"", "must be a number in mm"}),
      set("a word for a number", "outline.length=long", {"outline.length = \"long\"", "must be a number in mm"}),
      set("two values", "outline.length=3 4", {"outline.length = \"3 4\"", "must be a number in mm"}),
      set("NaN", "outline.length=nan", {"outline.length = nan"}),
      set("out of range", "outline.length=1e9", {"outline.length = 1e+09", "at most 3000"}),
      set("a table", "outline={}", {"outline", "is a table"}),
      set("a table for a number", "outline.length={a=1}", {"outline.length = a table", "must be a number"}),
      set("a further line", "outline.length=350\nwidth=3", {"outline.length", "must be a number in mm"}),
      set("an entry that is not there", "soundhole.1.kind=f", {"soundhole.1.kind", "no entry 1"}),
      set("an entry by a huge number", "soundhole.99999999999999999999.kind=f",
          {"soundhole.99999999999999999999.kind", "no entry"}),
      set("an entry of a number", "outline.length.1=3", {"outline.length.1", "unknown key"}),
      set("a material that is none", "layup.solid=oak", {"layup.solid = \"oak\"", "no material"}),
      set("a material by half", "material.oak.E1=3", {"material.oak", "missing"}),
      set("dots only", "....=3", {"unknown key"}),
      set("a path of 50 000 dots", "a" + std::string(50000, '.') + "=3", {"unknown key"}),
      set("an escape sequence", "layup.solid=\x1b[31m", {"layup.solid = \" [31m\"", "without control characters"}),
      set("bytes that are no UTF-8", "title=\xff\xfe", {"title = \"?\?\"", "text in quotes"}),
  };
}

} // namespace plate::test
