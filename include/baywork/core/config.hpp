// SPDX-License-Identifier: MIT
// Version and the one switch through which every throw goes.
#pragma once

#include <cstdio>
#include <cstdlib>

#define BAYWORK_VERSION_MAJOR 0
#define BAYWORK_VERSION_MINOR 1
#define BAYWORK_VERSION_PATCH 0

#if defined(__cpp_exceptions) || defined(__EXCEPTIONS) || defined(_CPPUNWIND)
#define BAYWORK_THROW(error) throw(error)
#else
/// Without exceptions a fault prints its message to the standard error stream and ends the program:
/// there is no answer that could be trusted after it.
#define BAYWORK_THROW(error) ::baywork::detail::say_and_abort((error).what())
#endif

namespace baywork {

#define BAYWORK_TEXT_OF_(x) #x
#define BAYWORK_TEXT_OF(x) BAYWORK_TEXT_OF_(x)
/// "0.1.0": the version that reports print.
inline constexpr const char* version_text =
    BAYWORK_TEXT_OF(BAYWORK_VERSION_MAJOR) "." BAYWORK_TEXT_OF(BAYWORK_VERSION_MINOR) "." BAYWORK_TEXT_OF(BAYWORK_VERSION_PATCH);
#undef BAYWORK_TEXT_OF
#undef BAYWORK_TEXT_OF_

namespace detail {
[[noreturn]] inline void say_and_abort(const char* message) noexcept {
  std::fputs(message, stderr);
  std::fputc('\n', stderr);
  std::abort();
}
}  // namespace detail

}  // namespace baywork
