#pragma once
#include "core/base/result.h"
#include "core/model/arrangement.h"
