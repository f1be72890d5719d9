// SPDX-License-Identifier: MIT
// All of baywork but data, drawings and reports: describe a girder, solve it, prove it, see the hand calculation beside it.
#pragma once

#include <baywork/closed_form.hpp>
#include <baywork/core.hpp>
#include <baywork/frame.hpp>
#include <baywork/girder.hpp>
#include <baywork/hand_check.hpp>
#include <baywork/load.hpp>
#include <baywork/material.hpp>
#include <baywork/rating.hpp>
#include <baywork/response.hpp>
#include <baywork/section.hpp>
#include <baywork/solve.hpp>
#include <baywork/verify.hpp>
