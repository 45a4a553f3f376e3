// SPDX-License-Identifier: MIT
#include "sheet/document.h"
