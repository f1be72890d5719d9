# SPDX-License-Identifier: MIT
# Prints the seconds that a file takes to compile at -O2 when all it does is include one of the public headers.
cmake_minimum_required(VERSION 3.23)  # for microseconds in string(TIMESTAMP)

file(GLOB headers RELATIVE "${INCLUDE}" "${INCLUDE}/baywork/*.hpp")
if(NOT JSON)
  list(REMOVE_ITEM headers baywork/json.hpp)  # it needs a library that may not be there
endif()
foreach(header IN LISTS headers)
  file(WRITE "${SCRATCH}/compile_time.cpp" "#include <${header}>\n")
  string(TIMESTAMP start "%s%f")
  execute_process(
    COMMAND "${COMPILER}" -std=c++20 -O2 "-I${INCLUDE}" -isystem "${EIGEN}"
      -c "${SCRATCH}/compile_time.cpp" -o "${SCRATCH}/compile_time.o"
    COMMAND_ERROR_IS_FATAL ANY)
  string(TIMESTAMP end "%s%f")
  math(EXPR hundredths "(${end} - ${start}) / 10000 + 100000")
  string(REGEX REPLACE "^1(0?0?)([0-9]+)([0-9][0-9])$" "\\2.\\3" seconds "${hundredths}")
  message("${seconds} s  <${header}>")
endforeach()
