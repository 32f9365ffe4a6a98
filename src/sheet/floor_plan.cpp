#include "sheet/floor_plan.h"

#include "base/nearest_name.h"
#include "sheet/furniture.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>

namespace throwline::sheet {

namespace {

