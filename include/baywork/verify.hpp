// SPDX-License-Identifier: MIT
// verify: is it safe? Clause-by-clause rows of EN 1999-1-1, EN 1993-1-1 or allowable stresses over all combinations.
#pragma once

#include <baywork/response.hpp>
#include <baywork/verify/bolted.hpp>
#include <baywork/verify/allowable_tube.hpp>
#include <baywork/verify/allowable_weld.hpp>
#include <baywork/verify/built_up.hpp>
#include <baywork/verify/en1993_buckling.hpp>
#include <baywork/verify/en1999_buckling.hpp>
#include <baywork/verify/held_chords.hpp>
#include <baywork/verify/en1999_joint.hpp>
#include <baywork/verify/pin.hpp>
#include <baywork/verify/proof.hpp>
#include <baywork/verify/prove.hpp>
#include <baywork/verify/stability_column.hpp>
#include <baywork/verify/prove_on_hoists.hpp>
#include <baywork/verify/spigot.hpp>
#include <baywork/verify/stability_eigenvalue.hpp>
#include <baywork/verify/stability_imperfections.hpp>
#include <baywork/verify/stability_sway.hpp>
#include <baywork/verify/weld.hpp>
