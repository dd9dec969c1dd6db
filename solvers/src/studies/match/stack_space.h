// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/solvers/studies/match.h>

#include <Eigen/Core>

#include <cstdint>
#include <functional>
#include <random>
#include <vector>

namespace plate::match
{

/// A stack as numbers of its layers.
struct Stack
{
  std::vector<int> layers;    ///< numbers of StackSpace::choices(); a symmetric stack: from the inside to the middle
  int core = -1;              ///< number of a core in the middle, -1 for none
  bool single_middle = false; ///< symmetric: the last layer is not repeated

  bool operator==(const Stack&) const = default;
};

struct StackHash
{
  std::size_t operator()(const Stack& stack) const;
};

/// A layer with what an estimate needs of it.
struct LayerChoice
{
  Ply ply;
  Eigen::Matrix3d Q;     ///< plane-stress stiffness in the axes of the laminate [Pa]
  Eigen::Vector2d shear; ///< G13, G23 there [Pa]
};

/// The stacks that supplies allow.
class StackSpace
{
public:
  /// @throws InvalidInput if there are no sheets, no angles, or cores asked for that are not there
  explicit StackSpace(const StackSupplies& supplies);

  [[nodiscard]] const std::vector<LayerChoice>& choices() const { return choices_; }

  /// Number of stacks, those that are not balanced among them, as a double: it may be astronomic.
  [[nodiscard]] double size() const;

  /// Every stack that is allowed, in a fixed order. Only for spaces of moderate size.
  void for_each(const std::function<void(const Stack&)>& visit) const;

  /// A stack drawn at random; it may be one that is not allowed.
  [[nodiscard]] Stack random(std::mt19937_64& random) const;

  /// Stacks one change of a layer, of the core or of the length away, allowed ones only.
  [[nodiscard]] std::vector<Stack> neighbours(const Stack& stack) const;

  [[nodiscard]] bool allowed(const Stack& stack) const;

  /// Layers from inside to outside, the core among them.
  [[nodiscard]] std::vector<const LayerChoice*> layers(const Stack& stack) const;
  [[nodiscard]] Laminate laminate(const Stack& stack) const;

private:
  [[nodiscard]] std::size_t most_layers() const;
  [[nodiscard]] bool possible(const Stack& stack) const;
  void visit_layers(Stack& stack, std::size_t length, const std::function<void(const Stack&)>& visit) const;

  StackSupplies supplies_;
  std::vector<LayerChoice> choices_;
  std::vector<LayerChoice> cores_;
};

} // namespace plate::match
