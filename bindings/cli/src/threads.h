// SPDX-License-Identifier: MPL-2.0
#pragma once

namespace plate
{

/// Sets the number of threads of the dense kernels below the factorisation (BLAS and OpenMP, as far as they are there).
void set_num_threads(int count);

} // namespace plate
