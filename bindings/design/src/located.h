// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "table_reader.h"

#include <plate/design/design_error.h>

#include <string_view>

namespace plate
{

/// Runs a step and puts the place of one of the table's keys, or of the table itself if the name is empty, in front of
/// what it finds wrong. Errors that have a place already pass.
template <class Step>
auto located(const TableReader& table, std::string_view name, const Step& step)
{
  try
  {
    return step();
  }
  catch (const DesignError&)
  {
    throw;
  }
  catch (const InvalidInput& error)
  {
    if (name.empty())
      table.fail_here(error.what());
    table.fail(name, error.what());
  }
}

template <class Step>
auto located(const TableReader& table, const Step& step)
{
  return located(table, {}, step);
}

} // namespace plate
