// SPDX-License-Identifier: MIT
// girder: what is the thing? Chords, faces of panels, diaphragms, splices, supports: what a person would say aloud.
#pragma once

#include <baywork/core.hpp>
#include <baywork/girder/axis.hpp>
#include <baywork/girder/bar.hpp>
#include <baywork/girder/bolt.hpp>
#include <baywork/girder/braced_panel.hpp>
#include <baywork/girder/connector.hpp>
#include <baywork/girder/connector_words.hpp>
#include <baywork/girder/diaphragms.hpp>
#include <baywork/girder/face.hpp>
#include <baywork/girder/girder.hpp>
#include <baywork/girder/names.hpp>
#include <baywork/girder/open_panel.hpp>
#include <baywork/girder/panel.hpp>
#include <baywork/girder/panel_place.hpp>
#include <baywork/girder/ready_girders.hpp>
#include <baywork/girder/splice_gap.hpp>
#include <baywork/girder/supports.hpp>
#include <baywork/girder/validate.hpp>
#include <baywork/girder/worn.hpp>
#include <baywork/material.hpp>
#include <baywork/section.hpp>
