#pragma once

#include "lists/table.h"

#include <string>
#include <vector>

/// A production as one web page for a telephone on a floor without a network: nothing is asked for
/// from anywhere, and without script everything but the marks of done shots still works.
namespace throwline::lists {

/// A finding in words, numbered as on the floor plan.
struct PageFinding {
    int number = 0;
    /// "error", "caution" or "note".
    std::string severity;
    std::string message;
    /// "shot 2A, beat 2" and where else; empty when it is about no shot or beat.
    std::string where;
    /// The crew's reason for living with it.
    std::string accepted;
};

struct PhonePage {
    std::string title;
    /// Place, date, hours: each a line under the title.
    std::vector<std::string> lines;
    /// Tells this state of the plan's file from others.
    std::string mark;
    /// A whole SVG document; its XML declaration is left out. Its layers have ids "layer-lamps",
    /// "layer-cameras" and so on.
    std::string floor_plan_svg;
    /// Lists "shots", "camera-cards" and "running-order".
    Table shots;
    Table camera_cards;
    Table running_order;
    /// All others, folded up.
    std::vector<Table> lists;
    std::vector<PageFinding> findings;
    std::vector<std::string> cautions;
};

/// Same page, same bytes: no date is in it.
std::string phone_page(const PhonePage& page);

} // namespace throwline::lists
