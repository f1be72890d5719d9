// SPDX-License-Identifier: MIT
// frame: what is the mechanical model? Plain data that a girder becomes, or that is typed in directly.
#pragma once

#include <baywork/core.hpp>
#include <baywork/frame/frame.hpp>
#include <baywork/frame/frame_loads.hpp>
#include <baywork/frame/girder_loads.hpp>
#include <baywork/frame/girder_model.hpp>
#include <baywork/frame/girder_pressure.hpp>
#include <baywork/frame/girder_supports.hpp>
#include <baywork/frame/member_axes.hpp>
#include <baywork/frame/validate.hpp>
#include <baywork/load.hpp>
