// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/sheet_html_test.cpp, and by pixels in tests/browser/svg_test.py.
#include "report/sheet_html_outlines.h"

#include <algorithm>
#include <optional>

#include "base/format.h"

namespace plugward {
namespace {

constexpr std::string_view open_id = "<path id=\"", open_data = "\" d=\"", close = "\"/>";
constexpr std::string_view open_reference = "href=\"#";

struct Outline {
  std::string_view id, data;
  std::size_t end = 0;  ///< behind it, and behind the end of its line
};

/// The outline that begins at `at`, where "<path id="" stands.
std::optional<Outline> outline_at(std::string_view svg, std::size_t at) {
  const std::size_t id = at + open_id.size();
  const std::size_t id_end = svg.find('"', id);
  if (id_end == std::string_view::npos || svg.substr(id_end, open_data.size()) != open_data) return {};
  const std::size_t data = id_end + open_data.size();
  const std::size_t data_end = svg.find('"', data);
  if (data_end == std::string_view::npos || svg.substr(data_end, close.size()) != close) return {};
  std::size_t end = data_end + close.size();
  if (end < svg.size() && svg[end] == '\n') ++end;
  return Outline{svg.substr(id, id_end - id), svg.substr(data, data_end - data), end};
}

}  // namespace

std::string SharedOutlines::taken_from(std::string_view svg) {
  std::map<std::string_view, std::string_view> kept_as;  // ids of this picture
  std::string out;
  std::size_t done = 0;
  while (done < svg.size()) {
    const std::size_t at = std::min(svg.find(open_id, done), svg.find(open_reference, done));
    out += svg.substr(done, at - done);
    if (at == std::string_view::npos) break;
    done = at;
    if (svg.substr(at, open_id.size()) == open_id) {
      if (const std::optional<Outline> outline = outline_at(svg, at)) {
        auto known = id_of_.find(outline->data);
        if (known == id_of_.end()) {
          known = id_of_.emplace(outline->data, verbatim("o{}", id_of_.size())).first;
          paths_ += verbatim("<path id=\"{}\" d=\"{}\"/>\n", known->second, outline->data);
        }
        kept_as[outline->id] = known->second;
        done = outline->end;
        continue;
      }
      out += open_id;
      done += open_id.size();
      continue;
    }
    out += open_reference;
    done += open_reference.size();
    const std::string_view id = svg.substr(done, svg.find('"', done) - done);
    if (const auto kept = kept_as.find(id); kept != kept_as.end()) {
      out += kept->second;
      done += id.size();
    }
  }
  return out;
}

std::string SharedOutlines::svg() const {
  if (paths_.empty()) return "";
  return "<svg class=\"outlines\" width=\"0\" height=\"0\" aria-hidden=\"true\"><defs>\n" + paths_ +
         "</defs></svg>\n";
}

}  // namespace plugward
