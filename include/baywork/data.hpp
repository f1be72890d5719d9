// SPDX-License-Identifier: MIT
// data: what other programs read. Results as tidy tables, and these as comma-separated values.
#pragma once

#include <baywork/data/csv.hpp>
#include <baywork/data/proof_tables.hpp>
#include <baywork/data/response_tables.hpp>
#include <baywork/data/table.hpp>
