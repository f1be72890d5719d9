// SPDX-License-Identifier: MIT
// From a girder file to a proof: reads it, solves its load cases, proves every bar.
//
//   girder_file            takes a girder of the harbour cinema that it has written itself
//   girder_file FILE       takes any file, such as the girder.json that screen_girder --out DIR writes
//
// A wrong file is told with its place and the girder part.
#include <fstream>
#include <iostream>
#include <iterator>
#include <sstream>
#include <string>

#include <baywork/baywork.hpp>
#include <baywork/json.hpp>

#include "support/girder_between_hoists.hpp"

using namespace baywork;

namespace {

std::string own_file() {
  std::ostringstream out;
  write_json(out, {examples::girder_between_hoists(8.0).girder(),
                   {{"self-weight", Nature::permanent, {self_weight(1.05)}},
                    {"wind", Nature::wind, {wind_on(Side::left, 200.0), wind_on_bars(200.0, {0, -1, 0})}}}});
  return out.str();
}

std::string text_of_file(const char* path) {
  std::ifstream in(path, std::ios::binary);
  if (!in) fail<BadDescription>(path, "it cannot be read", "a file that is there is accepted");
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

}  // namespace

int main(int argc, char** argv) {
  if (argc > 2) {
    std::cerr << "usage: girder_file [FILE]\n";
    return 2;
  }
  try {
    const GirderFile file = read_girder_json(argc == 2 ? text_of_file(argv[1]) : own_file());
    const Analysis analysis{file.girder};
    const Cases cases = analysis.solve(file.load_cases);
    std::cout << file.girder.chords.size() << " chords, " << file.girder.bays() << " bays, "
              << text::number(file.girder.span()) << " m\n";
    for (std::size_t i = 0; i < cases.size(); ++i)
      std::cout << text::left(cases[i].name(), 22) << " deflection "
                << text::quantity(cases[i].max_deflection(), 1e-3, "mm", 4) << '\n';
    std::cout << verify::by_material(cases, en1990::ultimate()).verdict() << '\n'
              << "A calculation aid, not a load certificate: a licensed engineer must check it.\n";
    return 0;
  } catch (const std::exception& e) {
    std::cerr << "girder_file: " << e.what() << '\n';
    return 1;
  }
}
