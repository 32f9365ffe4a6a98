#include "sheet/sheet_kinds.h"

#include "sheet/camera_card.h"
#include "sheet/findings_sheet.h"
#include "sheet/floor_plan.h"
#include "sheet/index_sheet.h"
#include "sheet/lighting_plan.h"
#include "sheet/list_sheet.h"
#include "sheet/recce_sheet.h"
#include "sheet/section.h"
#include "sheet/set_plan.h"
#include "sheet/shot_sheet.h"

#include <array>

namespace throwline::sheet {

namespace {

constexpr std::array kSheets{
    SheetKind{"index", "the production, every sheet of the set, what is wrong, cautions",
              index_alone_jobs},
    SheetKind{"floor-plan", "room, set, people, cameras, lamps and findings, to scale",
              floor_plan_jobs},
    SheetKind{"findings", "every finding with its number, its words and the figure behind it",
              findings_jobs},
    SheetKind{"lighting-plan", "every lamp with its lettering, aims, beams, circuits, to scale",
              lighting_plan_jobs},
    SheetKind{"set-plan", "room and set with sizes, for those who build and set them",
              set_plan_jobs},
    SheetKind{"section", "the room cut along a line, with heights and angles of view and light",
              section_jobs},
    SheetKind{"shots", "a page a shot: plan, frame, figures and findings, to scale", shot_jobs},
    SheetKind{"camera-cards", "a card to hang on each camera, with its shots", camera_card_jobs},
    SheetKind{"lists", "shot list, running order, lamps, power, kit and the other lists",
              list_jobs},
    SheetKind{"recce", "the room as read with the tape: readings, doubts, what to read again",
              recce_jobs},
};

} // namespace

std::span<const SheetKind> all_sheets() {
    return kSheets;
}

} // namespace throwline::sheet
