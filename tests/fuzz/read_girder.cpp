// SPDX-License-Identifier: MIT
// Any bytes as a girder file: refused with a BadDescription, or read; what is read is written and read again as the
// same.
//
// With clang's libFuzzer (BAYWORK_FUZZ) it searches by itself. Otherwise it has a main function that runs all files of
// the folders it is given, and as many changes of each as BAYWORK_CHANGES says.
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <sstream>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <baywork/frame.hpp>
#include <baywork/json.hpp>

namespace {

std::string written(const baywork::GirderFile& file) {
  std::ostringstream out;
  baywork::write_json(out, file);
  return out.str();
}

[[noreturn]] void stop(const char* why) {
  std::fprintf(stderr, "%s\n", why);
  std::abort();
}

std::size_t files_read = 0;

/// Small limits, so that they are met often.
baywork::JsonLimits small() {
  baywork::JsonLimits l;
  l.bytes = 20'000;
  l.values = 3'000;
  l.text = 200;
  l.stations = 60;
  l.parts = 30;
  return l;
}

using Json = nlohmann::json;
using Places = std::vector<std::pair<Json*, Json*>>;  // each value with the list or object that it is in

void collect(Json& v, Places& out) {
  for (Json& child : v) {
    out.emplace_back(&child, &v);
    if (child.is_structured()) collect(child, out);
  }
}

/// One value of the file changed, left out or given again: what is still JSON gets past the parser.
std::string with_another_value(std::string_view text, std::uint64_t seed) {
  Json file = Json::parse(text, nullptr, false);
  Places places;
  if (file.is_structured()) collect(file, places);
  if (places.empty()) return std::string(text);
  std::mt19937_64 random(seed);
  const auto below = [&random](std::size_t n) { return static_cast<std::size_t>(random() % n); };
  static const std::vector<Json> ready{
      0,  1,       2,   -1,      0.5,  -0.0,          1e-300,        1e300, 4294967296U, 18446744073709551615U,
      "", "rigid", "x", nullptr, true, Json::array(), Json::object()};
  const auto [value, in] = places[below(places.size())];
  switch (below(6)) {
    case 0: *value = ready[below(ready.size())]; break;
    case 1: *value = Json(*places[below(places.size())].first); break;
    case 2:
      if (value->is_number()) *value = value->get<double>() * (below(2) == 0 ? -1.0 : 0.5);
      break;
    case 3:
      if (in->is_array()) in->push_back(Json(*value));
      break;
    case 4:
      if (in->is_array()) in->erase(below(in->size()));
      break;
    default:
      if (in->is_object()) in->erase(std::next(in->begin(), static_cast<std::ptrdiff_t>(below(in->size()))));
  }
  return file.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  baywork::GirderFile file;
  try {
    file = baywork::read_girder_json(text, small());
  } catch (const baywork::BadDescription& e) {
    if (std::string_view(e.what()).find(": ") == std::string_view::npos || e.place().empty())
      stop("a fault without a place");
    return 0;
  }
  ++files_read;
  // Reading has promised that all of it can be written; nothing is caught here.
  const std::string once = written(file);
  if (once != written(baywork::read_girder_json(once))) stop("another file when read again");
  try {
    baywork::model_of(file.girder);
  } catch (const baywork::BadDescription&) {  // panels without area, for example
  }
  return 0;
}

#ifdef BAYWORK_LIBFUZZER

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t most);
extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t most, unsigned seed) {
  if (seed % 2 == 0) return LLVMFuzzerMutate(data, size, most);
  const std::string s = with_another_value({reinterpret_cast<const char*>(data), size}, seed);
  if (s.size() > most) return LLVMFuzzerMutate(data, size, most);
  std::memcpy(data, s.data(), s.size());
  return s.size();
}

#else

int main(int argc, char** argv) {
  const char* given = std::getenv("BAYWORK_CHANGES");
  const unsigned long changes = given != nullptr ? std::strtoul(given, nullptr, 10) : 0;
  std::mt19937_64 random(20260101);
  const auto below = [&random](std::size_t n) { return static_cast<std::size_t>(random() % (n > 0 ? n : 1)); };
  std::vector<std::string> texts;
  for (int i = 1; i < argc; ++i)
    for (const auto& entry : std::filesystem::recursive_directory_iterator(argv[i])) {
      std::ifstream in(entry.path(), std::ios::binary);
      texts.emplace_back(std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>());
    }
  const auto run = [](const std::string& s) {
    LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(s.data()), s.size());
  };
  static const std::string_view marks = "{}[]\",:0-e.\\u\xFF\n ";
  for (const std::string& original : texts) run(original);
  std::printf("%zu files, %zu read; %lu changes of each\n", texts.size(), files_read, changes);
  files_read = 0;
  for (const std::string& original : texts)
    for (unsigned long k = 0; k < changes; ++k) {
      std::string s = k % 2 == 0 ? original : with_another_value(original, random());
      for (std::size_t n = k % 2 == 0 ? 1 + below(3) : 0; n > 0; --n) {
        const std::size_t at = below(s.size()), length = below(20);
        const std::string& other = texts[below(texts.size())];
        switch (below(5)) {
          case 0: s.erase(at, length); break;
          case 1: s.insert(at, 1, marks[below(marks.size())]); break;
          case 2: s.replace(at, 1, 1, marks[below(marks.size())]); break;
          case 3: s.insert(at, s.substr(below(s.size()), length)); break;
          default: s.replace(at, length, other.substr(below(other.size()), length)); break;
        }
      }
      run(s);
    }
  std::printf("%zu changed files read\n", files_read);
  return texts.empty() ? 1 : 0;
}

#endif
