// SPDX-License-Identifier: MIT
#include "draw/key_side.h"
