// SPDX-License-Identifier: MIT
// A picture as another reader sees it: parsed by libxml2, which is strict about what is well-formed.
#pragma once

#include <libxml/parser.h>
#include <libxml/tree.h>

#include <cmath>
#include <cstdlib>
#include <memory>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace svg {

struct Point {
  double x = 0, y = 0;
};

/// An element with what hangs below it.
struct Element {
  std::string name, text;
  std::vector<std::pair<std::string, std::string>> attributes;
  std::vector<Element> children;

  const std::string& at(const std::string& key) const {
    for (const auto& [k, v] : attributes)
      if (k == key) return v;
    throw std::runtime_error("<" + name + "> has no " + key);
  }
  bool has(const std::string& key) const {
    for (const auto& [k, v] : attributes)
      if (k == key) return true;
    return false;
  }
  double number(const std::string& key) const { return std::stod(at(key)); }
  bool is(const std::string& cls) const {
    return has("class") && (" " + at("class") + " ").find(" " + cls + " ") != std::string::npos;
  }
  /// Of a polygon or polyline.
  std::vector<Point> points() const {
    std::vector<Point> out;
    const char* s = at("points").c_str();
    for (char* end = nullptr; *s != '\0'; s = end) {
      Point p;
      p.x = std::strtod(s, &end);
      p.y = std::strtod(end + 1, &end);
      out.push_back(p);
    }
    return out;
  }
  /// All elements below it for which keep(element).
  template <class Keep>
  std::vector<const Element*> all(Keep keep) const {
    std::vector<const Element*> out;
    for (const Element& c : children) {
      if (keep(c)) out.push_back(&c);
      for (const Element* below : c.all(keep)) out.push_back(below);
    }
    return out;
  }
  std::vector<const Element*> of_class(const std::string& cls) const {
    return all([&](const Element& e) { return e.is(cls); });
  }
  std::vector<const Element*> with(const std::string& key) const {
    return all([&](const Element& e) { return e.has(key); });
  }
};

inline Element taken_from(const xmlNode* node) {
  const auto text = [](const xmlChar* s) { return std::string(reinterpret_cast<const char*>(s)); };
  Element out;
  out.name = text(node->name);
  for (const xmlAttr* a = node->properties; a != nullptr; a = a->next)
    out.attributes.emplace_back(text(a->name), a->children != nullptr ? text(a->children->content) : "");
  for (const xmlNode* c = node->children; c != nullptr; c = c->next) {
    if (c->type == XML_TEXT_NODE) out.text += text(c->content);
    if (c->type == XML_ELEMENT_NODE) out.children.push_back(taken_from(c));
  }
  return out;
}

/// Throws for text that is not well-formed XML.
inline Element parsed(const std::string& picture) {
  const std::unique_ptr<xmlDoc, decltype(&xmlFreeDoc)> doc(
      xmlReadMemory(picture.data(), static_cast<int>(picture.size()), "picture", nullptr,
                    XML_PARSE_NONET | XML_PARSE_NOERROR | XML_PARSE_NOWARNING | XML_PARSE_HUGE),
      &xmlFreeDoc);
  if (!doc) throw std::runtime_error("a picture is not well-formed XML");
  return taken_from(xmlDocGetRootElement(doc.get()));
}

/// Distance of a point from a line through points [px].
inline double distance_to(const std::vector<Point>& line, const Point& p) {
  double best = 1e300;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Point &a = line[i - 1], &b = line[i];
    const double dx = b.x - a.x, dy = b.y - a.y, l = dx * dx + dy * dy;
    double t = l > 0 ? ((p.x - a.x) * dx + (p.y - a.y) * dy) / l : 0.0;
    t = t < 0 ? 0 : t > 1 ? 1 : t;
    const double ex = p.x - a.x - t * dx, ey = p.y - a.y - t * dy;
    const double d = ex * ex + ey * ey;
    best = d < best ? d : best;
  }
  return std::sqrt(best);
}

}  // namespace svg
