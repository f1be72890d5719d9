// SPDX-License-Identifier: MIT
// An analysis of a girder that may turn out to be a mechanism.
#pragma once

#include <memory>

#include <baywork/response.hpp>

/// Nothing where nothing holds the girder.
template <class Description>
std::unique_ptr<baywork::Analysis> if_stable(const Description& girder) {
  try {
    return std::make_unique<baywork::Analysis>(girder);
  } catch (const baywork::UnstableFrame&) {
    return nullptr;
  }
}
