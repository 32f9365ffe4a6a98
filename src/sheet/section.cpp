#include "sheet/section.h"

#include "base/length_text.h"
#include "base/words.h"
#include "checks/cautions.h"
#include "sheet/panel_writer.h"
#include "sheet/section_heights.h"
#include "sheet/section_lines.h"
#include "sheet/section_room.h"
#include "sheet/silhouettes.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace throwline::sheet {

namespace {

constexpr Surround kAround{66.0, 24.0, 14.0, 28.0};

Ink ink_of(const Silhouette& shape) {
    switch (shape.kind) {
    case stage::OwnerKind::room:
        return Ink::built;
    case stage::OwnerKind::scenery:
        return shape.part == stage::Part::flat_front || shape.part == stage::Part::flat_back
                   ? Ink::built
                   : Ink::standing;
    case stage::OwnerKind::cast:
    case stage::OwnerKind::crew:
        return Ink::people;
    case stage::OwnerKind::camera:
        return Ink::camera;
    case stage::OwnerKind::lamp:
        return Ink::lamp;
    case stage::OwnerKind::boom:
        return Ink::sound;
    }
    return Ink::standing;
}

/// How strongly the inside is tinted, so that people and cameras stand out of the set.
double tint_of(const Silhouette& shape) {
    switch (shape.kind) {
    case stage::OwnerKind::room:
    case stage::OwnerKind::scenery:
        return shape.part == stage::Part::flat_back ? 0.08 : 0.0;
    case stage::OwnerKind::cast:
    case stage::OwnerKind::crew:
        return 0.22;
    case stage::OwnerKind::camera:
    case stage::OwnerKind::lamp:
    case stage::OwnerKind::boom:
        return 0.3;
    }
    return 0.0;
}

void draw_silhouette(Board& board, const Silhouette& shape) {
    const Ink ink = ink_of(shape);
    std::vector<Vec2> corners = board.frame.at(shape.outline);
    const Pen edge = pen(ink, kFine_mm);
    if (corners.size() == 2) {
        board.add(PlanLayer::built, line(corners[0], corners[1], edge), Crowd::firm);
        return;
    }
    const double tint = tint_of(shape);
    board.add(PlanLayer::built, outline(corners, no_pen(), solid(Ink::paper)));
    board.add(PlanLayer::built,
              outline(std::move(corners), edge, tint > 0.0 ? solid(ink, tint) : Fill{}),
              shape.kind == stage::OwnerKind::scenery ? Crowd::light : Crowd::never);
}

/// Walls and things, each hiding what lies beyond.
void draw_ahead(Board& board, const SectionCut& cut, const plan::Room& room) {
    const std::vector<WallAhead> walls = walls_ahead(cut, room);
    const std::vector<Silhouette> shapes = silhouettes(cut);
    auto wall = walls.begin();
    for (const Silhouette& shape : shapes) {
        // A wall seen from inside has everything of its room before it.
        while (wall != walls.end() && (wall->faces_cut || wall->ahead_m >= shape.ahead_m)) {
            draw_wall_ahead(board, cut, room, *wall++);
        }
        draw_silhouette(board, shape);
    }
    while (wall != walls.end()) {
        draw_wall_ahead(board, cut, room, *wall++);
    }
}

void draw_cut_pieces(Board& board, const SectionCut& cut) {
    for (const CutPiece& cut_piece : cut_pieces(cut)) {
        const stage::PlacedScenery& piece = *cut_piece.piece;
        const auto& [from_m, to_m] = cut_piece.stretch;
        std::vector<Vec2> corners{board.frame.at(Vec2{from_m, piece.bottom_z_m}),
                                  board.frame.at(Vec2{to_m, piece.bottom_z_m}),
                                  board.frame.at(Vec2{to_m, piece.top_z_m}),
                                  board.frame.at(Vec2{from_m, piece.top_z_m})};
        constexpr double kThin_m = 0.2;
        const bool is_thin = to_m - from_m < kThin_m;
        board.add(PlanLayer::built,
                  outline(std::move(corners), pen(Ink::built, kBuilt_mm),
                          is_thin ? solid(Ink::built, 0.6) : Fill{}),
                  is_thin ? Crowd::never : Crowd::firm);
    }
}

/// Names of people, cameras, booms and scenery on what is drawn of them.
void label_things(Board& board, const SectionCut& cut) {
    const std::vector<Silhouette> shapes = silhouettes(cut);
    for (std::size_t owner = 0; owner < cut.stage->owners.size(); ++owner) {
        Extent extent;
        stage::OwnerKind kind = stage::OwnerKind::room;
        for (const Silhouette& shape : shapes) {
            if (shape.owner == static_cast<int>(owner)) {
                kind = shape.kind;
                for (const Vec2& corner : shape.outline) {
                    extent.include(board.frame.at(corner));
                }
            }
        }
        if (extent.empty || kind == stage::OwnerKind::lamp) {
            continue;
        }
        LabelRequest label;
        label.anchor = (extent.low + extent.high) / 2.0;
        label.half_mm = extent.size() / 2.0;
        label.inside = kind == stage::OwnerKind::scenery;
        label.may_drop = kind == stage::OwnerKind::scenery;
        label.lines = {{cut.stage->owners[owner].name, kind != stage::OwnerKind::scenery}};
        board.labels.push_back(label);
    }
}

void draw_grid(Board& board, const SectionCut& cut, const plan::Plan& plan) {
    const auto draw = [&](double height_m, double from_m, double to_m) {
        board.add(PlanLayer::built,
                  line(board.frame.at(Vec2{from_m, height_m}), board.frame.at(Vec2{to_m, height_m}),
                       pen(Ink::power, kStanding_mm, LinePattern::dash_dot, 0.8)),
                  Crowd::firm);
    };
    if (plan.grid) {
        for (const CutStretch& stretch : cut.inside) {
            draw(plan.grid->height.m(), stretch.from_m, stretch.to_m);
        }
    }
    for (const plan::Pipe& pipe : plan.pipes) {
        if (std::max(cut.ahead_m(pipe.from), cut.ahead_m(pipe.to)) >= 0.0) {
            draw(pipe.height.m(), cut.along_m(pipe.from), cut.along_m(pipe.to));
        }
    }
}

Extent extent_of_section(const SectionCut& cut, const plan::Room& room) {
    Extent extent;
    extent.include({cut.inside.front().from_m, 0.0});
    extent.include({cut.inside.back().to_m, room_top_m(room)});
    for (const WallCut& wall : walls_cut(cut, room)) {
        extent.include({wall.stretch.from_m, 0.0});
        extent.include({wall.stretch.to_m, 0.0});
    }
    for (const Silhouette& shape : silhouettes(cut)) {
        for (const Vec2& corner : shape.outline) {
            extent.include(corner);
        }
    }
    return extent;
}

void draw_section(Board& board, const SheetInput& input, const SectionCut& cut,
                  const Extent& extent) {
    const plan::Plan& plan = *input.analysis.plan;
    draw_ahead(board, cut, plan.room);
    draw_grid(board, cut, plan);
    draw_room_cut(board, cut, plan.room);
    draw_cut_pieces(board, cut);
    draw_side_view(board, cut, plan.room);
    draw_beams(board, cut, plan);
    draw_levels(board, levels_of(cut, plan, input.catalogue), extent.low.x(), plan.units);
    draw_height_chain(board, cut, plan, extent.high.x());
    draw_foot_chain(board, cut, plan.units);
    label_things(board, cut);
}

/// The room from above with the cut and the way it is looked at.
void draw_key_plan(Marks& marks, const Box& box, const SectionCut& cut, const plan::Plan& plan) {
    Extent extent;
    for (const Vec2& corner : plan.room.outline) {
        extent.include(corner);
    }
    PlanFrame frame;
    constexpr double kAir_mm = 7.0;
    frame.mm_per_m = std::min((box.width - 2.0 * kAir_mm) / std::max(0.1, extent.size().x()),
                              (box.height - 2.0 * kAir_mm) / std::max(0.1, extent.size().y()));
    const Vec2 middle = (extent.low + extent.high) / 2.0;
    frame.origin_mm = box.centre() - Vec2{frame.mm(middle.x()), -frame.mm(middle.y())};
    marks.emplace_back(outline(frame.at(plan.room.outline), pen(Ink::built, kStanding_mm)));
    for (const stage::PlacedScenery& piece : cut.stage->scenery) {
        marks.emplace_back(outline(frame.at(piece.outline),
                                   pen(Ink::standing, kHair_mm, LinePattern::solid, 0.7)));
    }
    const double over_m = 3.5 / frame.mm_per_m;
    const Vec2 from = frame.at(cut.place(cut.inside.front().from_m - over_m));
    const Vec2 to = frame.at(cut.place(cut.inside.back().to_m + over_m));
    marks.emplace_back(line(from, to, pen(Ink::lettering, kFine_mm, LinePattern::dash_dot)));
    const Vec2 ahead = paper_direction(angle_of(cut.ahead));
    for (const Vec2& end : {from, to}) {
        const Vec2 tip = end + ahead * 4.0;
        const Vec2 wing = turned_left(ahead) * 1.0;
        marks.emplace_back(line(end, tip, pen(Ink::lettering, kStanding_mm)));
        marks.emplace_back(outline({tip, tip - ahead * 2.2 + wing, tip - ahead * 2.2 - wing},
                                   no_pen(), solid(Ink::lettering)));
    }
    if (cut.shot != nullptr) {
        marks.emplace_back(
            Circle{frame.at(cut.origin), 1.1, pen(Ink::camera, kFine_mm), solid(Ink::camera, 0.4)});
    }
}

/// What the panel of a section tells.
class SectionPanel {
  public:
    SectionPanel(const SheetInput& input, const SectionCut& cut, Marks& marks, const Box& box)
        : plan_{*input.analysis.plan}, cut_{cut}, marks_{marks},
          writer_{marks, box, input.measure} {}

    void write() {
        constexpr double kKeyPlan_mm = 46.0;
        writer_.heading(cut_.name);
        if (const auto box = writer_.room(kKeyPlan_mm)) {
            draw_key_plan(marks_, *box, cut_, plan_);
        }
        writer_.words("Looks the way of the arrows; goes on to both sides as far as the room does. "
                      "True to scale along the line and in height.");
        write_shot();
        write_lamps();
        write_not_shown();
    }

  private:
    void write_shot() {
        const auto view = side_view(cut_);
        if (!view) {
            return;
        }
        writer_.gap();
        writer_.heading(capitalised(with_kind("shot", cut_.shot->shot->id.name)));
        writer_.words(fmt::format("{}: lens {} up, {}; takes in {} upright, axis {} {}",
                                  capitalised(with_kind("camera", cut_.shot->shot->camera.name)),
                                  shown(Length::metres(view->lens.y()), plan_.units),
                                  focal_text(cut_.shot->view->focal),
                                  degrees_text(view->upper - view->lower),
                                  degrees_text(Angle::radians(std::abs(view->axis.rad()))),
                                  view->axis.rad() < 0.0 ? "down" : "up"));
        constexpr double kTurned_deg = 0.05;
        if (std::abs(view->turned.deg()) > kTurned_deg) {
            writer_.words(fmt::format("Its view is turned {} into the cut, so that its angles are "
                                      "true.",
                                      degrees_text(Angle::radians(std::abs(view->turned.rad())))));
        }
    }

    void write_lamps() {
        std::vector<std::string> lines;
        for (const stage::PlacedLamp& lamp : cut_.stage->lamps) {
            const auto beam = side_beam(cut_, plan_.room, lamp);
            if (beam && is_shown(cut_, lamp)) {
                lines.push_back(fmt::format("{}: {} high, {}, {:.0f}° off the cut",
                                            capitalised(with_kind("lamp", lamp.lamp.name)),
                                            shown(Length::metres(lamp.point.z()), plan_.units),
                                            beam_text(*beam, plan_.units),
                                            beam->off_the_cut.deg()));
            }
        }
        if (lines.empty()) {
            return;
        }
        writer_.gap();
        if (!writer_.heading("Lamps, seen from what they light")) {
            return;
        }
        for (std::size_t i = 0; i < lines.size(); ++i) {
            if (!writer_.words(lines[i])) {
                has_room_ = false;
                return writer_.left_out(lines.size() - i, "lamps");
            }
        }
    }

    void write_not_shown() {
        std::vector<std::string> names;
        for (const auto kind : {stage::OwnerKind::cast, stage::OwnerKind::crew,
                                stage::OwnerKind::camera, stage::OwnerKind::boom}) {
            const auto found = not_shown(cut_, kind);
            names.insert(names.end(), found.begin(), found.end());
        }
        for (const std::string& lamp : not_shown(cut_, stage::OwnerKind::lamp)) {
            names.push_back(with_kind("lamp", lamp));
        }
        if (has_room_ && !names.empty()) {
            writer_.gap();
            writer_.words(fmt::format("Not shown, behind the cut{}: {}.",
                                      std::isfinite(cut_.depth_m) ? " or beyond its depth" : "",
                                      listed(names)));
        }
    }

    const plan::Plan& plan_;
    const SectionCut& cut_;
    Marks& marks_;
    PanelWriter writer_;
    bool has_room_ = true;
};

} // namespace

Result<Drawing> section_sheet(const SheetInput& input, const SheetOptions& options) {
    stage::Stage bare;
    const Result<SectionCut> cut = section_cut(input, options, bare);
    if (!cut) {
        return tl::unexpected{cut.error()};
    }
    const plan::Plan& plan = *input.analysis.plan;
    ScaledSheet sheet;
    sheet.extent = extent_of_section(*cut, plan.room);
    sheet.surround = kAround;
    sheet.draw = [&](Board& board) { draw_section(board, input, *cut, sheet.extent); };
    sheet.panel = [&](Marks& marks, const Box& box) {
        SectionPanel{input, *cut, marks, box}.write();
    };
    sheet.cautions = checks::cautions_for(plan);
    sheet.with_legend = false;
    sheet.with_north = false;
    return composed(input, options, sheet);
}

Result<std::vector<SheetJob>> section_jobs(const SheetInput& input, const SheetOptions& options) {
    if (input.analysis.plan->room.outline.size() < 3) {
        return std::vector<SheetJob>{};
    }
    stage::Stage bare;
    const Result<SectionCut> cut = section_cut(input, options, bare);
    if (!cut) {
        return tl::unexpected{cut.error()};
    }
    return std::vector<SheetJob>{
        {cut->name, [input](const SheetOptions& wanted) { return section_sheet(input, wanted); }}};
}

} // namespace throwline::sheet
