// SPDX-License-Identifier: MIT
// Writing a page: headings, paragraphs, tables and pictures in one self-contained HTML file that also prints.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <baywork/show/style.hpp>
#include <baywork/show/svg.hpp>

namespace baywork::show {

/// A column of a table; numbers are set to the right. Sentences keep a width that they can be read at.
struct Column {
  std::string head;
  bool numbers = false;
};

/// Parts in the order of reading. Wide parts scroll by themselves on narrow screens and can be reached by keyboard.
class Page {
 public:
  explicit Page(std::string title) : title_(std::move(title)) {}

  /// A section with its heading; it ends where the next begins.
  void section(std::string_view heading) {
    if (in_section_) out_ += "</section>\n";
    in_section_ = true;
    const std::string id = "s" + std::to_string(++sections_);
    out_ += "<section aria-labelledby=\"" + id + "\">\n<h2 id=\"" + id + "\">" + escaped(heading) + "</h2>\n";
    contents_ += "<li><a href=\"#" + id + "\">" + escaped(heading) + "</a></li>\n";
  }
  void heading(std::string_view words) { out_ += "<h3>" + escaped(words) + "</h3>\n"; }
  void paragraph(std::string_view words, std::string_view cls = "") {
    out_ += "<p" + (cls.empty() ? "" : " class=\"" + std::string(cls) + '"') + '>' + escaped(words) + "</p>\n";
  }
  void list(const std::vector<std::string>& items) {
    out_ += "<ul>\n";
    for (const std::string& i : items) out_ += "<li>" + escaped(i) + "</li>\n";
    out_ += "</ul>\n";
  }
  /// Rows have as many cells as there are columns.
  void table(std::string_view caption, const std::vector<Column>& columns,
             const std::vector<std::vector<std::string>>& rows, std::string_view cls = "") {
    wide(caption);
    out_ += "<table" + (cls.empty() ? "" : " class=\"" + std::string(cls) + '"') + "><caption>" + escaped(caption) +
            "</caption>\n<thead><tr>";
    for (std::size_t i = 0; i < columns.size(); ++i) {
      std::size_t longest = 0;
      for (const std::vector<std::string>& row : rows) longest = (std::max)(longest, i < row.size() ? row[i].size() : 0);
      out_ += (columns[i].numbers ? "<th scope=\"col\" class=\"n\">"
               : longest > 40     ? "<th scope=\"col\" class=\"w\">"
               : longest > 16     ? "<th scope=\"col\" class=\"m\">"
                                  : "<th scope=\"col\">") +
              escaped(columns[i].head) + "</th>";
    }
    out_ += "</tr></thead>\n<tbody>\n";
    for (const std::vector<std::string>& row : rows) {
      out_ += "<tr>";
      for (std::size_t i = 0; i < columns.size(); ++i)
        out_ += (columns[i].numbers ? "<td class=\"n\">" : "<td>") + (i < row.size() ? breakable(row[i]) : "") + "</td>";
      out_ += "</tr>\n";
    }
    out_ += "</tbody></table></div>\n";
  }
  /// `svg` as a function of pictures made it, without style.
  void picture(std::string_view about, const std::string& svg) {
    wide(about);
    out_ += svg + "</div>\n";
  }
  /// Lines that keep their columns.
  void columns(std::string_view about, std::string_view lines) {
    wide(about);
    out_ += "<pre>";
    std::size_t from = 0;
    while (from < lines.size()) {
      const std::size_t to = lines.find('\n', from);
      out_ += escaped(lines.substr(from, to - from)) + '\n';
      if (to == std::string_view::npos) break;
      from = to + 1;
    }
    out_ += "</pre></div>\n";
  }

  std::string finished() const {
    return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n"
           "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n"
           "<meta name=\"color-scheme\" content=\"light dark\"/>\n<title>" +
           escaped(title_) + "</title>\n<style>\n" + rules() + style_rules() +
           "</style>\n</head>\n<body>\n<main>\n<h1>" + escaped(title_) + "</h1>\n<nav aria-label=\"Contents\"><ol>\n" +
           contents_ + "</ol></nav>\n" + out_ + (in_section_ ? "</section>\n" : "") + "</main>\n</body>\n</html>\n";
  }

 private:
  /// Formulas may go on in the next line behind a factor: else they would make a page wider than paper.
  static std::string breakable(const std::string& cell) {
    const std::string all = escaped(cell);
    if (cell.size() <= 40) return all;
    std::string out;
    for (const char c : all) {
      out += c;
      if (c == '*' || c == '/') out += "<wbr/>";
    }
    return out;
  }
  void wide(std::string_view about) {
    out_ += "<div class=\"wide\" role=\"group\" tabindex=\"0\" aria-label=\"" + escaped(about) + "\">\n";
  }

  static std::string rules() {
    const auto colours = [](const char* page, const char* ink, const char* quiet, const char* rule, const char* alarm) {
      return "html{background:" + std::string(page) + ";color:" + ink + "}caption,nav a{color:" + quiet +
             "}th,td,h2{border-color:" + rule + "}.alarm{color:" + alarm + "}\n";
    };
    return "html{font:15px/1.45 \"DejaVu Sans\",Verdana,Arial,sans-serif}body{margin:0}"
           "main{max-width:760px;margin:0 auto;padding:16px 20px 60px}h1{font-size:26px;line-height:1.2}"
           "h2{font-size:19px;margin:36px 0 8px;padding-bottom:3px;border-bottom:2px "
           "solid}h3{font-size:15px;margin:20px 0 4px}"
           "nav ol{columns:17em 2;padding-left:24px;font-size:13px}.wide{overflow-x:auto;margin:12px 0}"
           "table{border-collapse:collapse;font-size:12px;min-width:min(100%,36em)}caption{text-align:left;padding-bottom:4px}"
           "th,td{border-bottom:1px solid;padding:3px 10px 3px 0;text-align:left;vertical-align:top}"
           "td:first-child{min-width:8em}th.w{min-width:16em}th.m{min-width:9em}th.n,td.n{text-align:right;font-variant-numeric:tabular-nums}"
           "td.n{white-space:nowrap}"
           "pre{font:11px/1.35 \"DejaVu Sans Mono\",monospace;margin:0}svg{display:block}"
           ".alarm{font-weight:bold}.sign{width:100%}.sign td{height:34px}\n" +
           colours(light_page, "#26241f", "#655f52", "#c9c1ad", "#7a1f3d") +
           "@media screen and (prefers-color-scheme:dark){\n" +
           colours(dark_page, "#ece7da", "#a9a291", "#54534b", "#f08fae") +
           "}\n@page{size:A4;margin:15mm}\n@media "
           "print{html{background:none;font-size:11px}main{max-width:none;padding:0}"
           "nav{display:none}.wide{overflow:visible}tr,svg,pre,h2,h3,.sign{break-inside:avoid}h2,h3{break-after:avoid}"
           "pre{white-space:pre-wrap;font-size:7.5px}table{font-size:9px;line-height:1.3}th,td{padding:2px 8px 2px 0}th.w{min-width:12em}th.m{min-width:5em}svg{max-width:100%;max-height:235mm}h2+p{break-after:avoid}"
           "caption,thead{break-after:avoid}tbody tr:first-child{break-before:avoid}}\n";
  }

  std::string title_, out_, contents_;
  std::size_t sections_ = 0;
  bool in_section_ = false;
};

}  // namespace baywork::show
