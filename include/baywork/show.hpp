// SPDX-License-Identifier: MIT
// Drawings of girders, responses, proofs and ratings as SVG, and the report as one HTML page.
#pragma once

#include <baywork/show/axial_forces.hpp>
#include <baywork/show/bending_moments.hpp>
#include <baywork/show/deformed_shape.hpp>
#include <baywork/show/dimensions.hpp>
#include <baywork/show/girder_drawing.hpp>
#include <baywork/show/hoist_reactions.hpp>
#include <baywork/show/html.hpp>
#include <baywork/show/input_digest.hpp>
#include <baywork/show/labels.hpp>
#include <baywork/show/legend.hpp>
#include <baywork/show/load_drawing.hpp>
#include <baywork/show/load_words.hpp>
#include <baywork/show/n_m_points.hpp>
#include <baywork/show/panel_drawing.hpp>
#include <baywork/show/picture.hpp>
#include <baywork/show/plot.hpp>
#include <baywork/show/rating_charts.hpp>
#include <baywork/show/reactions.hpp>
#include <baywork/show/report.hpp>
#include <baywork/show/report_tables.hpp>
#include <baywork/show/shares.hpp>
#include <baywork/show/shear_and_torsion.hpp>
#include <baywork/show/style.hpp>
#include <baywork/show/support_symbols.hpp>
#include <baywork/show/svg.hpp>
#include <baywork/show/unfolded.hpp>
#include <baywork/show/utilisation_map.hpp>
#include <baywork/show/views.hpp>
#include <baywork/show/words.hpp>
