#include "sheet/floor_plan.h"

#include "base/nearest_name.h"
#include "sheet/furniture.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>

namespace throwline::sheet {

namespace {

/// For the upright check ruler at the left edge of the field.
constexpr double kGutter_mm = 6.0;

tl::unexpected<Error> no_such(std::string_view kind, const std::string& name,
                              const std::vector<std::string>& names) {
    const std::string nearest = nearest_name(name, names);
    return failure(
        fmt::format("there is no {} \"{}\"{}", kind, name,
                    nearest.empty() ? std::string{} : fmt::format("; nearest is \"{}\"", nearest)));
}

template <class Things, class NameOf>
std::vector<std::string> names_of(const Things& things, NameOf name_of_thing) {
    std::vector<std::string> names;
    for (const auto& thing : things) {
        names.push_back(name_of_thing(thing));
    }
    return names;
}

Result<catalogue::Paper> paper_of(const SheetOptions& options,
                                  const catalogue::Catalogue& catalogue) {
    if (options.own_paper) {
        return *options.own_paper;
    }
    if (const catalogue::Paper* paper = catalogue.paper(options.paper)) {
        return *paper;
    }
    return no_such("paper", options.paper,
                   names_of(catalogue.papers, [](const auto& paper) { return paper.name; }));
}

Result<void> check_selection(const plan::Plan& plan, const SheetOptions& options) {
    for (const plan::Id<plan::Shot>& shot : options.shots) {
        if (plan::find(plan, shot) == nullptr) {
            return no_such("shot", shot.name,
                           names_of(plan.shots, [](const auto& other) { return other.id.name; }));
        }
    }
    if (!options.beat.empty() && plan::find(plan, options.beat) == nullptr) {
        return no_such("beat", options.beat.name,
                       names_of(plan.beats, [](const auto& other) { return other.id.name; }));
    }
    return {};
}

bool wants_shot(const SheetOptions& options, const plan::Id<plan::Shot>& shot) {
    return options.shots.empty()
           || std::find(options.shots.begin(), options.shots.end(), shot) != options.shots.end();
}

bool wants_beat(const SheetOptions& options, const plan::Id<plan::Beat>& beat) {
    return options.beat.empty() || options.beat == beat;
}

Selection selected(const checks::Analysis& analysis, const SheetOptions& options) {
    Selection selection;
    std::set<std::string> beats_of_shots;
    for (const checks::ShotScene& scene : analysis.shots) {
        if (wants_shot(options, scene.shot->id) && wants_beat(options, scene.beat->id)) {
            selection.shots.push_back(&scene);
            beats_of_shots.insert(scene.beat->id.name);
        }
    }
    for (const checks::BeatScene& scene : analysis.beats) {
        if (wants_beat(options, scene.beat->id)
            && (options.shots.empty() || beats_of_shots.contains(scene.beat->id.name))) {
            selection.beats.push_back(&scene);
        }
    }
    return selection;
}

std::vector<const checks::Finding*> selected_findings(const checks::Analysis& analysis,
                                                      const SheetOptions& options) {
    std::vector<const checks::Finding*> findings;
    for (const checks::Finding& finding : analysis.findings) {
        if (options.findings && (finding.shot.empty() || wants_shot(options, finding.shot))
            && (finding.beat.empty() || wants_beat(options, finding.beat))) {
            findings.push_back(&finding);
        }
    }
    return findings;
}

/// Everything that stands on the plan, so that nothing is drawn off the sheet.
Extent extent_of(const plan::Plan& plan, const stage::Stage& stage, const Selection& selection) {
    Extent extent;
    for (const Vec2& corner : outer_outline(plan.room)) {
        extent.include(corner);
    }
    for (const plan::Opening& opening : plan.room.openings) {
        if (const auto end = door_leaf_end(plan.room, opening)) {
            extent.include(*end);
        }
    }
    for (const stage::PlacedScenery& piece : stage.scenery) {
        for (const Vec2& corner : piece.outline) {
            extent.include(corner);
        }
    }
    for (const stage::PlacedLamp& lamp : stage.lamps) {
        extent.include(floor_of(lamp.point));
    }
    for (const checks::BeatScene* scene : selection.beats) {
        for (const stage::Figure& figure : scene->stage.figures) {
            extent.include(floor_of(figure.base));
        }
    }
    for (const checks::ShotScene* scene : selection.shots) {
        extent.include(scene->shot->at);
    }
    return extent;
}

/// Every lamp as it stands in the first beat shown in which it burns, else in the first.
std::vector<stage::PlacedLamp> lamps_of(const stage::Stage& stage, const Selection& selection) {
    std::vector<stage::PlacedLamp> lamps = stage.lamps;
    for (stage::PlacedLamp& lamp : lamps) {
        for (const checks::BeatScene* scene : selection.beats) {
            const stage::PlacedLamp* other = scene->stage.lamp(lamp.lamp);
            if (lamp.beam.peak_cd <= 0.0 && other != nullptr && other->beam.peak_cd > 0.0) {
                lamp = *other;
            }
        }
    }
    return lamps;
}

/// A sheet that the plan fits, divided, with the plan's place on it.
struct Composition {
    Page page;
    PlanFrame frame;
    ScaleChoice choice;
    catalogue::Paper paper;
};

PageNeeds needs_of(const plan::Plan& plan, const catalogue::Paper& paper, Orientation orientation,
                   const SheetOptions& options, const TextMeasure& measure) {
    const double sheet_width_mm = orientation == Orientation::landscape
                                      ? std::max(paper.width.mm(), paper.height.mm())
                                      : std::min(paper.width.mm(), paper.height.mm());
    PageNeeds needs;
    needs.margin_mm = options.margin.mm();
    const double strip_width_mm =
        sheet_width_mm - 2.0 * needs.margin_mm
        - (orientation == Orientation::landscape
               ? column_width_mm(sheet_width_mm, orientation, needs.margin_mm)
               : 0.0);
    needs.strip_height_mm =
        kRulersHeight_mm + cautions_height_mm(cautions_for(plan), strip_width_mm, measure);
    return needs;
}

ScaleQuestion question_of(const plan::Plan& plan, const Extent& extent,
                          const catalogue::Paper& paper, Orientation orientation,
                          const PageNeeds& needs, const SheetOptions& options) {
    const Page page = divided_page(paper, orientation, needs);
    ScaleQuestion question;
    question.width = Length::metres(extent.size().x());
    question.depth = Length::metres(extent.size().y());
    question.paper = paper;
    question.margin = options.margin;
    question.column = Length::millimetres(page.frame.width - page.field.width + 2.0 * kPlanMargin_mm
                                          + kGutter_mm);
    question.strip =
        Length::millimetres(page.frame.height - page.field.height + 2.0 * kPlanMargin_mm);
    question.system = plan.units;
    question.with_extras = options.extra_scales;
    question.orientation = orientation;
    return question;
}

Result<Composition> composed(const plan::Plan& plan, const Extent& extent,
                             const catalogue::Paper& paper, const catalogue::Catalogue& catalogue,
                             const SheetOptions& options, const TextMeasure& measure) {
    std::vector<Orientation> ways{Orientation::landscape, Orientation::portrait};
    if (options.orientation) {
        ways = {*options.orientation};
    }
    std::optional<Composition> best;
    Error why;
    for (const Orientation way : ways) {
        const PageNeeds needs = needs_of(plan, paper, way, options, measure);
        const ScaleQuestion question = question_of(plan, extent, paper, way, needs, options);
        const Result<ScaleChoice> choice = options.scale.empty()
                                               ? choose_scale(question, catalogue)
                                               : check_scale(question, options.scale, catalogue);
        if (!choice) {
            why = choice.error();
        } else if (!best || choice->scale.ratio < best->choice.scale.ratio) {
            best = Composition{divided_page(paper, way, needs), {}, *choice, paper};
        }
    }
    if (!best) {
        return tl::unexpected{why};
    }
    best->frame.mm_per_m = 1000.0 / best->choice.scale.ratio;
    const Vec2 middle = (extent.low + extent.high) / 2.0;
    const Vec2 centre = best->page.field.centre() + Vec2{kGutter_mm / 2.0, 0.0};
    best->frame.origin_mm = {centre.x() - best->frame.mm(middle.x()),
                             centre.y() + best->frame.mm(middle.y())};
    return *best;
}

void draw_plan(Board& board, const plan::Plan& plan, const catalogue::Catalogue& catalogue,
               std::span<const stage::PlacedLamp> lamps, const Selection& selection,
               const Extent& extent, const SheetOptions& options) {
    if (options.ground) {
        draw_ground(board, plan);
    }
    draw_room(board, plan);
    draw_scenery(board, plan, catalogue);
    if (options.pools) {
        draw_pools(board, plan, lamps);
    }
    if (options.coverage) {
        draw_coverage(board, plan, selection);
    }
    draw_people(board, plan, selection);
    draw_cameras(board, plan, selection);
    draw_lamps(board, plan, lamps);
    draw_booms(board, plan, selection);
    draw_outlets(board, plan);
    letter_grid(board, plan, extent);
    draw_overall_sizes(board, plan, extent);
}

/// Names first where they cannot be left out, then the rest, so that what must be said finds room.
void letter_plan(Board& board) {
    Marks& marks = board.layers[static_cast<std::size_t>(PlanLayer::lettering)];
    for (const bool droppable : {false, true}) {
        for (const LabelRequest& request : board.labels) {
            if (request.may_drop == droppable) {
                board.field.letter(request, marks);
            }
        }
    }
}

std::string subject_of(const plan::Plan& plan, const Composition& composition,
                       const SheetOptions& options) {
    return fmt::format("{} of {}, scale {} on {} {}", options.sheet_name, plan.title,
                       composition.choice.scale.name, composition.paper.name,
                       name_of(composition.choice.orientation));
}

Drawing finished(const plan::Plan& plan, Board& board, const Composition& composition,
                 const SheetOptions& options) {
    Drawing drawing;
    drawing.title = fmt::format("{}: {}", plan.title, options.sheet_name);
    drawing.subject = subject_of(plan, composition, options);
    drawing.width_mm = composition.page.width_mm;
    drawing.height_mm = composition.page.height_mm;
    for (int i = 0; i < kPlanLayers; ++i) {
        drawing.layers.push_back({std::string{name_of(static_cast<PlanLayer>(i))},
                                  std::move(board.layers[static_cast<std::size_t>(i)])});
    }
    return drawing;
}

/// Everything around the plan. The findings panel decides which findings are marked on the plan, so
/// it is laid out first.
void draw_surroundings(Board& board, Composition& composition, const plan::Plan& plan,
                       const std::vector<const checks::Finding*>& findings,
                       const SheetOptions& options) {
    Page& page = composition.page;
    const TextMeasure& measure = board.field.measure();
    Marks& marks = board.layers[static_cast<std::size_t>(PlanLayer::frame)];
    for (const checks::Finding* finding : findings) {
        board.used.insert(finding->severity == checks::Severity::error     ? LegendEntry::error
                          : finding->severity == checks::Severity::caution ? LegendEntry::caution
                                                                           : LegendEntry::note);
    }
    PageNeeds needs =
        needs_of(plan, composition.paper, composition.choice.orientation, options, measure);
    needs.legend_height_mm = legend_height_mm(board.used, page.legend.width);
    page = divided_page(composition.paper, composition.choice.orientation, needs);
    const std::vector<NumberedFinding> shown =
        draw_findings_panel(marks, page.findings, grouped(findings), measure);
    draw_finding_marks(board, shown);
    draw_legend(marks, page.legend, board.used);
    draw_title_block(marks, page.title,
                     {plan, options, composition.choice.scale.name, composition.paper.name,
                      composition.choice.orientation},
                     measure);
    draw_rulers(marks, page.strip, composition.frame, plan.units);
    draw_cautions(marks,
                  {page.strip.left, page.strip.top + kRulersHeight_mm, page.strip.width,
                   page.strip.height - kRulersHeight_mm},
                  cautions_for(plan), measure);
    draw_page_lines(marks, page);
}

} // namespace

Result<Drawing> floor_plan_sheet(const checks::Analysis& analysis,
                                 const catalogue::Catalogue& catalogue, const SheetOptions& options,
                                 const TextMeasure& measure) {
    const plan::Plan& plan = *analysis.plan;
    if (plan.room.outline.size() < 3) {
        return failure("the plan has no room to draw");
    }
    if (const auto checked = check_selection(plan, options); !checked) {
        return tl::unexpected{checked.error()};
    }
    const Result<catalogue::Paper> paper = paper_of(options, catalogue);
    if (!paper) {
        return tl::unexpected{paper.error()};
    }
    const Selection selection = selected(analysis, options);
    // Lamps and scenery stand alike in all beats; a plan without beats is raised here.
    const stage::Stage bare =
        selection.beats.empty() ? stage::raise(plan, catalogue, {}) : stage::Stage{};
    const stage::Stage& stage = selection.beats.empty() ? bare : selection.beats.front()->stage;
    const Extent extent = extent_of(plan, stage, selection);
    Result<Composition> composition = composed(plan, extent, *paper, catalogue, options, measure);
    if (!composition) {
        return tl::unexpected{composition.error()};
    }
    LabelField field{composition->page.field.inset(1.0), measure};
    Board board{composition->frame, field};
    const Box& around = composition->page.field;
    draw_upright_ruler(board.layers[static_cast<std::size_t>(PlanLayer::frame)],
                       {around.left + 1.5, around.centre().y() + 50.0});
    field.take({around.left, around.centre().y() - 51.0, kGutter_mm + 1.5, 102.0});
    draw_plan(board, plan, catalogue, lamps_of(stage, selection), selection, extent, options);
    letter_plan(board);
    draw_surroundings(board, *composition, plan, selected_findings(analysis, options), options);
    return finished(plan, board, *composition, options);
}

} // namespace throwline::sheet
