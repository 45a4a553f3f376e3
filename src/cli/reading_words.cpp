// SPDX-License-Identifier: MIT
// Tested in tests/unit/cli/reading_words_test.cpp.
#include "cli/reading_words.h"

#include <limits>

#include "base/format.h"
#include "cli/options.h"
#include "quantity/quantity.h"

namespace plugward {

MeterReading read_reading(const std::string& text) {
  const std::size_t equals = text.find('=');
  if (equals == std::string::npos || equals == 0 || equals + 1 == text.size()) {
    throw UsageError(format("'--measured {}' is not of the form POINT=READING or POINT:POINT=READING", text));
  }
  MeterReading reading;
  reading.text = text;
  const std::string points = text.substr(0, equals), shown = text.substr(equals + 1);
  const std::size_t colon = points.find(':');
  reading.red = points.substr(0, colon);
  reading.black = colon == std::string::npos ? "minus" : points.substr(colon + 1);
  if (reading.red.empty() || reading.black.empty() || reading.red == reading.black)
    throw UsageError(format("'--measured {}': a reading is between two points", text));
  if (reading.red == "minus") std::swap(reading.red, reading.black);
  if (shown == "beep" || shown == "open") {
    reading.shown = Shown::Resistance;
    reading.value = shown == "beep" ? 0.0 : std::numeric_limits<double>::infinity();
    return reading;
  }
  if (shown.ends_with("ohm")) {
    const Parsed<Ohms> ohms = parse_quantity<Ohms>(shown);
    if (const Fault* fault = std::get_if<Fault>(&ohms)) throw UsageError("--measured: " + fault->message);
    reading.shown = Shown::Resistance;
    reading.value = std::get<Ohms>(ohms).value;
    if (reading.value < 0.0) throw UsageError(format("'--measured {}': no resistance is below 0", text));
    return reading;
  }
  const Parsed<Volts> volts = parse_quantity<Volts>(shown);
  if (const Fault* fault = std::get_if<Fault>(&volts)) {
    throw UsageError(format("--measured: {}; a reading is volts, ohms, beep or open", fault->message));
  }
  reading.value = std::get<Volts>(volts).value;
  // Turned tips show the same with the other sign.
  if (points.starts_with("minus:")) reading.value = -reading.value;
  return reading;
}

std::string shown_words(const MeterReading& reading) {
  if (reading.shown == Shown::Voltage) return to_text(Volts(reading.value));
  if (reading.value == 0.0) return "a beep";
  if (reading.value == std::numeric_limits<double>::infinity()) return "no beep";
  return to_text(Ohms(reading.value));
}

}  // namespace plugward
