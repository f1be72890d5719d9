# SPDX-License-Identifier: MIT
# Rules for source files, in any folder: the licence line first, at most 400 lines, 450 of a test. For headers of the
# library:
#  - a folder includes only itself and the folders below it; only solve/ includes Eigen, only json/ nlohmann's JSON; else
#    the standard library alone;
#  - #pragma once; macros are named BAYWORK_...; a diagnostic is switched off only between push and pop;
#  - no `using namespace` at namespace scope.
# Prints "file:line: problem" for each breach and ends with status 1 if there is any.

BEGIN {
  # Each folder with the folders just below it; the rest follows.
  below["core"] = ""
  below["section"] = below["material"] = "core"
  below["girder"] = "section material"
  below["load"] = "girder"
  below["frame"] = "load"
  below["solve"] = "frame"
  below["response"] = "solve"
  below["closed_form"] = "load"
  below["hand_check"] = "response closed_form"
  below["verify"] = "hand_check"
  below["rating"] = "verify"
  below["data"] = "rating"
  below["json"] = "data"
  below["show"] = "data"
  for (folder in below) allow(folder, folder)

  n = split("algorithm any array atomic barrier bit bitset cassert cctype cerrno cfenv cfloat charconv chrono cinttypes " \
            "climits clocale cmath codecvt compare complex concepts condition_variable coroutine csetjmp csignal " \
            "cstdarg cstddef cstdint cstdio cstdlib cstring ctime cuchar cwchar cwctype deque exception execution " \
            "filesystem forward_list fstream functional future initializer_list iomanip ios iosfwd iostream istream " \
            "iterator latch limits list locale map memory memory_resource mutex new numbers numeric optional ostream " \
            "queue random ranges ratio regex scoped_allocator semaphore set shared_mutex source_location span sstream " \
            "stack stdexcept stop_token streambuf string string_view strstream syncstream system_error thread tuple " \
            "type_traits typeindex typeinfo unordered_map unordered_set utility valarray variant vector version", names, " ")
  for (i = 1; i <= n; i++) standard[names[i]] = 1
}

# Marks that `folder` may include `other` and all that lies below it.
function allow(folder, other,    list, n, i) {
  allowed[folder, other] = 1
  n = split(below[other], list, " ")
  for (i = 1; i <= n; i++) allow(folder, list[i])
}

function complain(file, line, problem) {
  print file ":" line ": " problem
  failed = 1
}

function end_of_file() {
  if (file == "") return
  most = file ~ /tests\// ? 450 : 400
  if (lines > most) complain(file, lines, "has more than " most " lines")
  if (!is_header) return
  # the parts of the kernels are included once for each set of instructions
  if (!guarded && file !~ /solve\/detail\/kernel_[a-z]+\.hpp$/) complain(file, 1, "has no #pragma once")
  if (pushed) complain(file, lines, "a diagnostic push has no pop")
}

FNR == 1 {
  end_of_file()
  file = FILENAME
  is_header = file ~ /^include\/baywork\/.*\.hpp$/
  folder = file
  sub(/^include\/baywork\//, "", folder)
  sub(/(\.hpp|\/.*)$/, "", folder)
  is_umbrella = file == "include/baywork/baywork.hpp"
  guarded = pushed = in_comment = depth = code_depth = 0
  head = ""
  if ($0 !~ /^\/\/ SPDX-License-Identifier: MIT\r?$/) complain(file, 1, "does not start with the licence line")
  if (is_header && !is_umbrella && !(folder in below)) complain(file, 1, "lies in a folder that has no place in the order")
}

{ lines = FNR }

is_header {
  text = uncommented($0)
  if (text ~ /^[ \t]*#/) directive(text)
  else scopes(text)
}

# The line without comments and without the contents of strings and characters.
function uncommented(line,    out, at) {
  out = ""
  while (line != "") {
    if (in_comment) {
      at = index(line, "*/")
      if (!at) return out
      line = substr(line, at + 2)
      in_comment = 0
    } else if (match(line, /^"([^"\\]|\\.)*"/)) {
      out = out (text_is_include(out) ? substr(line, 1, RLENGTH) : "\"\"")
      line = substr(line, RLENGTH + 1)
    } else if (match(line, /^'([^'\\]|\\.)'/)) {
      out = out "' '"
      line = substr(line, RLENGTH + 1)
    } else if (substr(line, 1, 2) == "//") {
      return out
    } else if (substr(line, 1, 2) == "/*") {
      in_comment = 1
      line = substr(line, 3)
    } else {
      out = out substr(line, 1, 1)
      line = substr(line, 2)
    }
  }
  return out
}

function text_is_include(text) { return text ~ /^[ \t]*#[ \t]*include[ \t]*$/ }

function directive(text,    name) {
  if (text ~ /#[ \t]*pragma[ \t]+once/) guarded = 1
  if (text ~ /#[ \t]*include/) included(text)
  if (match(text, /#[ \t]*define[ \t]+/)) {
    name = substr(text, RSTART + RLENGTH)
    if (name !~ /^BAYWORK_/) complain(file, FNR, "defines a macro whose name does not start with BAYWORK_: " name)
  }
  if (text ~ /#[ \t]*pragma.*diagnostic[ \t]+push/) pushed++
  else if (text ~ /#[ \t]*pragma.*diagnostic[ \t]+pop/) {
    if (--pushed < 0) complain(file, FNR, "a diagnostic pop has no push")
  } else if (text ~ /#[ \t]*pragma.*diagnostic/ && !pushed) complain(file, FNR, "switches a diagnostic outside push and pop")
}

function included(text,    name, other) {
  if (!match(text, /<[^>]+>/)) {
    complain(file, FNR, "an include is not written with <...>")
    return
  }
  name = substr(text, RSTART + 1, RLENGTH - 2)
  if (name in standard) return
  if (name ~ /^(unsupported\/)?Eigen\//) {
    if (folder != "solve") complain(file, FNR, "only solve/ may include Eigen")
    return
  }
  if (name ~ /^nlohmann\// && folder == "json") return
  if (name !~ /^baywork\//) {
    complain(file, FNR, "includes <" name ">, which is neither standard nor ours")
    return
  }
  other = name
  sub(/^baywork\//, "", other)
  sub(/(\.hpp|\/.*)$/, "", other)
  if (is_umbrella ? !(other in below) : !((folder, other) in allowed))
    complain(file, FNR, folder " may not include " other)
}

# Follows braces: code_depth counts those open that are not a namespace's.
function scopes(text,    i, c) {
  for (i = 1; i <= length(text); i++) {
    c = substr(text, i, 1)
    if (c == "{") {
      kind[++depth] = head ~ /(^|[^A-Za-z_0-9])namespace([^A-Za-z_0-9]|$)/ && head !~ /[=()]/ ? "namespace" : "code"
      if (kind[depth] == "code") code_depth++
    } else if (c == "}") {
      if (depth && kind[depth--] == "code") code_depth--
    } else if (c != ";") {
      head = head c
      continue
    }
    if (c == ";" && !code_depth && head ~ /using[ \t]+namespace/)
      complain(file, FNR, "`using namespace` at namespace scope")
    head = ""
  }
  head = head " "
}

END {
  end_of_file()
  exit failed
}
