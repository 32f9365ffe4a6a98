#include "sheet/floor_drawing.h"

#include "plan/places.h"
#include "sheet/floor_parts.h"
#include "sheet/symbols.h"
#include "sheet/underlay.h"

#include <algorithm>
#include <set>

namespace throwline::sheet {

namespace {

/// Lettering on the screen: words that would find no place near by are left out, and beyond this
/// many nobody reads them.
constexpr std::size_t kMostLabels = 160;
/// What is drawn smaller than this is not lettered.
constexpr double kLeastLettered_mm = 3.0;
/// Things reach over their outlines by coverage and shadows no farther than this on paper.
constexpr double kBeside_mm = 20.0;

const plan::Beat& no_beat() {
    static const plan::Beat kNone;
    return kNone;
}

/// Names that a thing's direction depends on.
void add_looked_at(std::set<std::string>& names, const plan::Aim& aim) {
    if (const auto* named = std::get_if<plan::ThingName>(&aim)) {
        names.insert(named->name);
    }
}

/// What is drawn and what it looks at: enough to raise it.
std::set<std::string> with_looked_at(const FloorQuestion& question) {
    std::set<std::string> names = question.only;
    for (const plan::Lamp& lamp : question.plan.lamps) {
        if (question.only.contains(lamp.id.name)) {
            add_looked_at(names, lamp.aim);
        }
    }
    for (const plan::Shot& shot : question.plan.shots) {
        if (question.only.contains(shot.camera.name)) {
            add_looked_at(names, shot.aim);
            for (const plan::Id<plan::Person>& subject : shot.subjects) {
                names.insert(subject.name);
            }
        }
    }
    for (const auto& [person, mark] : plan::marks_at(question.plan, question.beat)) {
        const auto* named = std::get_if<plan::ThingName>(&mark.faces);
        if (question.only.contains(person.name) && named != nullptr) {
            names.insert(named->name);
        }
    }
    return names;
}

template <class Keep>
void keep_only(plan::Plan& plan, const Keep& keeps) {
    const auto gone = [&](const auto& thing) { return !keeps(thing.id.name); };
    std::erase_if(plan.scenery, gone);
    std::erase_if(plan.people, gone);
    std::erase_if(plan.cameras, gone);
    std::erase_if(plan.lamps, gone);
    std::erase_if(plan.booms, gone);
    std::erase_if(plan.pipes, gone);
    std::erase_if(plan.room.openings, gone);
}

bool meets(const Box& box, std::span<const Vec2> points) {
    if (points.empty()) {
        return false;
    }
    Vec2 low = points.front();
    Vec2 high = points.front();
    for (const Vec2& point : points) {
        low = low.cwiseMin(point);
        high = high.cwiseMax(point);
    }
    return low.x() <= box.right() && high.x() >= box.left && low.y() <= box.bottom()
           && high.y() >= box.top;
}

/// Scenery that is looked at; the rest need not be drawn.
void keep_in_window(plan::Plan& plan, const FloorQuestion& question, const PlanFrame& frame) {
    const Box window = question.window.inset(-kBeside_mm);
    std::erase_if(plan.scenery, [&](const plan::Scenery& piece) {
        return !meets(window, frame.at(plan::footprint(piece, question.catalogue)));
    });
}

plan::Plan drawn_of(const FloorQuestion& question, const PlanFrame& frame) {
    plan::Plan drawn = question.plan;
    if (!question.only.empty()) {
        keep_only(drawn, [&](const std::string& name) { return question.only.contains(name); });
        return drawn;
    }
    if (!question.left_out.empty()) {
        keep_only(drawn,
                  [&](const std::string& name) { return !question.left_out.contains(name); });
    }
    keep_in_window(drawn, question, frame);
    return drawn;
}

/// What decides where things are and which way they look.
plan::Plan raised_plan(const FloorQuestion& question, const plan::Plan& drawn) {
    if (question.only.empty()) {
        plan::Plan plan = question.plan;
        // Far scenery has no say in how anything near is drawn; platforms lift what is on them, but
        // from above that is not seen.
        plan.scenery = drawn.scenery;
        return plan;
    }
    plan::Plan plan = question.plan;
    const std::set<std::string> names = with_looked_at(question);
    keep_only(plan, [&](const std::string& name) { return names.contains(name); });
    return plan;
}

/// Drawn things only, since some marks go by the stage.
void keep_drawn(stage::Stage& stage, const plan::Plan& drawn) {
    std::set<std::string> names;
    const auto add = [&](const auto& things) {
        for (const auto& thing : things) {
            names.insert(thing.id.name);
        }
    };
    add(drawn.people);
    add(drawn.cameras);
    add(drawn.lamps);
    add(drawn.booms);
    std::erase_if(stage.figures, [&](const auto& f) { return !names.contains(f.person.name); });
    std::erase_if(stage.cameras, [&](const auto& c) { return !names.contains(c.camera.name); });
    std::erase_if(stage.lamps, [&](const auto& l) { return !names.contains(l.lamp.name); });
    std::erase_if(stage.booms, [&](const auto& b) { return !names.contains(b.boom.name); });
}

/// Shots that cameras are at now, that of now first.
std::vector<plan::Id<plan::Shot>> shots_now(const FloorQuestion& question,
                                            const plan::Plan& drawn) {
    std::vector<plan::Id<plan::Shot>> shots;
    if (const plan::Shot* shot = plan::find(question.plan, question.shot);
        shot != nullptr && plan::find(drawn, shot->camera) != nullptr) {
        shots.push_back(shot->id);
    }
    for (const plan::Camera& camera : drawn.cameras) {
        const auto place = plan::camera_place(question.plan, camera, question.beat, question.shot);
        if (place && !place->shot.empty()
            && std::find(shots.begin(), shots.end(), place->shot) == shots.end()) {
            shots.push_back(place->shot);
        }
    }
    return shots;
}

void add_scenes(FloorScene& scene) {
    const FloorQuestion& question = scene.question;
    const plan::Beat* beat = plan::find(question.plan, question.beat);
    const plan::Plan raised = raised_plan(question, scene.drawn);
    scene.stage =
        stage::raise_without_rays(raised, question.catalogue, question.beat, question.shot);
    // Their meshes are of no use from above.
    scene.stage.solids.clear();
    scene.beats.resize(1);
    scene.beats.front().beat = beat == nullptr ? &no_beat() : beat;
    for (const plan::Id<plan::Shot>& id : shots_now(question, scene.drawn)) {
        checks::ShotScene& shot = scene.shots.emplace_back();
        shot.shot = plan::find(question.plan, id);
        shot.beat = scene.beats.front().beat;
        shot.view = stage::view_of(raised, question.catalogue, scene.stage, *shot.shot);
    }
    keep_drawn(scene.stage, scene.drawn);
    scene.beats.front().stage = scene.stage;
    for (checks::ShotScene& shot : scene.shots) {
        shot.stage = scene.stage;
    }
    scene.selection.beats.push_back(&scene.beats.front());
    for (const checks::ShotScene& shot : scene.shots) {
        scene.selection.shots.push_back(&shot);
    }
}

/// The shot of now alone takes in what is washed; without one, what all cameras take in.
Selection covered(const FloorScene& scene) {
    Selection selection = scene.selection;
    if (!scene.question.shot.empty() && scene.shots.size() > 1) {
        selection.shots.resize(1);
    }
    return selection;
}

void draw_beneath(Board& board, const FloorScene& scene) {
    const FloorQuestion& question = scene.question;
    const Overlays& overlays = question.overlays;
    const bool has_room = question.plan.room.outline.size() >= 3 && question.only.empty();
    if (overlays.underlay && question.plan.underlay && question.underlay.pixels != nullptr
        && question.only.empty()) {
        draw_underlay(board, *question.plan.underlay, question.underlay, question.window);
    }
    if (overlays.ground && has_room) {
        draw_ground(board, scene.drawn);
    }
    if (overlays.levels && question.levels != nullptr && question.only.empty()) {
        draw_levels(board, scene);
    }
    if (has_room) {
        draw_room(board, scene.drawn);
    }
}

void draw_things(Board& board, const FloorScene& scene) {
    const FloorQuestion& question = scene.question;
    const Overlays& overlays = question.overlays;
    const plan::Plan& drawn = scene.drawn;
    const bool has_room = question.plan.room.outline.size() >= 3;
    const std::vector<stage::PlacedLamp> lamps = lamps_shown(scene.stage, scene.selection);
    draw_scenery(board, drawn, question.catalogue);
    if (overlays.pools && has_room) {
        draw_pools(board, drawn, lamps);
    }
    if (overlays.coverage && has_room) {
        draw_coverage(board, drawn, covered(scene));
    }
    draw_people(board, drawn, scene.selection);
    draw_cameras(board, drawn, scene.selection);
    draw_lamps(board, drawn, lamps);
    draw_booms(board, drawn, scene.selection);
    if (question.only.empty()) {
        draw_outlets(board, drawn);
    }
}

void draw_overlays(Board& board, const FloorScene& scene) {
    const Overlays& overlays = scene.question.overlays;
    if (overlays.focus) {
        draw_focus_band(board, scene);
    }
    if (overlays.beams) {
        draw_beams(board, scene);
    }
    if (!scene.question.only.empty()) {
        return;
    }
    if (overlays.sight_lines) {
        draw_sight_lines(board, scene);
    }
    if (overlays.circuits) {
        draw_circuits(board, scene);
    }
    if (overlays.ways_out) {
        draw_ways_out(board, scene);
    }
    if (overlays.findings) {
        draw_findings_now(board, scene);
    }
}

void draw_sizes(Board& board, const FloorScene& scene) {
    const plan::Plan& plan = scene.question.plan;
    if (plan.room.outline.size() < 3 || !scene.question.only.empty()
        || !scene.question.overlays.sizes) {
        return;
    }
    Extent extent;
    for (const Vec2& corner : outer_outline(plan.room)) {
        extent.include(corner);
    }
    letter_grid(board, plan, extent);
    draw_overall_sizes(board, plan, extent);
}

/// The words worth setting, of those that are looked at.
std::vector<LabelRequest> worth_lettering(const Board& board) {
    std::vector<LabelRequest> labels;
    for (const LabelRequest& label : board.labels) {
        const bool is_large =
            2.0 * label.half_mm.maxCoeff() >= kLeastLettered_mm || label.half_mm.maxCoeff() <= 0.6;
        if (board.shows(label.anchor) && is_large && labels.size() < kMostLabels) {
            labels.push_back(label);
        }
    }
    return labels;
}

void letter(Board& board, const Box& in_sight) {
    KeyList no_key{0.0, 0.0, board.field.measure()};
    Marks& marks = board.layers[static_cast<std::size_t>(PlanLayer::lettering)];
    std::vector<LabelRequest> labels = worth_lettering(board);
    in_sight_first(
        board, in_sight, labels, [](const LabelRequest& label) { return label.anchor; },
        [&](std::span<LabelRequest> some) { set_lettering(some, board.field, no_key, marks); });
}

} // namespace

std::optional<Drawing> floor_drawing(const FloorQuestion& question, const TextMeasure& measure,
                                     const std::stop_token& stop) {
    PlanFrame frame;
    frame.origin_mm = Vec2::Zero();
    frame.mm_per_m = question.mm_per_m;
    FloorScene scene{question, drawn_of(question, frame), {}, {}, {}, {}};
    add_scenes(scene);
    if (stop.stop_requested()) {
        return std::nullopt;
    }
    LabelField field{question.window, measure};
    Board board{frame, field};
    board.window = question.window;
    draw_beneath(board, scene);
    draw_things(board, scene);
    draw_overlays(board, scene);
    draw_sizes(board, scene);
    if (stop.stop_requested()) {
        return std::nullopt;
    }
    if (question.overlays.lettering) {
        letter(board, question.in_sight.value_or(question.window));
    }
    Drawing drawing;
    drawing.width_mm = question.window.width;
    drawing.height_mm = question.window.height;
    for (int i = 0; i < kPlanLayers; ++i) {
        drawing.layers.push_back({std::string{name_of(static_cast<PlanLayer>(i))},
                                  std::move(board.layers[static_cast<std::size_t>(i)])});
    }
    return drawing;
}

} // namespace throwline::sheet
