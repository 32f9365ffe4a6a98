#include "sheet/set_plan.h"

#include "base/length_text.h"
#include "checks/cautions.h"
#include "plan/places.h"
#include "sheet/list_sheet.h"
#include "sheet/panel_writer.h"
#include "sheet/set_sizes.h"
#include "sheet/symbols.h"
#include "sheet/table_layout.h"
#include "sheet/text_wrap.h"

#include <array>
#include <fmt/format.h>
#include <iterator>

namespace throwline::sheet {

namespace {

/// Two rows of sizes with their lettering.
constexpr double kSizesAround_mm = kFirstRow_mm + kRowPitch_mm + kLetter_mm + 5.0;

/// The plan without what hangs overhead, for its ground.
plan::Plan without_pipes(plan::Plan plan) {
    plan.grid.reset();
    plan.pipes.clear();
    return plan;
}

void draw_set(Board& board, const SheetInput& input, const SheetOptions& options,
              const RoomDatum& datum) {
    const plan::Plan& plan = *input.analysis.plan;
    if (options.ground) {
        draw_ground(board, without_pipes(plan));
    }
    draw_room(board, plan);
    draw_scenery(board, plan, input.catalogue);
    draw_datum(board, datum);
    draw_set_sizes(board, plan, input.catalogue, datum);
    // Nobody can set what has no name.
    for (LabelRequest& label : board.labels) {
        label.may_drop = false;
    }
}

std::string opening_text(const plan::Opening& opening, UnitSystem units) {
    std::string text = fmt::format("{} wide", tape_text(opening.width, units));
    if (opening.sill.m() > 0.0) {
        text += fmt::format(", sill {}", tape_text(opening.sill, units));
    }
    return fmt::format("{}, head {}", text, tape_text(opening.head, units));
}

std::string wall_names(const plan::Room& room, const RoomDatum& datum) {
    const auto count = static_cast<int>(room.outline.size());
    const int corner = static_cast<int>(datum.corner);
    return fmt::format("walls {} and {}", plan::number_of_wall((corner + count - 1) % count),
                       plan::number_of_wall(corner));
}

/// With more pieces than this the panel has no room for them, and they get a page of their own.
constexpr std::size_t kMostInPanel = 24;

bool has_list_page(const plan::Plan& plan) {
    return plan.scenery.size() > kMostInPanel;
}

/// What the panel of a set plan tells, as far as it has room.
class SetPanel {
  public:
    SetPanel(const SheetInput& input, const RoomDatum& datum, Marks& marks, const Box& box)
        : input_{input}, plan_{*input.analysis.plan}, datum_{datum},
          writer_{marks, box, input.measure} {}

    void write() {
        write_rules();
        if (has_list_page(plan_)) {
            writer_.words("Every piece with its size and place: on the next sheet.");
            write_openings();
        } else if (write_built() && write_openings()) {
            write_furniture();
        }
    }

  private:
    void write_rules() {
        writer_.heading("How to read the sizes");
        writer_.words(fmt::format("To the nearest {}; the parts of a chain are rounded so that "
                                  "they add up. Walls between inside faces.",
                                  tape_step(plan_.units).words));
        writer_.words(fmt::format("x and y from the corner of {}, square off the walls: to dressed "
                                  "faces of flats, to near sides, else to the middle.",
                                  wall_names(plan_.room, datum_)));
    }

    std::string built_text(const plan::Scenery& piece) const {
        return fmt::format(
            "{}: {}, {}; {}", piece.id.name, size_text(piece, input_.catalogue, plan_.units),
            height_text(piece, input_.catalogue, plan_.units),
            place_text(place_of_piece(datum_, piece, input_.catalogue), plan_.units));
    }

    std::vector<const plan::Scenery*> pieces(bool built) const {
        std::vector<const plan::Scenery*> found;
        for (const plan::Scenery& piece : plan_.scenery) {
            if (is_built(plan_, piece, input_.catalogue) == built) {
                found.push_back(&piece);
            }
        }
        return found;
    }

    /// Sets as many things under a heading as there is room for; false when some were left out.
    template <class Thing, class Set>
    bool list(const std::string& heading, const std::vector<Thing>& things, const std::string& what,
              const Set& set) {
        if (things.empty()) {
            return true;
        }
        writer_.gap();
        if (!writer_.heading(heading)) {
            return false;
        }
        for (std::size_t i = 0; i < things.size(); ++i) {
            if (!set(things[i])) {
                writer_.left_out(things.size() - i, what);
                return false;
            }
        }
        return true;
    }

    bool write_built() {
        return list("Set", pieces(true), "pieces", [this](const plan::Scenery* piece) {
            return writer_.words(built_text(*piece));
        });
    }

    bool write_openings() {
        return list("Doors and windows", plan_.room.openings, "doors and windows",
                    [this](const plan::Opening& opening) {
                        return writer_.words(fmt::format("{}: {}", opening.id.name,
                                                         opening_text(opening, plan_.units)));
                    });
    }

    /// A line a piece: name, height, x and y.
    void write_furniture() {
        const double figure_mm = input_.measure.width_mm(
            tape_text(Length::metres(99.895), plan_.units), kLetter_mm, false);
        const double y_mm = writer_.width_mm();
        const double x_mm = y_mm - figure_mm - 2.5;
        const double name_mm = x_mm - figure_mm - 2.5;
        bool has_columns = false;
        list("Furniture and dressing", pieces(false), "pieces", [&](const plan::Scenery* piece) {
            if (!has_columns) {
                has_columns = true;
                writer_.row(
                    std::array{PanelCell{"x", x_mm, true, true}, PanelCell{"y", y_mm, true, true}});
            }
            return writer_.row(furniture_cells(*piece, name_mm, x_mm, y_mm));
        });
    }

    std::array<PanelCell, 3> furniture_cells(const plan::Scenery& piece, double name_mm,
                                             double x_mm, double y_mm) const {
        const PiecePlace place = place_of_piece(datum_, piece, input_.catalogue);
        const std::string name =
            place.is_middle ? fmt::format("{}, middle", piece.id.name) : piece.id.name;
        return {PanelCell{cut_to_width(name, name_mm, kLetter_mm, false, input_.measure)},
                PanelCell{tape_text(Length::metres(place.low.x()), plan_.units), x_mm, true},
                PanelCell{tape_text(Length::metres(place.low.y()), plan_.units), y_mm, true}};
    }

    const SheetInput& input_;
    const plan::Plan& plan_;
    const RoomDatum& datum_;
    PanelWriter writer_;
};

Extent extent_of_set(const plan::Plan& plan, const catalogue::Catalogue& catalogue) {
    Extent extent;
    for (const Vec2& corner : outer_outline(plan.room)) {
        extent.include(corner);
    }
    for (const plan::Opening& opening : plan.room.openings) {
        if (const auto end = door_leaf_end(plan.room, opening)) {
            extent.include(*end);
        }
    }
    for (const plan::Scenery& piece : plan.scenery) {
        for (const Vec2& corner : plan::footprint(piece, catalogue)) {
            extent.include(corner);
        }
    }
    return extent;
}

bool has_room(const plan::Plan& plan) {
    return plan.room.outline.size() >= 3;
}

} // namespace

Result<Drawing> set_plan_sheet(const SheetInput& input, const SheetOptions& options) {
    const plan::Plan& plan = *input.analysis.plan;
    if (!has_room(plan)) {
        return failure("the plan has no room to draw");
    }
    const RoomDatum datum = datum_of(plan.room);
    ScaledSheet sheet;
    sheet.extent = extent_of_set(plan, input.catalogue);
    sheet.surround = {kSizesAround_mm, kSizesAround_mm, kSizesAround_mm, kSizesAround_mm};
    sheet.draw = [&](Board& board) { draw_set(board, input, options, datum); };
    sheet.panel = [&](Marks& marks, const Box& box) { SetPanel{input, datum, marks, box}.write(); };
    sheet.cautions = checks::cautions_for(plan);
    return composed(input, options, sheet);
}

Result<std::vector<SheetJob>> set_plan_jobs(const SheetInput& input, const SheetOptions& options) {
    const plan::Plan& plan = *input.analysis.plan;
    std::vector<SheetJob> jobs;
    if (!has_room(plan)) {
        return jobs;
    }
    jobs.push_back(
        {"Set plan", [input](const SheetOptions& named) { return set_plan_sheet(input, named); }});
    if (has_list_page(plan)) {
        auto pages = table_jobs(
            input, options,
            without_empty_columns(set_pieces_table(plan, input.catalogue, datum_of(plan.room))));
        if (!pages) {
            return pages;
        }
        std::move(pages->begin(), pages->end(), std::back_inserter(jobs));
    }
    return jobs;
}

} // namespace throwline::sheet
