// SPDX-License-Identifier: MPL-2.0
#include "demo_designs.h"
#include "run_json.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>

using nlohmann::json;
using namespace plate::test;

namespace
{

/// Modes of a design followed over layup.scale from 0.6 to 1.8 in steps of 0.05.
class Tracks
{
public:
  explicit Tracks(const std::string& file)
      : sweep_(run_json(
            {"sweep", file, "--key", "layup.scale", "--from", "0.6", "--to", "1.8", "--steps", "25", "--count", "16"}))
  {
  }

  /// The track of a mode at a scale.
  [[nodiscard]] std::size_t track_of(int mode, double scale) const
  {
    const json& tracks = sweep_.at("tracks");
    for (std::size_t t = 0; t < tracks.size(); ++t)
      if (tracks.at(t).at("mode").at(point(scale)) == mode)
        return t;
    return tracks.size();
  }

  /// Least distance of two tracks' frequencies on the way from 1 to a scale, of the frequency [-].
  [[nodiscard]] double least_distance(std::size_t a, std::size_t b, double scale) const
  {
    double least = 1.0;
    for (std::size_t i = std::min(point(1.0), point(scale)); i <= std::max(point(1.0), point(scale)); ++i)
    {
      const json& first = sweep_.at("tracks").at(a).at("frequency_hz").at(i);
      const json& second = sweep_.at("tracks").at(b).at("frequency_hz").at(i);
      if (first.is_number() && second.is_number())
        least = std::min(least, std::abs(first.get<double>() / second.get<double>() - 1.0));
    }
    return least;
  }

private:
  [[nodiscard]] static std::size_t point(double scale)
  {
    return static_cast<std::size_t>(std::lround((scale - 0.6) / 0.05));
  }

  json sweep_;
};

} // namespace

TEST_CASE("pairing over thickness 0.6 to 1.8 times agrees with modes followed in small steps")
{
  // A track followed in small steps is the truth, except where two come so near each other that they exchange their
  // shapes over a few steps: beyond, the one has the other's shape, and the pair is the exchange of both. A likeness
  // below 0.6 means, as in a sweep, that the shape is spread over several modes: none is the right one.
  constexpr double exchange = 0.03;
  constexpr double doubtful = 0.6;
  int crossings = 0;
  for (const std::string& name : demo_designs)
  {
    CAPTURE(name);
    const Tracks tracks(demo(name));
    for (const double scale : {0.6, 1.8})
    {
      CAPTURE(scale);
      const json result =
          run_json({"compare", demo(name), demo(name), "--set", "layup.scale=" + std::to_string(scale)});
      const json& design = result.at("designs").at(0);
      int clear = 0;
      for (const json& pair : design.at("pairs"))
      {
        const int mode = pair.at("mode");
        const int reference = pair.at("reference_mode");
        CAPTURE(reference);
        crossings += mode != reference ? 1 : 0;
        const bool is_clear = pair.at("group_mac").get<double>() > doubtful;
        if (reference <= 8)
          CHECK(is_clear);
        clear += is_clear ? 1 : 0;
        const std::size_t own = tracks.track_of(reference, 1.0);
        const std::size_t found = tracks.track_of(mode, scale);
        REQUIRE(own < 16);
        REQUIRE(found < 16);
        if (own != found && is_clear)
          CHECK(tracks.least_distance(own, found, scale) < exchange);
      }
      CHECK(clear >= 10);
    }
  }
  CHECK(crossings >= 4);
}
