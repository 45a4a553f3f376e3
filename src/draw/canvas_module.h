// SPDX-License-Identifier: MIT
// The drawing library and all that it needs take longer to start than most commands run. So canvas.cpp is a
// module of its own, plugward_canvas.so, which is loaded when the first picture is wanted: from
// ../lib/plugward beside the folder of the program, or from that folder itself in a build tree. Callers see
// only canvas.h.
//
//   plugward check ...   never loads it
//   plugward draw ...    canvas.h -> canvas_loader.cpp -> plugward_canvas.so (canvas_module.cpp, canvas.cpp)
#pragma once

#include <string_view>

#include "draw/canvas.h"

namespace plugward {

/// What the module gives: the functions of canvas.h. Compiled from the same sources as the program, never
/// mixed.
struct CanvasModule {
  std::string_view version;  ///< of plugward
  decltype(&render) render_one = nullptr;
  decltype(&render_pages) render_many = nullptr;
  decltype(&render_book) render_with_links = nullptr;
  decltype(&make_text_measure) measure = nullptr;
};

/// The one name that the module shows.
inline constexpr const char* canvas_module_symbol = "plugward_canvas_module";

}  // namespace plugward
