// SPDX-License-Identifier: MIT
// Drawings of girders and responses as SVG, and the report as one HTML page.
#pragma once

#include <baywork/show/axial_forces.hpp>
#include <baywork/show/html.hpp>
#include <baywork/show/input_digest.hpp>
#include <baywork/show/labels.hpp>
#include <baywork/show/load_words.hpp>
#include <baywork/show/picture.hpp>
#include <baywork/show/report.hpp>
#include <baywork/show/report_tables.hpp>
#include <baywork/show/style.hpp>
#include <baywork/show/svg.hpp>
#include <baywork/show/unfolded.hpp>
