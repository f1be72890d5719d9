// SPDX-License-Identifier: MIT
// The digest of all that a result depends on: the girder's frame and materials, the loads, the combinations.
#pragma once

#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include <baywork/response/cases.hpp>
#include <baywork/show/detail/sha256.hpp>
#include <baywork/verify/proof.hpp>

namespace baywork::show {

namespace detail {

/// Numbers by their bits, texts with their lengths: two inputs that differ anywhere differ here.
class DigestOfInput {
 public:
  void take(double v) { number(std::bit_cast<std::uint64_t>(v == 0.0 ? 0.0 : v)); }
  void take(std::size_t v) { number(v); }
  void take(std::string_view s) {
    number(s.size());
    sha_.take(s);
  }
  void take(const Vec3<>& v) {
    take(v.x);
    take(v.y);
    take(v.z);
  }
  std::string text() const { return sha_.text(); }

 private:
  void number(std::uint64_t bits) {
    std::array<char, 8> bytes{};
    for (std::size_t i = 0; i < 8; ++i) bytes[i] = static_cast<char>(bits >> (8 * i) & 255U);
    sha_.take({bytes.data(), bytes.size()});
  }
  Sha256 sha_;
};

inline void take(DigestOfInput& d, const MemberEnd& e) {
  for (const double k : {e.axial, e.shear_y, e.shear_z, e.torsion, e.about_y, e.about_z}) d.take(k);
  d.take(e.offset);
}

inline void take(DigestOfInput& d, const GirderModel& model) {
  const Frame& f = model.frame;
  d.take(f.nodes.size());
  for (const Node& n : f.nodes) d.take(n.at);
  d.take(f.members.size());
  for (std::size_t i = 0; i < f.members.size(); ++i) {
    const Member& m = f.members[i];
    d.take(m.from);
    d.take(m.to);
    d.take(static_cast<std::size_t>(m.kind));
    d.take(m.up);
    d.take(m.roll);
    take(d, m.start);
    take(d, m.end);
    d.take(model.bar_index[i]);
    d.take(text_of(m.address, f.names));
  }
  d.take(model.bars.size());
  for (const Bar& b : model.bars) {
    d.take(b.text());
    const SectionData<double>& s = b.section;
    for (const double v : {s.area, s.Iy, s.Iz, s.It, s.Wel_y, s.Wel_z, s.Wpl_y, s.Wpl_z, s.Wt, s.shear_y, s.shear_z})
      d.take(v);
    const material::StrengthStep& t = b.strength;
    for (const double v : {b.material.E, b.material.G, b.material.density, b.material.thermal_expansion, t.yield,
                           t.ultimate, t.haz_yield, t.haz_ultimate})
      d.take(v);
    for (const WeldAcross& w : b.across) {
      d.take(w.at);
      d.take(w.width);
    }
  }
  d.take(f.supports.size());
  for (const Support& s : f.supports) {
    d.take(s.node);
    for (const auto& r : s.motion) {
      d.take(static_cast<std::size_t>(r.kind));
      d.take(r.stiffness);
      d.take(r.displacement);
    }
  }
}

inline void take(DigestOfInput& d, const FrameLoads& loads) {
  d.take(loads.on_nodes.size());
  for (const auto& l : loads.on_nodes) {
    d.take(l.node);
    d.take(l.force);
    d.take(l.couple);
  }
  d.take(loads.on_members.size());
  for (const auto& l : loads.on_members) {
    d.take(l.member);
    d.take(static_cast<std::size_t>(l.kind));
    d.take(l.a);
    d.take(l.b);
    d.take(l.first);
    d.take(l.last);
  }
  d.take(loads.motions.size());
  for (const auto& m : loads.motions) {
    d.take(m.node);
    d.take(static_cast<std::size_t>(m.motion));
    d.take(m.displacement);
  }
}

}  // namespace detail

/// SHA-256, 64 hexadecimal digits: equal input has equal digits, whatever was computed of it.
inline std::string input_digest(const Cases& cases, const verify::Proof& proof) {
  detail::DigestOfInput d;
  take(d, cases.analysis().model());
  d.take(cases.size());
  for (std::size_t i = 0; i < cases.size(); ++i) {
    d.take(cases.kinds()[i].name);
    d.take(static_cast<std::size_t>(cases.kinds()[i].nature));
    d.take(cases.kinds()[i].alternative);
    take(d, cases[i].loads());
  }
  d.take(proof.combinations().size());
  for (const Combination& c : proof.combinations())
    for (const double f : c.factors) d.take(f);
  for (const std::string& s : proof.assumptions()) d.take(s);  // partial factors and options stand there
  return d.text();
}

}  // namespace baywork::show
