# SPDX-License-Identifier: MIT
# src/report/schemas/*.json become string constants, so that `plugward list schemas NAME` needs no data folder.
file(GLOB schema_files CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/src/report/schemas/*.json)
set(schema_rows "")
foreach(schema_file IN LISTS schema_files)
  get_filename_component(schema_name ${schema_file} NAME_WE)
  file(READ ${schema_file} schema_text)
  set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${schema_file})
  string(APPEND schema_rows "      {\"${schema_name}\", R\"SCHEMA(${schema_text})SCHEMA\"},\n")
endforeach()
set(schemas_cpp ${CMAKE_CURRENT_BINARY_DIR}/schemas.cpp)
file(CONFIGURE OUTPUT ${schemas_cpp} CONTENT [==[
// Made by CMake from src/report/schemas/.
#include "report/schemas.h"
namespace plugward {
std::span<const Schema> all_schemas() {
  static constexpr Schema schemas[] = {
@schema_rows@  };
  return schemas;
}
}  // namespace plugward
]==] @ONLY)
