// SPDX-License-Identifier: MPL-2.0
#include <plate/post/body_mode_names.h>

#include <algorithm>
#include <functional>
#include <optional>

namespace plate
{
namespace
{

constexpr double most_a0_hz = 350.0;
constexpr double least_shear_share = 0.1;
constexpr double least_longitudinal_share = 0.1;
constexpr double most_over_a0 = 3.0; // of B1+; other modes of the plates displace much volume too

/// A score for each mode; 0 does not qualify.
using Score = std::function<double(const BodyModeTraits&)>;

class Names
{
public:
  explicit Names(const std::vector<BodyModeTraits>& modes) : modes_(modes), named_(modes.size(), false) {}

  /// Gives a name to the best mode that has none.
  std::optional<std::size_t> give(const std::string& name, const Score& score)
  {
    const std::vector<Scored> best = ranking(score);
    if (best.empty())
      return {};
    add(name, best.front(), best.size() > 1 ? best[1].score : 0.0);
    return best.front().mode;
  }

  /// Gives two names to the two best, in order of frequency.
  void give_two(const std::string& lower, const std::string& upper, const Score& score)
  {
    const std::vector<Scored> best = ranking(score);
    if (best.size() < 2)
      return;
    const bool first_is_lower = best[0].mode < best[1].mode;
    // Both are judged by what comes after the two.
    const double next = best.size() > 2 ? best[2].score : 0.0;
    add(first_is_lower ? lower : upper, best[0], next);
    add(first_is_lower ? upper : lower, best[1], next);
  }

  [[nodiscard]] std::vector<BodyModeName> result() const
  {
    std::vector<BodyModeName> sorted = names_;
    std::sort(sorted.begin(), sorted.end(),
              [](const BodyModeName& a, const BodyModeName& b) { return a.mode < b.mode; });
    return sorted;
  }

private:
  struct Scored
  {
    std::size_t mode;
    double score;
  };

  [[nodiscard]] std::vector<Scored> ranking(const Score& score) const
  {
    std::vector<Scored> out;
    for (std::size_t i = 0; i < modes_.size(); ++i)
      if (const double value = named_[i] ? 0.0 : score(modes_[i]); value > 0.0)
        out.push_back({i, value});
    std::stable_sort(out.begin(), out.end(), [](const Scored& a, const Scored& b) { return a.score > b.score; });
    return out;
  }

  void add(const std::string& name, const Scored& best, double next)
  {
    names_.push_back({.name = name, .mode = best.mode, .certainty = 1.0 - next / best.score});
    named_[best.mode] = true;
  }

  const std::vector<BodyModeTraits>& modes_;
  std::vector<bool> named_;
  std::vector<BodyModeName> names_;
};

double square(double value)
{
  return value * value;
}

} // namespace

bool is_body_mode_name(std::string_view name)
{
  return name == "A0" || name == "A1" || name == "CBR" || name == "B1-" || name == "B1+";
}

std::vector<BodyModeName> name_body_modes(const std::vector<BodyModeTraits>& modes, double first_air_hz)
{
  Names names(modes);
  const double below = std::min(most_a0_hz, first_air_hz);
  const std::optional<std::size_t> a0 = names.give(
      "A0", [&](const BodyModeTraits& m) { return m.frequency_hz < below ? m.air_share * square(m.outflow) : 0.0; });
  names.give("A1", [](const BodyModeTraits& m)
             { return m.longitudinal_share >= least_longitudinal_share ? m.longitudinal_share : 0.0; });
  names.give("CBR", [](const BodyModeTraits& m) { return m.shear_share >= least_shear_share ? m.shear_share : 0.0; });
  if (!a0)
    return names.result();
  const double a0_hz = modes[*a0].frequency_hz;
  names.give_two("B1-", "B1+",
                 [&](const BodyModeTraits& m)
                 {
                   const bool inside = m.frequency_hz > a0_hz && m.frequency_hz < most_over_a0 * a0_hz;
                   return inside ? square(m.wall_volume / m.frequency_hz) : 0.0;
                 });
  return names.result();
}

} // namespace plate
