// SPDX-License-Identifier: MIT
// core: which numbers, units, errors? Where on a girder?
#pragma once

#include <baywork/core/address.hpp>
#include <baywork/core/config.hpp>
#include <baywork/core/error.hpp>
#include <baywork/core/motion.hpp>
#include <baywork/core/scalar.hpp>
#include <baywork/core/text.hpp>
#include <baywork/core/units.hpp>
#include <baywork/core/vec3.hpp>
