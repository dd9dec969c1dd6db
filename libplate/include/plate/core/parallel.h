// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <cstddef>
#include <future>
#include <vector>

namespace plate
{

/// Calls work(from, to) on as many ranges that make up 0...size as there are threads, at the same time.
template <class Work>
void in_parallel(std::size_t size, int num_threads, const Work& work)
{
  const auto parts = static_cast<std::size_t>(num_threads);
  const auto start = [&](std::size_t part) { return size * part / parts; };
  std::vector<std::future<void>> others;
  for (std::size_t part = 1; part < parts; ++part)
    others.push_back(std::async(std::launch::async, work, start(part), start(part + 1)));
  work(start(0), start(1));
  for (std::future<void>& other : others)
    other.get();
}

} // namespace plate
