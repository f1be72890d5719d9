// SPDX-License-Identifier: MIT
// rating: how much may it carry, and what governs? Allowable loads, load tables over spans, interaction curves.
#pragma once

#include <baywork/rating/allowable.hpp>
#include <baywork/rating/hand_table.hpp>
#include <baywork/rating/interaction.hpp>
#include <baywork/rating/load_table.hpp>
#include <baywork/rating/moment_shear.hpp>
#include <baywork/rating/patterns.hpp>
#include <baywork/rating/table_text.hpp>
#include <baywork/rating/verdict.hpp>
#include <baywork/verify.hpp>
