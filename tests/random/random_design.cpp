// SPDX-License-Identifier: MPL-2.0
#include "random_design.h"

#include <cmath>
#include <initializer_list>
#include <numbers>
#include <random>
#include <sstream>

namespace plate::test
{
namespace
{

/// Numbers and choices from a seed; std::mt19937_64 is the same everywhere, the distributions of the library are not.
class Dice
{
public:
  explicit Dice(std::uint64_t seed) : engine_(seed) { engine_.discard(16); }

  /// Evenly in [0, 1).
  double share() { return static_cast<double>(engine_() >> 11U) * 0x1p-53; }

  bool chance(double probability) { return share() < probability; }

  /// A measure from its usual range; one time in fifty up to a tenth of the range beyond it.
  double measure(double low, double high)
  {
    const double beyond = 0.1 * (high - low);
    if (chance(0.02))
      return chance(0.5) ? low - beyond * share() : high + beyond * share();
    return low + (high - low) * share();
  }

  /// A measure over several powers of ten.
  double magnitude(double low, double high) { return low * std::pow(high / low, share()); }

  const char* one_of(std::initializer_list<const char*> words)
  {
    return words.begin()[static_cast<std::size_t>(share() * static_cast<double>(words.size()))];
  }

private:
  std::mt19937_64 engine_;
};

/// Writes one design, table by table.
class Author
{
public:
  explicit Author(std::uint64_t seed) : dice_(seed) {}

  RandomDesign write(std::uint64_t seed)
  {
    write_outline();
    write_arching();
    write_layup();
    write_holes();
    if (dice_.chance(0.4))
      write_bar();
    if (dice_.chance(0.2))
      out_ << "[[mass]]\nat = [" << dice_.measure(-0.3, 0.3) * length_ << ", " << dice_.measure(-0.3, 0.3) * width_
           << "]\ngrams = " << dice_.measure(1.0, 20.0) << "\n";
    out_ << "[mesh]\nsize = " << std::min(length_, 2.0 * width_) / dice_.measure(6.0, 20.0) << "\n";
    return {.seed = seed, .text = out_.str(), .area = known_area_ ? std::optional(area_) : std::nullopt};
  }

private:
  void write_outline()
  {
    const std::string kind = dice_.one_of({"bouts", "bouts", "rectangle", "ellipse"});
    length_ = dice_.chance(0.8) ? dice_.measure(300.0, 800.0) : dice_.magnitude(11.0, 2900.0);
    out_ << "[outline]\nkind = \"" << kind << "\"\nlength = " << length_ << "\n";
    if (kind == "bouts")
    {
      const double lower = dice_.measure(0.48, 0.72) * length_;
      const double upper = dice_.measure(0.38, 0.64) * length_;
      width_ = std::max(lower, upper);
      out_ << "lower_bout = " << lower << "\nupper_bout = " << upper
           << "\ncentre_bout = " << upper * 0.5 + dice_.measure(0.0, 1.0) * (0.8 * std::min(lower, upper) - 0.5 * upper)
           << "\n";
      return;
    }
    width_ = dice_.measure(0.2, 1.2) * length_;
    out_ << "width = " << width_ << "\n";
    area_ = length_ * width_ * (kind == "ellipse" ? std::numbers::pi / 4.0 : 1.0);
    known_area_ = true;
  }

  void write_arching()
  {
    const std::string kind = dice_.one_of({"flat", "cycloid", "biparabolic", "elliptic"});
    out_ << "[arching]\nkind = \"" << kind << "\"\n";
    if (kind != "flat")
      out_ << "height = " << dice_.measure(0.0, 0.05) * length_ << "\n";
  }

  void write_layup()
  {
    const std::string way = dice_.one_of({"solid", "solid", "code", "plies"});
    if (way == "solid")
      return write_solid();
    out_ << "[layup]\n";
    if (way == "code")
      out_ << "code = \"" << dice_.one_of({"[0/90]s", "[0/60/-60]2s", "[±45/0]", "[0/90/~0]s", "[30]"})
           << "\"\nply = { material = \"" << dice_.one_of({"carbon_ud", "flax_ud"})
           << "\", thickness = " << dice_.measure(0.05, 0.4) << " }\n";
    else
    {
      out_ << "plies = [\n";
      for (int i = 0; i < 1 + static_cast<int>(dice_.share() * 6.0); ++i)
        out_ << "{ material = \"" << dice_.one_of({"carbon_ud", "flax_ud", "balsa", "spruce", "maple"})
             << "\", thickness = " << dice_.measure(0.05, 2.0) << ", angle = " << dice_.measure(-360.0, 360.0)
             << " },\n";
      out_ << "]\n";
    }
    out_ << "scale = " << dice_.measure(0.5, 2.0) << "\n";
  }

  void write_solid()
  {
    const bool own = dice_.chance(0.2);
    out_ << "[layup]\nsolid = \"" << (own ? "own" : dice_.one_of({"spruce", "maple"}))
         << "\"\nangle = " << dice_.measure(-90.0, 90.0) << "\ngrain = \""
         << (own ? "follows" : dice_.one_of({"carved", "follows"})) << "\"\n";
    if (own)
      out_ << "[material.own]\nE1 = " << dice_.magnitude(0.1, 200.0) << "\nE2 = " << dice_.magnitude(0.1, 20.0)
           << "\nG12 = " << dice_.magnitude(0.05, 10.0) << "\nnu12 = " << dice_.measure(0.0, 0.45)
           << "\ndensity = " << dice_.magnitude(50.0, 8000.0) << "\n";
    // Thin and thick about what an instrument of this length has.
    const double usual = 0.007 * length_;
    const auto thickness = [&] { return usual * dice_.measure(0.3, 2.5); };
    if (dice_.chance(0.7))
      out_ << "[thickness]\nvalue = " << thickness() << "\n";
    else
      out_ << "[thickness]\nkind = \"graduated\"\ncentre = " << thickness() << "\nbouts = " << thickness()
           << "\nchannel = " << thickness() << "\nedge = " << thickness() << "\n";
  }

  void write_holes()
  {
    const int count = static_cast<int>(dice_.share() * 3.0);
    for (int i = 0; i < count; ++i)
      dice_.chance(0.5) ? write_f_hole() : write_slot();
  }

  void write_f_hole()
  {
    known_area_ = false;
    out_ << "[[soundhole]]\nkind = \"f\"\n";
    const double hole = dice_.measure(0.15, 0.24) * length_;
    if (dice_.chance(0.6))
      out_ << "length = " << hole << "\n";
    if (dice_.chance(0.3))
      out_ << "where = [" << dice_.measure(-0.15, 0.1) * length_ << ", " << dice_.measure(0.2, 0.4) * width_ << "]\n";
    if (dice_.chance(0.3))
      out_ << "upper_eye = " << dice_.measure(0.06, 0.11) * hole << "\n";
    if (dice_.chance(0.3))
      out_ << "lower_eye = " << dice_.measure(0.08, 0.15) * hole << "\n";
    if (dice_.chance(0.3))
      out_ << "stem = " << dice_.measure(0.04, 0.12) * hole << "\n";
    if (dice_.chance(0.5))
      out_ << "tilt = " << dice_.measure(10.0, 50.0) << "\n";
  }

  void write_slot()
  {
    const double length = dice_.magnitude(0.02, 0.25) * length_;
    const double width = length * dice_.magnitude(0.02, 0.5);
    const bool mirror = dice_.chance(0.7);
    area_ -= (mirror ? 2.0 : 1.0) * ((length - width) * width + std::numbers::pi / 4.0 * width * width);
    out_ << "[[soundhole]]\nkind = \"slot\"\ncentre = [" << dice_.measure(-0.3, 0.3) * length_ << ", "
         << dice_.measure(0.1, 0.3) * width_ << "]\nlength = " << length << "\nwidth = " << width
         << "\nangle = " << dice_.measure(-180.0, 180.0) << "\nmirror = " << (mirror ? "true" : "false") << "\n";
  }

  void write_bar()
  {
    out_ << "[bar]\nmaterial = \"spruce\"\nlength = " << dice_.measure(0.3, 0.85) * length_
         << "\nwidth = " << dice_.measure(0.005, 0.03) * length_ << "\nheight = " << dice_.measure(0.02, 0.05) * length_
         << "\nend_height = " << dice_.measure(0.005, 0.015) * length_
         << "\noffset = " << dice_.measure(0.02, 0.15) * width_ << "\nangle = " << dice_.measure(-5.0, 5.0)
         << "\nprofile = \"" << dice_.one_of({"straight", "rounded"}) << "\"\n";
  }

  Dice dice_;
  std::ostringstream out_;
  double length_ = 0.0; // [mm]
  double width_ = 0.0;  // [mm]
  double area_ = 0.0;   // [mm^2]
  bool known_area_ = false;
};

} // namespace

RandomDesign draw_design(std::uint64_t seed)
{
  return Author(seed).write(seed);
}

} // namespace plate::test
