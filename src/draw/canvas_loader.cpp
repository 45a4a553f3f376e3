// SPDX-License-Identifier: MIT
// Tested in tests/cases/draw* and, for a module that is missing, in tests/cases/draw-no-module.
#include <dlfcn.h>

#include <array>
#include <filesystem>

#include "base/file.h"
#include "base/format.h"
#include "draw/canvas_module.h"

namespace plugward {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view module_name = "plugward_canvas.so";

fs::path module_path() {
  std::error_code none;
  const fs::path folder = fs::read_symlink("/proc/self/exe", none).parent_path();
  const fs::path installed = (folder / ".." / "lib" / "plugward").lexically_normal();
  const std::array<fs::path, 2> folders{installed, folder};
  for (const fs::path& place : folders) {
    if (fs::exists(place / module_name, none)) return place / module_name;
  }
  throw WorldError(
      format("cannot draw: '{}', which is installed with plugward, is neither in '{}' nor in '{}'",
             module_name, installed.string(), folder.string()));
}

/// Never unloaded: what it made lives as long as the program.
const CanvasModule* load() {
  const std::string path = module_path().string();
  void* const module = dlopen(path.c_str(), RTLD_NOW | RTLD_LOCAL);
  if (module == nullptr) throw WorldError(format("cannot draw: {}", dlerror()));
  using Entry = const CanvasModule* (*)();
  const auto entry = reinterpret_cast<Entry>(dlsym(module, canvas_module_symbol));
  if (entry == nullptr || entry()->version != PLUGWARD_VERSION) {
    throw WorldError(format("cannot draw: '{}' does not belong to this plugward", path));
  }
  return entry();
}

const CanvasModule& module() {
  static const CanvasModule* const loaded = load();
  return *loaded;
}

}  // namespace

std::string render(const Scene& scene, const PictureOptions& options) {
  return module().render_one(scene, options);
}

std::string render_pages(const std::vector<Scene>& pages, const PictureOptions& options) {
  return module().render_many(pages, options);
}

std::string render_book(const std::vector<Scene>& pages, const PageFacts& facts) {
  return module().render_with_links(pages, facts);
}

std::unique_ptr<TextMeasure> make_text_measure() {
  return module().measure();
}

}  // namespace plugward
