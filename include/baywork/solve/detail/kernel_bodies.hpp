// SPDX-License-Identifier: MIT
// The kernels of one instruction set: included once per set, therefore without a guard.
// Set before: BAYWORK_KERNEL_SET (namespace), _LANES (2, 4, 8), _TARGET (attribute), _MADD(a, b, c) = a b + c on lanes;
// where there are registers enough also _REGISTER (what assembly calls them).

#ifdef BAYWORK_KERNEL_SET

#define BAYWORK_KERNEL_FUNCTION BAYWORK_KERNEL_TARGET inline
#define BAYWORK_KERNEL_HELPER BAYWORK_KERNEL_TARGET __attribute__((always_inline)) inline

#include <baywork/solve/detail/kernel_lanes.hpp>
#include <baywork/solve/detail/kernel_pivots.hpp>
#include <baywork/solve/detail/kernel_tiles.hpp>

#include <baywork/solve/detail/kernel_blocks.hpp>
#include <baywork/solve/detail/kernel_factor.hpp>
#include <baywork/solve/detail/kernel_inverse.hpp>
#include <baywork/solve/detail/kernel_packed.hpp>
#include <baywork/solve/detail/kernel_products.hpp>

#include <baywork/solve/detail/kernel_groups.hpp>
#include <baywork/solve/detail/kernel_halves.hpp>
#include <baywork/solve/detail/kernel_joints.hpp>

namespace baywork::detail::BAYWORK_KERNEL_SET {

inline constexpr Kernels all{&invert,
                             &eliminate,
                             &add_blocks,
                             &times_blocks,
                             &minus_blocks_transposed,
                             &packed_size,
                             &pack,
                             &apply,
                             &apply_in_place,
                             &apply_many,
                             &minus_blocks_times,
                             &minus_transposed_times,
                             &forward,
                             &backward,
                             &minus_times,
                             &minus_block_rows,
                             &join,
                             &through_joint,
                             &back_through_joint,
                             &to_halves,
                             &from_halves,
                             &to_halves_group,
                             &from_halves_group,
                             &apply_groups,
                             &times_groups,
                             &rows_groups,
                             &to_group,
                             &from_group};

}  // namespace baywork::detail::BAYWORK_KERNEL_SET

#undef BAYWORK_KERNEL_HELPER
#undef BAYWORK_KERNEL_FUNCTION
#undef BAYWORK_KERNEL_REGISTER
#undef BAYWORK_KERNEL_MADD
#undef BAYWORK_KERNEL_TARGET
#undef BAYWORK_KERNEL_LANES
#undef BAYWORK_KERNEL_SET

#endif
