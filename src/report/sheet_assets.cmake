# SPDX-License-Identifier: MIT
# sheet.css and sheet.js become string constants with the hashes that a Content-Security-Policy asks for, so that
# a sheet may run these two and nothing else.

# sha256 of a text in base64: three hex digits are two digits of base64; 64 of them need "00" to come out even.
function(plugward_csp_hash text result)
  string(SHA256 hex "${text}")
  set(alphabet "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/")
  set(digits "")
  foreach(at RANGE 0 63 3)
    string(SUBSTRING "${hex}00" ${at} 3 three)
    math(EXPR high "0x${three} / 64")
    math(EXPR low "0x${three} % 64")
    string(SUBSTRING "${alphabet}" ${high} 1 first)
    string(SUBSTRING "${alphabet}" ${low} 1 second)
    string(APPEND digits "${first}${second}")
  endforeach()
  string(SUBSTRING "${digits}" 0 43 digits)
  set(${result} "sha256-${digits}=" PARENT_SCOPE)
endfunction()

file(READ ${CMAKE_CURRENT_SOURCE_DIR}/sheet.css sheet_style)
file(READ ${CMAKE_CURRENT_SOURCE_DIR}/sheet.js sheet_script)
plugward_csp_hash("${sheet_style}" sheet_style_hash)
plugward_csp_hash("${sheet_script}" sheet_script_hash)
set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/sheet.css
             ${CMAKE_CURRENT_SOURCE_DIR}/sheet.js)
set(sheet_assets_cpp ${CMAKE_CURRENT_BINARY_DIR}/sheet_assets.cpp)
file(CONFIGURE OUTPUT ${sheet_assets_cpp} CONTENT [==[
// Made by CMake from src/report/sheet.css and sheet.js.
#include "report/sheet_html_blocks.h"
namespace plugward {
HtmlAsset sheet_style() {
  static constexpr char text[] = R"SHEET(@sheet_style@)SHEET";
  return {{text, sizeof text - 1}, "@sheet_style_hash@"};
}
HtmlAsset sheet_script() {
  static constexpr char text[] = R"SHEET(@sheet_script@)SHEET";
  return {{text, sizeof text - 1}, "@sheet_script_hash@"};
}
}  // namespace plugward
]==] @ONLY)
