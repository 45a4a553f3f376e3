// SPDX-License-Identifier: MIT
// Elements may stand in any order: evidence first, then devices, then the plugs whose leads go to them.
// Tested in tests/unit/reader/harness_reader_test.cpp.
#include "reader/harness_reader.h"

#include <algorithm>
#include <vector>

#include "base/format.h"

namespace plugward {
namespace {

void refuse_root_child(const Reading& reading, const XmlNode& child) {
  std::vector<std::string_view> names{"evidence", "device", "plug"};
  for (const Shorthand& shorthand : all_shorthands()) names.push_back(shorthand.element);
  refuse_child(reading, reading.tree.node(0), child, names);
}

void check_evidence(const Reading& reading, const Attributes& a, const Harness& harness,
                    std::string_view id) {
  if (a.written(Key::Evidence) || !harness.evidence.empty() || id.empty()) return;
  reading
      .fault(Rule::NoEvidence, a.span(Key::Id),
             format("nothing says where {} '{}' is known from", a.element(), id))
      .help("declare an 'evidence' and name it here or at the harness: evidence=\"...\"");
}

ReadDevice read_short_device(const Reading& reading, XmlTree::Index index, const Attributes& a,
                             const Shorthand& shorthand) {
  refuse_children(reading, index);
  ReadDevice read;
  read.device.kind = shorthand.element;
  shorthand.expand(a, read.device);
  return read;
}

void read_any_device(const Reading& reading, XmlTree::Index index, Harness& harness, DeviceNames& names,
                     const Ids& evidences) {
  const XmlNode& node = reading.tree.node(index);
  const Shorthand* shorthand = find_shorthand(node.name);
  const KeySet required = shorthand == nullptr ? device_required : shorthand->required | KeySet{Key::Id};
  const KeySet optional = 
      device_optional | (shorthand == nullptr ? KeySet{Key::Kind} : shorthand->optional);
  const Attributes a(reading, node, required, optional);
  const bool fresh = names.ids.declare(reading, a, static_cast<int>(harness.devices.size()));
  ReadDevice read = shorthand == nullptr ? read_device(reading, index, a)
                                         : read_short_device(reading, index, a, *shorthand);
  read.device.title = a.text(Key::Title);
  read.device.evidence = read_evidence_reference(reading, a, evidences);
  read.device.span = a.element_span();
  if (!fresh || !read.complete) names.all_complete = false;
  if (!fresh) return;
  read.device.id = a.id(Key::Id);
  check_evidence(reading, a, harness, read.device.id);
  harness.devices.push_back(std::move(read.device));
  names.complete.push_back(read.complete);
}

void read_plug(const Reading& reading, XmlTree::Index index, Harness& harness, const DeviceNames& devices,
               const Ids& evidences, Ids& plugs) {
  constexpr KeySet required = KeySet{Key::Id} | shape_required;
  constexpr KeySet optional = KeySet{Key::Label, Key::Evidence} | shape_optional;
  const Attributes a(reading, reading.tree.node(index), required, optional);
  if (plugs.declare(reading, a, static_cast<int>(harness.plugs.size()))) {
    check_evidence(reading, a, harness, a.id(Key::Id));
  }
  Plug plug;
  plug.id = a.id(Key::Id);
  plug.label = a.text(Key::Label);
  Outline shape = read_shape(reading, a);
  plug.family = std::move(shape.family);
  plug.positions = shape.positions;
  plug.rows = shape.rows;
  plug.numbering = shape.numbering;
  plug.key = shape.key;
  plug.family_span = shape.family_span;
  plug.positions_span = shape.positions_span;
  plug.evidence = read_evidence_reference(reading, a, evidences);
  plug.span = a.element_span();
  read_leads(reading, index, harness, devices, plug);
  harness.plugs.push_back(std::move(plug));
}

}  // namespace

std::unique_ptr<Harness> read_harness(const Reading& reading) {
  auto harness = std::make_unique<Harness>();
  const XmlNode& root = reading.tree.node(0);
  const Attributes a(reading, root, {Key::Id, Key::Title}, KeySet{Key::Evidence} | root_keys);
  harness->id = a.id(Key::Id);
  harness->title = a.text(Key::Title);
  harness->span = a.element_span();

  Ids evidences("evidence");
  std::vector<XmlTree::Index> devices;
  std::vector<XmlTree::Index> plugs;
  bool misread = false;  // an unknown element may have been meant as a plug or device
  for (const XmlTree::Index child : reading.tree.children(0)) {
    const XmlNode& node = reading.tree.node(child);
    if (node.name == "plug") {
      plugs.push_back(child);
    } else if (node.name == "evidence") {
      read_evidence(reading, child, harness->evidences, evidences);
    } else if (node.name == "device" || find_shorthand(node.name) != nullptr) {
      devices.push_back(child);
    } else {
      refuse_root_child(reading, node);
      misread = misread || !node.is_text();
    }
  }
  // A reference that is not declared is reported; it still tells that evidence was thought of.
  harness->evidence = a.id(Key::Evidence);
  evidences.resolve(reading, a, Key::Evidence);
  DeviceNames names;
  names.all_complete = !misread;
  for (const XmlTree::Index device : devices) read_any_device(reading, device, *harness, names, evidences);
  Ids plug_ids("plug");
  for (const XmlTree::Index plug : plugs) read_plug(reading, plug, *harness, names, evidences, plug_ids);
  if (plugs.empty() && !misread) {
    reading.fault(Rule::MissingElement, a.name_span(), "the harness has no 'plug'")
        .help("describe each housing of the harness as a 'plug' with its leads");
  }
  return harness;
}

}  // namespace plugward
