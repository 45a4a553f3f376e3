// SPDX-License-Identifier: MIT
// The small languages of files and command line: quantities, ranges, colours, gauges, dates, symptoms,
// --seen. Any text is a value or a fault with a whole message; a value that is written is read back.
#include <cmath>

#include "cli/options.h"
#include "cli/seen.h"
#include "cli/sheet_date.h"
#include "plan/symptom.h"
#include "quantity/colour.h"
#include "quantity/exact_text.h"
#include "quantity/gauge.h"
#include "texts.h"

namespace plugward::fuzz {
namespace {

/// The value, when there is one; a fault is proved to be whole.
template <class T>
const T* value_of(const Parsed<T>& parsed, std::string_view text) {
  if (const Fault* fault = std::get_if<Fault>(&parsed)) {
    must(!fault->message.empty() && fault->begin <= fault->end && fault->end <= text.size());
    return nullptr;
  }
  return &std::get<T>(parsed);
}

template <class Q>
void quantity(std::string_view text) {
  const Parsed<Q> parsed = parse_quantity<Q>(text);
  if (const Q* value = value_of(parsed, text)) {
    must(std::isfinite(value->value) && std::abs(value->value) <= 1e9);
    const std::string written = exact_text(*value);
    const Parsed<Q> again = parse_quantity<Q>(written);
    const Q* same = value_of(again, written);
    must(same != nullptr && *same == *value);
    must(!to_text(*value).empty());
  }
  const Parsed<Range<Q>> range = parse_range<Q>(text);
  if (const Range<Q>* value = value_of(range, text)) {
    must(value->min <= value->max);
    const std::string written = exact_text(*value);
    const Parsed<Range<Q>> again = parse_range<Q>(written);
    const Range<Q>* same = value_of(again, written);
    must(same != nullptr && *same == *value);
    must(!to_text(*value).empty());
  }
}

void colour(std::string_view text) {
  const Parsed<WireColour> parsed = parse_colour(text);
  const WireColour* value = value_of(parsed, text);
  if (value == nullptr) return;
  must(to_code(*value) == text && !to_words(*value).empty());
}

void gauge(std::string_view text) {
  const Parsed<Gauge> parsed = parse_gauge(text);
  const Gauge* value = value_of(parsed, text);
  if (value == nullptr) return;
  const std::string written = exact_text(*value);
  const Parsed<Gauge> again = parse_gauge(written);
  const Gauge* same = value_of(again, written);
  must(same != nullptr && *same == *value && !to_text(*value).empty());
  must(wire_resistance(*value, Millimetres(1000)).value > 0 && conservative_current(*value).value > 0);
  must(nearest_awg(value->area) >= -3 || !value->awg);
}

void date(const std::string& text) {
  for (const bool given : {true, false}) {
    try {
      const std::string day = given ? sheet_date(text, nullptr) : sheet_date("", text.c_str());
      must(day.empty() || (day.size() == 10 && sheet_date(day, nullptr) == day));
    } catch (const UsageError& error) {
      must(std::string_view(error.what()).size() > 20);
    }
  }
}

Harness two_plugs() {
  Sources sources;
  Catalogue catalogue;
  Diagnostics diagnostics;
  add_builtin_families(catalogue);
  const FileId file = sources.add(
      "h.xml",
      "<harness id='h' title='H' evidence='e'><evidence id='e' kind='measurement'/>"
      "<dry-switch id='s' use='limit' rests='open'/><fan id='f' needs='10.8..13.2 V' draws='0.1 A'/>"
      "<plug id='p' family='xh-2.50' positions='4'><lead cavity='1' colour='BK' to='s.A'/>"
      "<lead cavity='2' colour='BK' to='s.B'/><lead cavity='4' colour='WHGN' to='f.V' gauge='26 AWG'/></plug>"
      "<plug id='q' family='xh-2.50' positions='2'><lead cavity='1' colour='?' to='f.G'/></plug></harness>");
  Description read = read_description(sources, file, catalogue, diagnostics);
  must(read.harness != nullptr);
  return *read.harness;
}

void seen(std::string_view text) {
  static const Harness harness = two_plugs();
  for (const char* plug : {"p", "q"}) {
    const Parsed<SeenResult> parsed = rearrange_as_seen(harness, plug, text);
    const SeenResult* result = value_of(parsed, text);
    if (result == nullptr) continue;
    const Plug& now = *result->harness.plug(plug);
    for (std::size_t i = 0; i < now.leads.size(); ++i) {
      must(now.leads[i].cavity >= 1 && now.leads[i].cavity <= now.positions);
      must(i == 0 || now.leads[i - 1].cavity < now.leads[i].cavity);
    }
  }
  must(std::holds_alternative<Fault>(rearrange_as_seen(harness, std::string(text) + "x", "-")));
}

}  // namespace
}  // namespace plugward::fuzz

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
  using namespace plugward;
  using namespace plugward::fuzz;
  const std::string text(data, data + size);
  if (size > 200 || text.find('\0') != text.npos) return 0;  // no argument and no file holds a zero
  quantity<Volts>(text);
  quantity<Amps>(text);
  quantity<Ohms>(text);
  quantity<Watts>(text);
  quantity<Millimetres>(text);
  quantity<SquareMillimetres>(text);
  quantity<Kelvins>(text);
  colour(text);
  gauge(text);
  date(text);
  seen(text);
  if (const auto symptom = symptom_of(text)) must(words_of(*symptom).word == text);
  return 0;
}
