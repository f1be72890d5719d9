# SPDX-License-Identifier: MIT
# Compiles two topics and the solver for WebAssembly and runs them: the portable kernels, 32-bit sizes, another
# standard library.
file(MAKE_DIRECTORY "${OUT}/include")
# Beside the compiler's own headers, those of the machine must not be found: one is copied, not its folder named.
foreach(folder IN LISTS DOCTEST)
  foreach(header IN ITEMS doctest.h doctest/doctest.h)
    if(EXISTS "${folder}/${header}")
      file(COPY "${folder}/${header}" DESTINATION "${OUT}/include/doctest")
    endif()
  endforeach()
endforeach()
list(TRANSFORM EIGEN PREPEND "-isystem" OUTPUT_VARIABLE eigen)
execute_process(
  COMMAND "${COMPILER}" -std=c++20 -O1 -fexceptions -UNDEBUG -DBAYWORK_SOLVER_ELSEWHERE -DDOCTEST_CONFIG_NO_POSIX_SIGNALS
    "-I${ROOT}/include" ${eigen} -isystem "${OUT}/include" -sALLOW_MEMORY_GROWTH=1 -sTOTAL_STACK=2MB
    "${ROOT}/tests/main.cpp" "${ROOT}/cmake/solver_once.cpp" "${ROOT}/tests/chain_kernels.cpp" "${ROOT}/tests/chain_products.cpp" "${ROOT}/tests/frames_textbook.cpp" -o "${OUT}/tests.js"
  RESULT_VARIABLE failed)
if(failed)
  message(FATAL_ERROR "it does not compile")
endif()
execute_process(COMMAND "${NODE}" --no-experimental-fetch "${OUT}/tests.js" --no-colors=true RESULT_VARIABLE failed)
if(failed)
  message(FATAL_ERROR "its tests fail")
endif()
