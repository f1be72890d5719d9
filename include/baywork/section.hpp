// SPDX-License-Identifier: MIT
// Cross-sections: from a shape's lengths to the geometry that stiffness and strength need.
#pragma once

#include <baywork/section/channel.hpp>
#include <baywork/section/i_shape.hpp>
#include <baywork/section/rectangular_hollow.hpp>
#include <baywork/section/round_tube.hpp>
#include <baywork/section/section_data.hpp>
#include <baywork/section/solid.hpp>
