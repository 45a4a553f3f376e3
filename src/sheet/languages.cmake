# SPDX-License-Identifier: MIT
# Every languages/*.po becomes a string constant, named by its file: a new language is a new file.
file(GLOB language_files CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/languages/*.po)
list(SORT language_files)
set(language_rows "")
foreach(file IN LISTS language_files)
  file(READ ${file} text)
  get_filename_component(code ${file} NAME_WE)
  string(APPEND language_rows "    {\"${code}\", R\"WORDS(${text})WORDS\"},\n")
endforeach()
set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${language_files})
set(language_files_cpp ${CMAKE_CURRENT_BINARY_DIR}/language_files.cpp)
file(CONFIGURE OUTPUT ${language_files_cpp} CONTENT [==[
// Made by CMake from src/sheet/languages/*.po.
#include "sheet/languages.h"
namespace plugward {
std::vector<LanguageFile> language_files() {
  return {
@language_rows@  };
}
}  // namespace plugward
]==] @ONLY)
