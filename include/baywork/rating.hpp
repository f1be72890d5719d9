// SPDX-License-Identifier: MIT
// rating: how much may it carry, and what governs? Allowable loads, load tables over spans, interaction curves.
#pragma once

#include <baywork/rating/allowable.hpp>
#include <baywork/verify.hpp>
