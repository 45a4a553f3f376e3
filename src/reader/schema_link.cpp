// SPDX-License-Identifier: MIT
// Tested through the broken files in tests/unit/reader/broken.
#include "reader/schema_link.h"

#include "base/format.h"
#include "reader/key.h"

namespace plugward {
namespace {

constexpr std::string_view schema_instance = "http://www.w3.org/2001/XMLSchema-instance";

}  // namespace

void check_schema_link(const Reading& reading) {
  const XmlAttribute* prefix = nullptr;
  const XmlAttribute* place = nullptr;
  for (const XmlAttribute& it : reading.tree.attributes(reading.tree.node(0))) {
    if (it.name == key_name(Key::SchemaPrefix)) prefix = &it;
    if (it.name == key_name(Key::SchemaPlace)) place = &it;
  }
  if (prefix != nullptr && prefix->value != schema_instance) {
    reading
        .fault(Rule::BadWord, reading.tree.value_span(*prefix),
               "'xmlns:xsi' must be the schema instance namespace")
        .help(format("write xmlns:xsi=\"{}\"", schema_instance));
  }
  if (prefix == nullptr && place != nullptr) {
    reading.fault(Rule::MissingAttribute, reading.tree.name_span(*place), "the prefix 'xsi' is not declared")
        .help(format("add xmlns:xsi=\"{}\" to the root", schema_instance));
  }
}

}  // namespace plugward
