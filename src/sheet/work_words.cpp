// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/work_text_test.cpp.
#include "sheet/work_words.h"

#include "base/format.h"

namespace plugward {
namespace {

std::string_view heading_of(WorkStage stage) {
  switch (stage) {
    case WorkStage::Before:
      return "Before the work";
    case WorkStage::Isolate:
      return "Isolate";
    case WorkStage::Record:
      return "Photograph and tag";
    case WorkStage::Unplug:
      return "Unplug";
    case WorkStage::Fit:
      return "Fit the board";
    case WorkStage::Jumpers:
      return "Jumpers";
    case WorkStage::Contacts:
      return "Contacts and parts";
    case WorkStage::MeterOff:
      return "Meter, no power anywhere";
    case WorkStage::BareBoard:
      return "Bare board, power on, nothing plugged in";
    case WorkStage::PlugIn:
      return "Plug in";
    case WorkStage::PowerOn:
      return "Check with power";
    case WorkStage::Settings:
      return "Settings";
    case WorkStage::Calibrate:
      return "To calibrate";
    case WorkStage::Close:
      return "Close up";
    case WorkStage::File:
      return "Write down";
  }
  return "";
}

}  // namespace

std::string stage_heading(const WorkStep& step) {
  if (!step.plug_stage) return std::string(heading_of(step.stage));
  return format("{}, stage {}: {}", heading_of(step.stage), static_cast<int>(*step.plug_stage),
                to_word(*step.plug_stage));
}

std::string_view work_sentence() {
  return "A box for every step, a blank for every reading. A reading that is not as expected stops the work "
         "until it is explained. Ohms with the leads of the meter taken off, at 20 to 25 C; colours by their "
         "codes of IEC 60757, over numbered pins or in numbered cavities.";
}

std::string minutes_words(int practised, int first_time) {
  return format("{} min practised, {} min for the first time", practised, first_time);
}

}  // namespace plugward
