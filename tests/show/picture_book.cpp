// SPDX-License-Identifier: MIT
// Writes all kinds of pictures of random girders as pages of their texts alone, for a browser to measure:
//   picture_book DIRECTORY GIRDERS
// Lines and areas are left out: they do not move texts.
#include <cstddef>
#include <fstream>
#include <iostream>
#include <sstream>
#include <string>

#include "../support/all_pictures.hpp"
#include "../support/random_described_girders.hpp"

namespace {

/// Keeps the picture's own element, its style and its texts; each element stands in a line of its own.
std::string texts_of(const std::string& svg) {
  std::istringstream lines(svg);
  std::string out, line;
  while (std::getline(lines, line)) {
    const bool drawn = line.rfind("<line", 0) == 0 || line.rfind("<poly", 0) == 0 || line.rfind("<rect", 0) == 0 ||
                       line.rfind("<circle", 0) == 0 || line.rfind("<path", 0) == 0;
    if (!drawn) out += line + '\n';
  }
  return out;
}

/// Of 60 bays, to which pictures promise room for their words.
baywork::Girder longest() {
  using namespace baywork;
  const material::Material alloy = material::en_aw_6082_t6();
  const Bar chord{RoundTube{0.0603, 0.005}, alloy}, cross{RoundTube{0.0483, 0.004}, alloy},
      brace{RoundTube{0.0269, 0.0032}, alloy};
  const auto side = braced(alternating, brace, cross);
  BoxGirder g{.bays = 60,
              .bay_length = 0.5,
              .width = 0.5,
              .depth = 0.5,
              .chord = chord,
              .faces = {.top = open(cross), .bottom = open(cross), .left = side, .right = side}};
  g.modules.bays_each = 6;
  g.supports = hung_at({1.0, 10.0, 20.0, 29.0});
  return g.girder();
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) {
    std::cerr << "picture_book DIRECTORY GIRDERS\n";
    return 2;
  }
  const std::string directory = argv[1];
  const auto girders_asked = static_cast<std::size_t>(std::stoul(argv[2]));
  const double widths[] = {240, 360, 800, 1600};  // the narrowest accepted, and three usual ones
  for (const double width : widths) {
    const std::string name = std::to_string(static_cast<int>(width));
    std::ofstream page(directory + "/" + name + ".html");
    page << "<!doctype html><html><head><meta charset=\"utf-8\"><style>\n"
         << baywork::show::style_rules() << "</style></head><body style=\"margin:0\">\n";
    const auto draw = [&](const baywork::Girder& g, std::uint64_t seed) {
      const baywork::Analysis a(g);
      ::Random chance(seed);
      for (const auto& [kind, svg] : pictures::all_of(a, chance, {.width = width, .id = "x", .with_style = false}))
        page << "<section data-kind=\"" << kind << "\" data-girder=\"" << seed << "\" data-bays=\"" << g.bays()
             << "\">\n"
             << texts_of(svg) << "</section>\n";
    };
    draw(longest(), 0);
    std::size_t drawn = 1;
    for (std::uint64_t seed = 1; drawn < girders_asked && seed < 10 * girders_asked; ++seed) {
      girders::Random description(seed);
      const baywork::Girder g = girders::DescribedGirder(description, 60).alone();
      if (g.bays() < 2) continue;
      try {
        draw(g, seed);
      } catch (const baywork::UnstableFrame&) {
        continue;  // a random girder may be one
      }
      ++drawn;
    }
    if (drawn < girders_asked) {
      std::cerr << "only " << drawn << " girders could be drawn\n";
      return 1;
    }
    page << "<script src=\"measure.js\"></script></body></html>\n";
  }
}
