// SPDX-License-Identifier: MIT
// The entry of plugward_canvas.so.
#include "draw/canvas_module.h"

extern "C" const plugward::CanvasModule* plugward_canvas_module();

extern "C" const plugward::CanvasModule* plugward_canvas_module() {
  static constexpr plugward::CanvasModule functions{PLUGWARD_VERSION, &plugward::render,
                                                    &plugward::render_pages, &plugward::render_book,
                                                    &plugward::make_text_measure};
  return &functions;
}
