// SPDX-License-Identifier: MIT
// On which side a key is drawn is also told in words: sheet/key_side.h.
#pragma once

#include "sheet/key_side.h"
