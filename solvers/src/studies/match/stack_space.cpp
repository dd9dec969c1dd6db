// SPDX-License-Identifier: MPL-2.0
#include "stack_space.h"

#include <plate/core/error.h>
#include <plate/laminates/section.h>

#include <Eigen/LU>

#include <algorithm>
#include <cmath>

namespace plate::match
{

namespace
{

LayerChoice layer_choice(const SupplySheet& sheet, Angle angle)
{
  LayerChoice out{
      .ply = {.material = sheet.material, .thickness = sheet.thickness, .angle = angle}, .Q = {}, .shear = {}};
  const Eigen::Matrix<double, 5, 5> S =
      ply_compliance(sheet.material, angle, Grain::laid, Eigen::Matrix3d::Identity(), MaterialAxes());
  out.Q = S.topLeftCorner<3, 3>().inverse();
  out.shear = S.diagonal().tail<2>().cwiseInverse();
  return out;
}

/// Whether two layers of one sheet are the same in the plate: a cloth at 0 and 90 degrees, a ply at -90 and 90.
bool alike(const LayerChoice& a, const LayerChoice& b)
{
  constexpr double rounding = 1e-9;
  return a.ply.material.name == b.ply.material.name && a.ply.thickness == b.ply.thickness &&
         (a.Q - b.Q).norm() <= rounding * a.Q.norm() && (a.shear - b.shear).norm() <= rounding * a.shear.norm();
}

int below(std::mt19937_64& random, std::size_t count)
{
  return static_cast<int>(random() % count); // counts are small: what the remainder prefers is nothing
}

} // namespace

std::size_t StackHash::operator()(const Stack& stack) const
{
  std::uint64_t hash = static_cast<std::uint64_t>(stack.core + 1) * 2 + (stack.single_middle ? 1 : 0);
  for (const int layer : stack.layers)
    hash = (hash ^ static_cast<std::uint64_t>(layer + 1)) * 1099511628211ULL; // [Knuth1998] sec. 6.4
  return static_cast<std::size_t>(hash);
}

StackSpace::StackSpace(const StackSupplies& supplies) : supplies_(supplies)
{
  if (supplies.sheets.empty() || supplies.angles.empty() || supplies.max_plies < 1)
    throw InvalidInput(message("match: needs at least one sheet, one angle and one ply; got ", supplies.sheets.size(),
                               " sheets, ", supplies.angles.size(), " angles, at most ", supplies.max_plies, " plies"));
  if (supplies.core == CoreUse::required && supplies.cores.empty())
    throw InvalidInput("match: a core is required, but there is none among the supplies");
  for (const SupplySheet& sheet : supplies.sheets)
    for (const Angle angle : supplies.angles)
    {
      const LayerChoice choice = layer_choice(sheet, angle);
      if (std::none_of(choices_.begin(), choices_.end(), [&](const LayerChoice& c) { return alike(c, choice); }))
        choices_.push_back(choice);
    }
  if (supplies.core != CoreUse::none)
    for (const SupplySheet& core : supplies.cores)
      cores_.push_back(layer_choice(core, {}));
}

std::size_t StackSpace::most_layers() const
{
  const auto plies = static_cast<std::size_t>(supplies_.max_plies);
  return supplies_.symmetric ? (plies + 1) / 2 : plies;
}

/// Whether plies can be counted out so, balance apart.
bool StackSpace::possible(const Stack& stack) const
{
  const auto plies = static_cast<std::size_t>(supplies_.max_plies);
  const std::size_t count =
      supplies_.symmetric ? 2 * stack.layers.size() - (stack.single_middle ? 1 : 0) : stack.layers.size();
  if (stack.layers.empty() || count > plies)
    return false;
  if (stack.single_middle && (stack.core >= 0 || !supplies_.symmetric))
    return false;
  return stack.core >= 0 ? stack.core < static_cast<int>(cores_.size()) && (supplies_.symmetric || count > 1)
                         : supplies_.core != CoreUse::required;
}

bool StackSpace::allowed(const Stack& stack) const
{
  if (!possible(stack))
    return false;
  if (!supplies_.balanced)
    return true;
  Eigen::Matrix3d A = Eigen::Matrix3d::Zero();
  for (const LayerChoice* layer : layers(stack))
    A += layer->ply.thickness * layer->Q;
  constexpr double rounding = 1e-9;
  return std::max(std::abs(A(0, 2)), std::abs(A(1, 2))) <= rounding * A(0, 0);
}

double StackSpace::size() const
{
  double sum = 0.0;
  for (std::size_t length = 1; length <= most_layers(); ++length)
    for (int core = -1; core < static_cast<int>(cores_.size()); ++core)
      for (const bool single : {false, true})
        if (possible({.layers = std::vector<int>(length, 0), .core = core, .single_middle = single}))
          sum += std::pow(static_cast<double>(choices_.size()), static_cast<double>(length));
  return sum;
}

void StackSpace::visit_layers(Stack& stack, std::size_t length, const std::function<void(const Stack&)>& visit) const
{
  if (stack.layers.size() == length)
  {
    if (allowed(stack))
      visit(stack);
    return;
  }
  for (int choice = 0; choice < static_cast<int>(choices_.size()); ++choice)
  {
    stack.layers.push_back(choice);
    visit_layers(stack, length, visit);
    stack.layers.pop_back();
  }
}

void StackSpace::for_each(const std::function<void(const Stack&)>& visit) const
{
  for (std::size_t length = 1; length <= most_layers(); ++length)
    for (int core = -1; core < static_cast<int>(cores_.size()); ++core)
      for (const bool single : {false, true})
        if (possible({.layers = std::vector<int>(length, 0), .core = core, .single_middle = single}))
        {
          Stack stack{.layers = {}, .core = core, .single_middle = single};
          visit_layers(stack, length, visit);
        }
}

Stack StackSpace::random(std::mt19937_64& random) const
{
  Stack stack;
  const auto length = 1 + static_cast<std::size_t>(below(random, most_layers()));
  for (std::size_t i = 0; i < length; ++i)
    stack.layers.push_back(below(random, choices_.size()));
  stack.core = below(random, cores_.size() + 1) - 1;
  stack.single_middle = below(random, 2) == 1 && stack.core < 0 && supplies_.symmetric;
  return stack;
}

std::vector<Stack> StackSpace::neighbours(const Stack& stack) const
{
  std::vector<Stack> out;
  const auto offer = [&](const Stack& changed)
  {
    if (changed != stack && allowed(changed))
      out.push_back(changed);
  };
  const auto num_choices = static_cast<int>(choices_.size());
  for (std::size_t place = 0; place <= stack.layers.size(); ++place)
    for (int choice = 0; choice < num_choices; ++choice)
    {
      Stack longer = stack;
      longer.layers.insert(longer.layers.begin() + static_cast<std::ptrdiff_t>(place), choice);
      offer(longer);
      if (place == stack.layers.size())
        continue;
      Stack changed = stack;
      changed.layers[place] = choice;
      offer(changed);
    }
  for (std::size_t place = 0; place < stack.layers.size(); ++place)
  {
    Stack shorter = stack;
    shorter.layers.erase(shorter.layers.begin() + static_cast<std::ptrdiff_t>(place));
    offer(shorter);
    for (std::size_t other = place + 1; other < stack.layers.size(); ++other)
    {
      Stack swapped = stack;
      std::swap(swapped.layers[place], swapped.layers[other]);
      offer(swapped);
    }
  }
  for (int core = -1; core < static_cast<int>(cores_.size()); ++core)
    offer({.layers = stack.layers, .core = core, .single_middle = stack.single_middle && core < 0});
  if (stack.core < 0)
    offer({.layers = stack.layers, .core = -1, .single_middle = !stack.single_middle});
  return out;
}

std::vector<const LayerChoice*> StackSpace::layers(const Stack& stack) const
{
  std::vector<const LayerChoice*> out;
  for (const int layer : stack.layers)
    out.push_back(&choices_[static_cast<std::size_t>(layer)]);
  std::vector<const LayerChoice*> mirrored;
  if (supplies_.symmetric)
    mirrored.assign(out.rbegin() + (stack.single_middle ? 1 : 0), out.rend());
  const std::size_t middle = supplies_.symmetric ? out.size() : out.size() / 2;
  if (stack.core >= 0)
    out.insert(out.begin() + static_cast<std::ptrdiff_t>(middle), &cores_[static_cast<std::size_t>(stack.core)]);
  out.insert(out.end(), mirrored.begin(), mirrored.end());
  return out;
}

Laminate StackSpace::laminate(const Stack& stack) const
{
  Laminate laminate;
  for (const LayerChoice* layer : layers(stack))
    laminate.plies.push_back(layer->ply);
  return laminate;
}

} // namespace plate::match
