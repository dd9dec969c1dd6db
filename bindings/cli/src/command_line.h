// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/model.h>
#include <plate/core/error.h>
#include <plate/design/starter.h>

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace plate
{

/// The command line itself is wrong.
struct UsageError : InvalidInput
{
  using InvalidInput::InvalidInput;
};

/// Options that every command on design files takes.
struct CommonOptions
{
  std::string file;                                           ///< design file
  bool json = false;                                          ///< results as JSON on standard output
  std::string out;                                            ///< folder for files; empty for none
  std::vector<std::pair<std::string, std::string>> overrides; ///< KEY and VALUE of each --set
  bool allow_outside = false;                                 ///< files outside the design's folder may be read
  bool timing = false;                                        ///< adds seconds to the results
  int threads = 1;                                            ///< see set_num_threads()
};

/// Help or version, to be printed.
struct TextRequest
{
  std::string text;
};

struct ModesRequest
{
  CommonOptions common;
  int count = 12;             ///< elastic modes
  std::string beside;         ///< second design file to be shown beside the first; empty for none
  double accuracy = 0.0;      ///< greatest error bar wanted, percent of each frequency; 0: that of the given mesh
  int most_unknowns = 500000; ///< of the meshes tried for the accuracy
  std::string matrices;       ///< folder for stiffness and mass of the first design; empty for none
};

struct LaminateRequest
{
  CommonOptions common;
};

struct CompareRequest
{
  CommonOptions common;             ///< file: the reference, or the first design where modes are measured
  std::vector<std::string> designs; ///< files of all designs
  std::string measured;             ///< file of measured modes, the reference then; empty for none
  int count = 12;                   ///< modes of the reference
};

/// One key that a sweep changes.
struct SweptKey
{
  std::string key;
  double from; ///< in the unit of the key
  double to;   ///< in the unit of the key
  int steps;   ///< number of values, both ends included
};

struct SweepRequest
{
  CommonOptions common;
  std::vector<SweptKey> keys; ///< one or two
  int count = 12;             ///< elastic modes at each point
  bool full = false;          ///< each point is solved in full
};

struct SensitivityRequest
{
  CommonOptions common;
  std::vector<std::string> keys; ///< keys to differentiate by; empty for those of the file
  int count = 12;                ///< elastic modes
  std::vector<std::string> maps; ///< modes, by name or number, whose maps are drawn; empty for the named ones
  std::string leave;             ///< mode, by name or number, that is to stay; empty for none
};

struct LoadRequest
{
  CommonOptions common;
  std::string reference;          ///< design whose margins stand beside; empty for none
  std::optional<EdgeSupport> rim; ///< of a plate whose file leaves its edge free; hinged if not given
};

struct MatchRequest
{
  CommonOptions common;   ///< file: the match problem; overrides: of the start design
  std::uint64_t seed = 1; ///< of what is drawn at random
  double seconds = 0.0;   ///< after which the best so far are given; 0: no limit
};

struct BodyRequest
{
  CommonOptions common;
  std::string reference; ///< body to compare with; empty for none
  int count = 12;        ///< modes with the air
};

struct StartRequest
{
  InstrumentFamily family = InstrumentFamily::violin;
  PlateMake make = PlateMake::wood;
  std::string file;   ///< where to; empty for standard output or a folder
  std::string out;    ///< folder for the design and the schema; empty for none
  bool json = false;  ///< the design inside JSON on standard output
  bool force = false; ///< a file that is there is written over
};

struct ValidateRequest
{
  struct
  {
    int threads = CommonOptions().threads;
  } common;
  bool json = false;   ///< results as JSON on standard output
  bool list = false;   ///< names of the cases, nothing computed
  bool values = false; ///< a line for each value instead of the worst of each case
  std::string only;    ///< pattern of names, topics or sources; empty for all
};

/// What the user asked for.
using Request = std::variant<TextRequest, StartRequest, ModesRequest, LaminateRequest, CompareRequest, SweepRequest,
                             SensitivityRequest, LoadRequest, MatchRequest, BodyRequest, ValidateRequest>;

/// @throws UsageError naming what was not understood and the nearest that would be
[[nodiscard]] Request parse_command_line(int argc, const char* const* argv);

} // namespace plate
