#include "sheet/sheet_kinds.h"

#include "sheet/floor_plan.h"

#include <array>

namespace throwline::sheet {

namespace {

constexpr std::array kSheets{
    SheetKind{"floor-plan", "room, set, people, cameras, lamps and findings, to scale",
              floor_plan_jobs},
};

} // namespace

std::span<const SheetKind> all_sheets() {
    return kSheets;
}

} // namespace throwline::sheet
