// SPDX-License-Identifier: MIT
// json: results and girder descriptions as JSON. Needs nlohmann_json 3.11 or later; nothing else of baywork does.
#pragma once

#include <baywork/json/girder_file.hpp>
#include <baywork/json/results.hpp>
