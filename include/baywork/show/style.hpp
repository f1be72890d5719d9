// SPDX-License-Identifier: MIT
// The look of every picture: two pages, light and dark, and hatching, so that nothing is told by colour alone.
#pragma once

#include <array>
#include <string>

namespace baywork::show {

/// A colour on the light and on the dark page. Printing takes the light one, on white.
struct Ink {
  const char* cls;  ///< "bw-pull": the class; text, lines and areas take it by their own rule
  const char* light;
  const char* dark;
};
inline constexpr const char* light_page = "#fffdf6";
inline constexpr const char* dark_page = "#1d1f1e";

/// Inks that text is written in; each at least 4.5 : 1 against its page.
inline constexpr std::array<Ink, 7> inks{{
    {"bw-ink", "#26241f", "#ece7da"},
    {"bw-quiet", "#655f52", "#a9a291"},
    {"bw-pull", "#0b5d52", "#5cc8b3"},  // tension
    {"bw-push", "#a0400b", "#f2a05f"},  // compression
    {"bw-bend", "#5a3a86", "#c3a5ee"},  // moments, shear, torsion
    {"bw-load", "#7a1f3d", "#f08fae"},  // loads, and what is above 1
    {"bw-hold", "#3d4a1c", "#b9c97c"},  // supports
}};

/// Shades for utilisation from none to 1, for areas and lines only.
inline constexpr std::array<Ink, 4> shades{{
    {"bw-use-1", "#b9bf9d", "#5a6149"},
    {"bw-use-2", "#8fa076", "#7c8b6c"},
    {"bw-use-3", "#5f8164", "#9dba9e"},
    {"bw-use-4", "#315c56", "#c6e2cb"},
}};

namespace detail {

inline std::string page_rules(bool dark) {
  const auto pick = [dark](const Ink& i) { return std::string(dark ? i.dark : i.light); };
  const std::string page = dark ? dark_page : light_page;
  // every rule names two classes, so that it is stronger than those of style_rules() that set nothing but shape
  std::string out = ".bw .bw-page,.bw .bw-veil{fill:" + page + "}.bw .bw-blank{stroke:" + page + "}";
  for (const Ink& i : inks) {
    const std::string c = std::string(".bw .") + i.cls, v = pick(i);
    out += c + "{stroke:" + v + "}" + c + "-area," + c + ".bw-head{fill:" + v + ";stroke:" + v + "}";
    out += ".bw text." + std::string(i.cls) + "{fill:" + v + ";stroke:none}";
  }
  out += ".bw text.bw-halo.bw-halo{stroke:" + page + "}";
  for (const Ink& s : shades) out += ".bw ." + std::string(s.cls) + "{stroke:" + pick(s) + ";fill:" + pick(s) + "}";
  out += ".bw .bw-grid{stroke:" + std::string(dark ? "#4a4a43" : "#d8d2c2") + "}";
  return out + '\n';
}

}  // namespace detail

/// The rules of all pictures, for a <style> element; once in a page of several pictures.
inline std::string style_rules() {
  return ".bw text{font-family:\"DejaVu Sans\",Verdana,Arial,sans-serif;font-size:12px}"
         ".bw text.bw-title{font-size:15px}.bw text.bw-small{font-size:10px}"
         ".bw text.bw-halo{paint-order:stroke;stroke-width:4px;stroke-linejoin:round}"
         ".bw line,.bw polyline,.bw polygon,.bw rect,.bw circle,.bw path{fill:none;stroke-width:1}"
         ".bw .bw-thin{stroke-width:.6}.bw .bw-bold{stroke-width:2.2}.bw .bw-band{stroke-width:6;stroke-opacity:.4}.bw "
         ".bw-dash{stroke-dasharray:5 3}"
         ".bw .bw-dot{stroke-dasharray:1.5 3}.bw .bw-clear{stroke:none}.bw .bw-pale{fill-opacity:.16}\n" +
         detail::page_rules(false) + "@media screen and (prefers-color-scheme:dark){\n" + detail::page_rules(true) +
         "}\n@media print{.bw .bw-page,.bw .bw-veil{fill:#fff}.bw .bw-blank,.bw text.bw-halo.bw-halo{stroke:#fff}}\n";
}

}  // namespace baywork::show
