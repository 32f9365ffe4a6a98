#include "lists/lists.h"

#include "lists/each_list.h"

#include <array>

namespace throwline::lists {

namespace {

constexpr std::array kTable{
    ListKind{"shots", "Shot list", "every shot in shooting order, with what it wants and gets",
             shots},
    ListKind{"running-order", "Running order",
             "beat by beat: who walks where, which shots, which lamps burn", running_order},
    ListKind{"camera-cards", "Camera cards",
             "for each camera its shots, with place, height, lens and focus", camera_cards},
    ListKind{"lamps-by-position", "Lamp schedule by position",
             "every lamp as a crew walks along the pipes, walls and stands", lamps_by_position},
    ListKind{"lamps-by-channel", "Lamp schedule by channel",
             "every lamp in the order of the lighting desk", lamps_by_channel},
    ListKind{"lamps-by-circuit", "Lamp schedule by circuit", "which lamps share a circuit",
             lamps_by_circuit},
    ListKind{"power", "Power", "what each circuit carries, and what is left of it", power},
    ListKind{"cables", "Cables", "a cable for each lamp, from the nearest outlet of its circuit",
             cables},
    ListKind{"filters", "Filters to cut", "pieces of each filter, and for which lamps", filters},
    ListKind{"kit", "Kit", "what the plan uses and what the crew has", kit},
    ListKind{"flats", "Flats", "what each run of wall is made of, or could be from stock", flats},
    ListKind{"site-notes", "Site notes", "what the place is like: power, ways out, hours, notes",
             site_notes},
};

} // namespace

std::span<const ListKind> all_lists() {
    return kTable;
}

} // namespace throwline::lists
