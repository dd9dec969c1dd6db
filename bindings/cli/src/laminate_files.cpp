// SPDX-License-Identifier: MPL-2.0
#include "laminate_files.h"

#include "laminate_report.h"
#include "layup_pictures.h"

namespace plate
{

void write_laminate_files(const OutputFolder& folder, const LaminateResult& result)
{
  folder.write("laminate.json", laminate_json(result));
  folder.write("polar.csv", polar_csv(result));
  const PolarPicture picture = polar_picture(result.title, {{"strip cut in this direction", result.polar}});
  write_polar_picture(folder.file("polar.png"), picture);
  write_polar_picture(folder.file("polar.svg"), picture);
}

} // namespace plate
