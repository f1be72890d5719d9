// SPDX-License-Identifier: MIT
// load: what acts on it? Actions in girder words, load cases, combination sets.
#pragma once

#include <baywork/girder.hpp>
#include <baywork/load/actions.hpp>
#include <baywork/load/bow.hpp>
#include <baywork/load/en1990.hpp>
#include <baywork/load/en1991_bars.hpp>
#include <baywork/load/en1991_wind.hpp>
#include <baywork/load/hoisting.hpp>
#include <baywork/load/load_case.hpp>
#include <baywork/load/notional_loads.hpp>
#include <baywork/load/other_sets.hpp>
