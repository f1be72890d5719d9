// SPDX-License-Identifier: MIT
// baywork's own methods, in the same terms as the foreign ones.
#pragma once

#include "method.hpp"

namespace bench {

/// Calls use.operator()<M>() for each of baywork's own methods M (see Method).
template <class Use>
void for_each_own_method(Use&&) {}

}  // namespace bench
