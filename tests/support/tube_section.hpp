// SPDX-License-Identifier: MIT
// An aluminium tube as bare numbers, for frames that are typed in.
#pragma once

#include <baywork/frame/frame.hpp>

inline baywork::FrameSection tube_section() {
  baywork::FrameSection s;
  s.E = 70e9;
  s.G = 27e9;
  s.A = 1e-3;
  s.Iy = s.Iz = 1e-6;
  s.J = 2e-6;
  return s;
}
