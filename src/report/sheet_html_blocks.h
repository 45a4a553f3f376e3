// SPDX-License-Identifier: MIT
// The pieces of an HTML sheet. Not for use outside sheet_html*.cpp.
#pragma once

#include <string>
#include <string_view>

#include "report/sheet_html.h"
#include "report/sheet_html_outlines.h"

namespace plugward {

/// Text that CMake builds in, and its hash as a Content-Security-Policy names it: "sha256-...".
struct HtmlAsset {
  std::string_view text;
  std::string_view hash;
};
HtmlAsset sheet_style();
HtmlAsset sheet_script();

/// What the blocks of one file need to know of each other.
struct HtmlSheet {
  const sheet::Document* document = nullptr;
  const PictureSvg* pictures = nullptr;
  SharedOutlines* outlines = nullptr;
};

/// The class of a mood, "" for a plain one, and the shape that says it without colour.
std::string_view mood_class(sheet::Mood);
std::string_view mood_shape(sheet::Mood);

/// A section with its heading. `number`: from 0; makes the ids of its boxes.
std::string section_html(const HtmlSheet&, const sheet::Section&, std::size_t number);
std::string steps_html(const HtmlSheet&, const sheet::Steps&);
/// Both faces, unless they are the same or empty; the words beneath.
std::string picture_html(const HtmlSheet&, const sheet::Picture&);
/// A caution with a shape before it.
std::string caution_html(std::string_view text);
/// "" for no picture, or for one that the document does not have.
std::string picture_link_html(const HtmlSheet&, const std::string& picture);

}  // namespace plugward
