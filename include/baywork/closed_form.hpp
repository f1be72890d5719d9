// SPDX-License-Identifier: MIT
// All closed forms: formulas that share no line with the frame analysis, to check it and to be checked by hand.
#pragma once

#include <baywork/closed_form/beam_formulas.hpp>
#include <baywork/closed_form/chord_group.hpp>
#include <baywork/closed_form/clamped_formulas.hpp>
#include <baywork/closed_form/continuous_beam.hpp>
#include <baywork/closed_form/face_shear.hpp>
#include <baywork/closed_form/formula.hpp>
#include <baywork/closed_form/girder_shear.hpp>
#include <baywork/closed_form/open_face.hpp>
#include <baywork/closed_form/overhang_formulas.hpp>
#include <baywork/closed_form/portal.hpp>
#include <baywork/closed_form/torsion.hpp>
#include <baywork/closed_form/two_span.hpp>
