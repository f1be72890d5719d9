// SPDX-License-Identifier: MIT
// solve: what does the frame do? Frame and loads to certified displacements and forces.
#pragma once

#include <baywork/frame.hpp>
#include <baywork/solve/frame_answer.hpp>
#include <baywork/solve/frame_solver.hpp>
#include <baywork/solve/mechanism.hpp>
#include <baywork/solve/member_loading.hpp>
#include <baywork/solve/member_stiffness.hpp>
