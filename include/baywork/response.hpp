// SPDX-License-Identifier: MIT
// response: what do people ask? Forces along members, deflections, reactions, panel tables, energy shares.
#pragma once

#include <baywork/load.hpp>
#include <baywork/response/analysis.hpp>
#include <baywork/response/cases.hpp>
#include <baywork/response/cut_forces.hpp>
#include <baywork/response/deflections.hpp>
#include <baywork/response/energy_shares.hpp>
#include <baywork/response/envelope.hpp>
#include <baywork/response/hoist_lines.hpp>
#include <baywork/response/hoist_table.hpp>
#include <baywork/response/hoists.hpp>
#include <baywork/response/member_view.hpp>
#include <baywork/response/panel_table.hpp>
#include <baywork/response/response.hpp>
#include <baywork/response/slack_sag.hpp>
#include <baywork/solve.hpp>
