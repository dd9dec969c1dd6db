// SPDX-License-Identifier: MPL-2.0
#include "wrong_files.h"

namespace plate::test
{

std::vector<WrongFile> wrong_measured()
{
  return {
      {"nothing", "", {"list.csv: no measured modes"}},
      {"names of columns only", "mode,name,frequency_hz,loss_percent\n", {"list.csv: no measured modes"}},
      {"no names of columns", "1,M1,61.5,1.6\n", {":1:", "no column frequency_hz", "mode, name, frequency_hz"}},
      {"kHz by name", "mode,frequency_khz\n1,0.06\n", {":1:", "\"frequency_khz\"", "in Hz"}},
      {"kHz by size", "mode,frequency_hz\n1,0.06\n2,0.11\n", {":2:", "frequency_hz = 0.06", "from 1 to 20000 Hz"}},
      {"rad/s by name", "frequency_rad_s\n386\n", {":1:", "\"frequency_rad_s\"", "kHz and rad/s must be converted"}},
      {"loss as a fraction by name", "frequency_hz,loss_factor\n61,0.016\n", {":1:", "loss_percent, in %"}},
      {"a word for a number", "frequency_hz\nhigh\n", {":2:", "frequency_hz = \"high\"", "not a number"}},
      {"a decimal comma", "mode;frequency_hz\n1;61,5\n", {":2:", "\"61,5\"", "with a point"}},
      {"a negative frequency", "frequency_hz\n61\n-61\n", {":3:", "frequency_hz = -61"}},
      {"no frequency", "mode,frequency_hz\n1,\n", {":2:", "the frequency_hz is missing"}},
      {"two modes of one number", "mode,frequency_hz\n1,61\n1,90\n", {":3:", "mode 1 at 90 Hz follows mode 1"}},
      {"two modes of one name", "name,frequency_hz\nM1,61\nM1,90\n", {":3:", "is the name of two modes"}},
      {"a cell too many", "mode,frequency_hz\n1,61,2\n", {":2:", "3 cells; each line needs 2"}},
      {"bytes that are no UTF-8", "name,frequency_hz\nM\xff,61\n", {":2:", "must be UTF-8"}},
      {"NUL bytes", std::string(1000, '\0'), {":1: NUL byte"}},
      {"a long line", "frequency_hz\n" + std::string(100000, '9') + "\n", {":2:", "must be from 1 to 20000"}},
      {"two million bytes", std::string(2000000, 'x'), {"is longer than"}},
  };
}

} // namespace plate::test
