// SPDX-License-Identifier: MIT
// Materials: steel grades, aluminium alloys and what welding does to them.
#pragma once

#include <baywork/material/aluminium.hpp>
#include <baywork/material/haz.hpp>
#include <baywork/material/material.hpp>
#include <baywork/material/steel.hpp>
#include <baywork/material/us_aluminium.hpp>
