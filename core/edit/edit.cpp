#include "core/edit/edit.h"
