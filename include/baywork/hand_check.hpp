// SPDX-License-Identifier: MIT
// Responses beside hand calculations: headline numbers, and the portal method panel by panel.
#pragma once

#include <baywork/hand_check/hand_checks.hpp>
#include <baywork/hand_check/panel_portal.hpp>
