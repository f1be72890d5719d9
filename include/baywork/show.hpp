// SPDX-License-Identifier: MIT
// Drawings of girders, responses and proofs, as text in SVG.
#pragma once

#include <baywork/show/axial_forces.hpp>
#include <baywork/show/labels.hpp>
#include <baywork/show/picture.hpp>
#include <baywork/show/style.hpp>
#include <baywork/show/svg.hpp>
#include <baywork/show/unfolded.hpp>
