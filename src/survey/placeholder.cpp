#include "survey/adjust.h"
