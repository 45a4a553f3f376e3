// SPDX-License-Identifier: MIT
// A document as plain text: all that the drawn sheet says, the pictures in words.
//
//   sheet_text(check_document(fitting, advice))          // src/sheet/documents.h
#pragma once

#include <string>

#include "report/layout.h"
#include "sheet/document.h"

namespace plugward {

std::string sheet_text(const sheet::Document&, const TextOptions& = {});

}  // namespace plugward
