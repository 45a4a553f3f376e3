// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/work_text_test.cpp.
#include "sheet/work_words.h"

#include "base/format.h"

namespace plugward {
namespace {

std::string_view heading_of(WorkStage stage) {
  switch (stage) {
    case WorkStage::Before:
      return tr("Before the work");
    case WorkStage::Isolate:
      return tr("Isolate");
    case WorkStage::Record:
      return tr("Photograph and tag");
    case WorkStage::Unplug:
      return tr("Unplug");
    case WorkStage::Fit:
      return tr("Fit the board");
    case WorkStage::Jumpers:
      return tr("Jumpers");
    case WorkStage::Contacts:
      return tr("Contacts and parts");
    case WorkStage::MeterOff:
      return tr("Meter, no power anywhere");
    case WorkStage::BareBoard:
      return tr("Bare board, power on, nothing plugged in");
    case WorkStage::PlugIn:
      return tr("Plug in");
    case WorkStage::PowerOn:
      return tr("Check with power");
    case WorkStage::Settings:
      return tr("Settings");
    case WorkStage::Calibrate:
      return tr("To calibrate");
    case WorkStage::Close:
      return tr("Close up");
    case WorkStage::File:
      return tr("Write down");
  }
  return "";
}

}  // namespace

std::string stage_heading(const WorkStep& step) {
  if (!step.plug_stage) return std::string(heading_of(step.stage));
  return format("{}, stage {}: {}", heading_of(step.stage), static_cast<int>(*step.plug_stage),
                tr(to_word(*step.plug_stage)));
}

std::string_view work_sentence() {
  return tr(
      "A box for every step, a blank for every reading. A reading that is not as expected stops the work "
      "until it is explained. Ohms with the leads of the meter taken off, at 20 to 25 C; colours by their "
      "codes of IEC 60757, over numbered pins or in numbered cavities.");
}

std::string minutes_words(int practised, int first_time) {
  return format("{} min practised, {} min for the first time", practised, first_time);
}

}  // namespace plugward
