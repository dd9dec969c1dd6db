// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/sparse_cholesky.h>

#include "permuted_lower.h"
#include "serial_region.h"
#include "supernodal_congruence.h"
#include "supernodal_solve.h"

#include <plate/core/error.h>

#include <cholmod.h>
#include <metis.h>

#include <algorithm>
#include <mutex>
#include <span>
#include <utility>
#include <vector>

namespace plate
{

namespace
{

using Groups = std::vector<std::vector<int>>;

/// Groups that hold unknowns, and the graph that the matrix draws between them.
struct GroupGraph
{
  Groups equations;         // of each group, ascending
  std::vector<idx_t> start; // compressed neighbour lists, without the group itself
  std::vector<idx_t> neighbour;
};

GroupGraph group_graph(const SparseMatrix& lower, const Groups& groups)
{
  GroupGraph graph;
  std::vector<int> group_of(static_cast<std::size_t>(lower.rows()));
  for (const auto& equations : groups)
  {
    if (equations.empty())
      continue;
    for (const int equation : equations)
      group_of[static_cast<std::size_t>(equation)] = static_cast<int>(graph.equations.size());
    graph.equations.push_back(equations);
  }

  std::vector<std::vector<idx_t>> neighbours(graph.equations.size());
  for (std::size_t group = 0; group < graph.equations.size(); ++group)
  {
    // One column speaks for the group: all its unknowns couple to the same groups.
    for (SparseMatrix::InnerIterator it(lower, graph.equations[group].front()); it; ++it)
    {
      const auto other = static_cast<std::size_t>(group_of[static_cast<std::size_t>(it.row())]);
      if (other == group)
        continue;
      neighbours[group].push_back(static_cast<idx_t>(other));
      neighbours[other].push_back(static_cast<idx_t>(group));
    }
  }
  graph.start = {0};
  for (auto& list : neighbours)
  {
    std::sort(list.begin(), list.end());
    list.erase(std::unique(list.begin(), list.end()), list.end());
    graph.neighbour.insert(graph.neighbour.end(), list.begin(), list.end());
    graph.start.push_back(static_cast<idx_t>(graph.neighbour.size()));
  }
  return graph;
}

/// Nested dissection of the graph of groups, spread out to the unknowns.
std::vector<int> elimination_order(const SparseMatrix& lower, const Groups& groups)
{
  GroupGraph graph = group_graph(lower, groups);
  auto num_groups = static_cast<idx_t>(graph.equations.size());
  std::vector<idx_t> order(graph.equations.size());
  std::vector<idx_t> position(graph.equations.size());
  idx_t options[METIS_NOPTIONS];
  METIS_SetDefaultOptions(options);
  options[METIS_OPTION_SEED] = 1; // same input, same order
  // METIS draws from the generator of the C library, one for the whole process: two at once would disturb each other.
  static std::mutex one_at_a_time;
  const std::lock_guard lock(one_at_a_time);
  if (METIS_NodeND(&num_groups, graph.start.data(), graph.neighbour.data(), nullptr, options, order.data(),
                   position.data()) != METIS_OK)
    throw NumericalFailure(message("ordering of ", num_groups, " groups of unknowns failed"));
  std::vector<int> permutation;
  permutation.reserve(static_cast<std::size_t>(lower.rows()));
  for (const idx_t group : order)
    for (const int equation : graph.equations[static_cast<std::size_t>(group)])
      permutation.push_back(equation);
  return permutation;
}

/// A lower triangle as CHOLMOD sees it; its interface is not const, it reads only.
cholmod_sparse cholmod_view(int* outer, int* inner, double* values, std::size_t rows)
{
  cholmod_sparse A = {};
  A.nrow = rows;
  A.ncol = rows;
  A.nzmax = static_cast<std::size_t>(outer[rows]);
  A.p = outer;
  A.i = inner;
  A.x = values;
  A.stype = -1;
  A.itype = CHOLMOD_INT;
  A.xtype = CHOLMOD_REAL;
  A.dtype = CHOLMOD_DOUBLE;
  A.packed = 1;
  return A;
}

cholmod_sparse cholmod_view(const SparseMatrix& lower)
{
  SparseMatrix& values = const_cast<SparseMatrix&>(lower);
  cholmod_sparse A = cholmod_view(values.outerIndexPtr(), values.innerIndexPtr(), values.valuePtr(),
                                  static_cast<std::size_t>(lower.rows()));
  A.sorted = 1;
  return A;
}

} // namespace

struct SparseCholesky::Implementation
{
  cholmod_common common = {};
  cholmod_factor* factor = nullptr;
  PermutedLower permuted;            // where the matrix's values go in the order of elimination
  cholmod_dense* solution = nullptr; // work space of cholmod_solve2, kept between solves
  cholmod_dense* work_y = nullptr;
  cholmod_dense* work_e = nullptr;
  std::vector<double> work; // of the solves with one vector

  Implementation()
  {
    cholmod_start(&common);
    common.supernodal = CHOLMOD_SUPERNODAL;
    common.final_ll = 1;
    common.nmethods = 1;
    common.method[0].ordering = CHOLMOD_GIVEN;
    common.postorder = 1;
    common.print = 0;
    common.quick_return_if_not_posdef = 1;
    // Fewer, larger supernodes: a third of the numeric time on shell matrices; more zeros between them would slow the
    // solves (measured, benchmarks/README.md).
    common.nrelax[0] = 8;
    common.nrelax[1] = 32;
    common.nrelax[2] = 96;
    common.zrelax[0] = 0.5;
    common.zrelax[1] = 0.15;
    common.zrelax[2] = 0.05;
  }
  ~Implementation()
  {
    cholmod_free_dense(&solution, &common);
    cholmod_free_dense(&work_y, &common);
    cholmod_free_dense(&work_e, &common);
    cholmod_free_factor(&factor, &common);
    cholmod_finish(&common);
  }
  Implementation(const Implementation&) = delete;
  Implementation& operator=(const Implementation&) = delete;

  /// Solves with half the factorisation in place, without permutation.
  ///
  /// @param half  CHOLMOD_L or CHOLMOD_Lt
  void solve_half(int half, Eigen::Ref<Eigen::MatrixXd> x)
  {
    if (x.cols() == 1)
    {
      const std::span<double> y(x.data(), factor->n);
      const SupernodeRange all = {.from = 0, .to = factor->nsuper};
      half == CHOLMOD_L ? supernodal_solve_lower(panels(), all, y, work)
                        : supernodal_solve_upper(panels(), all, y, work);
      return;
    }
    cholmod_dense right = {};
    right.nrow = static_cast<std::size_t>(x.rows());
    right.ncol = static_cast<std::size_t>(x.cols());
    right.d = static_cast<std::size_t>(x.outerStride());
    right.nzmax = right.d * right.ncol;
    right.x = x.data();
    right.xtype = CHOLMOD_REAL;
    right.dtype = CHOLMOD_DOUBLE;
    const SerialRegion serial;
    cholmod_solve2(half, factor, &right, nullptr, &solution, nullptr, &work_y, &work_e, &common);
    x = Eigen::Map<const Eigen::MatrixXd>(static_cast<const double*>(solution->x), x.rows(), x.cols());
  }

  [[nodiscard]] SupernodalFactor panels() const
  {
    const auto list = [](const void* p, std::size_t size)
    { return std::span<const int>(static_cast<const int*>(p), size); };
    return {.first_column = list(factor->super, factor->nsuper + 1),
            .first_row = list(factor->pi, factor->nsuper + 1),
            .first_value = list(factor->px, factor->nsuper + 1),
            .rows = list(factor->s, factor->ssize),
            .values = static_cast<const double*>(factor->x)};
  }

  /// The factorised matrix has its unknowns in this order.
  [[nodiscard]] Eigen::Map<const Eigen::VectorXi> order() const
  {
    return {static_cast<const int*>(factor->Perm), static_cast<Eigen::Index>(factor->n)};
  }

  /// Where the entries of a matrix go in that order.
  [[nodiscard]] PermutedLower places(const SparseMatrix& lower) const
  {
    return PermutedLower(lower, {order().data(), static_cast<std::size_t>(order().size())});
  }
};

SparseCholesky::SparseCholesky(const SparseMatrix& lower, const Groups& groups)
    : implementation_(std::make_unique<Implementation>())
{
  cholmod_sparse A = cholmod_view(lower);
  std::vector<int> permutation = elimination_order(lower, groups);
  implementation_->factor = cholmod_analyze_p(&A, permutation.data(), nullptr, 0, &implementation_->common);
  if (implementation_->factor == nullptr)
    throw NumericalFailure(
        message("analysis of a matrix of ", lower.rows(), " unknowns failed; is there enough memory?"));
  implementation_->permuted = implementation_->places(lower);
  factorise(lower);
}

SparseCholesky::~SparseCholesky() = default;
SparseCholesky::SparseCholesky(SparseCholesky&&) noexcept = default;
SparseCholesky& SparseCholesky::operator=(SparseCholesky&&) noexcept = default;

void SparseCholesky::factorise(const SparseMatrix& lower)
{
  PermutedLower& permuted = implementation_->permuted;
  std::vector<double> values = permuted.values(lower);
  cholmod_sparse A = cholmod_view(permuted.outer().data(), permuted.inner().data(), values.data(),
                                  static_cast<std::size_t>(lower.rows()));
  cholmod_common& common = implementation_->common;
  {
    const SerialRegion serial;
    double no_multiple_of_one[2] = {0.0, 0.0};
    cholmod_super_numeric(&A, nullptr, no_multiple_of_one, implementation_->factor, &common);
  }
  if (common.status != CHOLMOD_OK)
    throw NumericalFailure(
        message("factorisation of a matrix of ", lower.rows(), " unknowns failed: ",
                common.status == CHOLMOD_NOT_POSDEF ? "it is not positive definite" : "not enough memory"));
}

void SparseCholesky::solve(const Eigen::Ref<const Eigen::MatrixXd>& b, Eigen::Ref<Eigen::MatrixXd> x) const
{
  Eigen::MatrixXd y(b.rows(), b.cols());
  solve_lower(b, y);
  implementation_->solve_half(CHOLMOD_Lt, y);
  x(implementation_->order(), Eigen::all) = y;
}

void SparseCholesky::solve_lower(const Eigen::Ref<const Eigen::MatrixXd>& b, Eigen::Ref<Eigen::MatrixXd> x) const
{
  x = b(implementation_->order(), Eigen::all);
  implementation_->solve_half(CHOLMOD_L, x);
}

void SparseCholesky::solve_upper(const Eigen::Ref<const Eigen::MatrixXd>& b, Eigen::Ref<Eigen::MatrixXd> x) const
{
  Eigen::MatrixXd y = b;
  implementation_->solve_half(CHOLMOD_Lt, y);
  x(implementation_->order(), Eigen::all) = y;
}

std::function<void(std::span<const double>, std::span<double>)>
SparseCholesky::congruence(const SparseMatrix& lower) const
{
  PermutedLower places = implementation_->places(lower);
  const std::span<const double> values(lower.valuePtr(), static_cast<std::size_t>(lower.nonZeros()));
  SupernodalCongruence product(
      implementation_->panels(),
      {.outer = places.outer(), .inner = places.inner(), .place = places.source(), .values = values});
  if (!product.fits())
    return {};
  return [product = std::move(product)](std::span<const double> y, std::span<double> out) mutable
  { product.apply(y, out); };
}

} // namespace plate
