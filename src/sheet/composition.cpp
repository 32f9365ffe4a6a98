#include "sheet/composition.h"

#include "base/length_text.h"
#include "sheet/check_ruler.h"
#include "sheet/paper_size.h"
#include "sheet/symbols.h"
#include "sheet/tile_margins.h"
#include "sheet/tiles.h"
#include "sheet/underlay.h"

#include <algorithm>
#include <fmt/format.h>
#include <limits>

namespace throwline::sheet {

namespace {

/// For the upright check ruler at the left edge of the field.
constexpr double kGutter_mm = 6.0;
/// More tiles than this on a side nobody tapes together.
constexpr int kMostTiles = 12;
/// Least strip that takes a scale bar beside the check rulers.
constexpr double kRulersWidth_mm = 140.0;

/// The most that a legend takes of what findings and legend share, and a key of the rest.
constexpr double kLegendShare = 0.5;
constexpr double kKeyShare = 0.5;

/// A sheet that the drawing fits, divided, with the drawing's place on it.
struct Composition {
    Page page;
    PlanFrame frame;
    ScaleChoice choice;
    catalogue::Paper paper;
    std::optional<TileGrid> tiles;
};

/// The way round in which the paper goes through the printer.
Orientation paper_way(const Composition& composition) {
    if (!composition.tiles) {
        return composition.choice.orientation;
    }
    return composition.tiles->paper_width_mm >= composition.tiles->paper_height_mm
               ? Orientation::landscape
               : Orientation::portrait;
}

/// What the page is divided by and the drawing fitted with.
struct Fitting {
    const SheetInput& input;
    const SheetOptions& options;
    const ScaledSheet& sheet;
};

PageNeeds needs_of(const Fitting& fitting, const catalogue::Paper& paper, Orientation orientation) {
    const double sheet_width_mm = orientation == Orientation::landscape
                                      ? std::max(paper.width.mm(), paper.height.mm())
                                      : std::min(paper.width.mm(), paper.height.mm());
    PageNeeds needs;
    needs.margin_mm = fitting.options.margin.mm();
    const double strip_width_mm =
        sheet_width_mm - 2.0 * needs.margin_mm
        - (orientation == Orientation::landscape
               ? column_width_mm(sheet_width_mm, orientation, needs.margin_mm)
               : 0.0);
    needs.strip_height_mm =
        kRulersHeight_mm
        + cautions_height_mm(fitting.sheet.cautions, strip_width_mm, fitting.input.measure);
    return needs;
}

ScaleQuestion question_of(const Fitting& fitting, const catalogue::Paper& paper,
                          Orientation orientation, const PageNeeds& needs) {
    const Page page = divided_page(paper, orientation, needs);
    ScaleQuestion question;
    question.width = Length::metres(fitting.sheet.extent.size().x());
    question.depth = Length::metres(fitting.sheet.extent.size().y());
    question.paper = paper;
    question.margin = fitting.options.margin;
    const Surround& around = fitting.sheet.surround;
    question.column = Length::millimetres(page.frame.width - page.field.width + around.left_mm
                                          + around.right_mm + kGutter_mm);
    question.strip = Length::millimetres(page.frame.height - page.field.height + around.above_mm
                                         + around.below_mm);
    question.system = fitting.input.analysis.plan->units;
    question.with_extras = fitting.options.extra_scales;
    question.orientation = orientation;
    return question;
}

/// Whether the check rulers, which have a size of their own, find room.
bool holds_its_parts(const Page& page) {
    return page.field.height >= kCheckLength_mm + 4.0 && page.strip.width >= kRulersWidth_mm;
}

Result<Composition> fitted(const Fitting& fitting, const catalogue::Paper& paper,
                           const std::vector<Orientation>& ways) {
    std::optional<Composition> best;
    Error why;
    for (const Orientation way : ways) {
        const PageNeeds needs = needs_of(fitting, paper, way);
        if (!holds_its_parts(divided_page(paper, way, needs))) {
            why = Error{fmt::format("{} ({} by {} mm) is too small to hold a title block, rulers "
                                    "and a drawing within its margins",
                                    paper.name, shortest(paper.width.mm()),
                                    shortest(paper.height.mm())),
                        {}};
            continue;
        }
        const ScaleQuestion question = question_of(fitting, paper, way, needs);
        const Result<ScaleChoice> choice =
            fitting.options.scale.empty()
                ? choose_scale(question, fitting.input.catalogue)
                : check_scale(question, fitting.options.scale, fitting.input.catalogue);
        if (!choice) {
            why = choice.error();
        } else if (!best || choice->scale.ratio < best->choice.scale.ratio) {
            best = Composition{divided_page(paper, way, needs), {}, *choice, paper, {}};
        }
    }
    if (!best) {
        return tl::unexpected{why};
    }
    return *best;
}

/// The sheet that exactly fills a number of tiles of a paper.
Result<Composition> fitted_to(const Fitting& fitting, const TileGrid& tiles,
                              const std::string& paper) {
    catalogue::Paper whole;
    whole.name = fmt::format("{} x {} tiles of {}", tiles.columns, tiles.rows, paper);
    whole.width = Length::millimetres(tiles.whole_width_mm());
    whole.height = Length::millimetres(tiles.whole_height_mm());
    const Orientation way =
        whole.width >= whole.height ? Orientation::landscape : Orientation::portrait;
    Result<Composition> fit = fitted(fitting, whole, {way});
    if (fit) {
        fit->tiles = tiles;
    }
    return fit;
}

/// The fewest tiles of a paper, either way round, that take the drawing at the scale asked for.
Result<Composition> tiled(const Fitting& fitting, const catalogue::Paper& paper,
                          const std::vector<Orientation>& ways, const Error& why) {
    const double shorter_mm = std::min(paper.width.mm(), paper.height.mm());
    const double longer_mm = std::max(paper.width.mm(), paper.height.mm());
    TileGrid tiles;
    tiles.margin_mm = std::max(kLeastTileMargin_mm, fitting.options.margin.mm());
    tiles.overlap_mm = fitting.options.tile_overlap->mm();
    for (int count = 2; count <= kMostTiles * kMostTiles; ++count) {
        for (tiles.columns = 1; tiles.columns <= std::min(count, kMostTiles); ++tiles.columns) {
            tiles.rows = count / tiles.columns;
            if (tiles.rows * tiles.columns != count || tiles.rows > kMostTiles) {
                continue;
            }
            for (const Orientation way : ways) {
                const bool wide = way == Orientation::landscape;
                tiles.paper_width_mm = wide ? longer_mm : shorter_mm;
                tiles.paper_height_mm = wide ? shorter_mm : longer_mm;
                const bool has_room = tiles.piece_width_mm() >= kLeastTilePiece_mm
                                      && std::min(tiles.piece_width_mm(), tiles.piece_height_mm())
                                             >= 2.0 * tiles.overlap_mm;
                if (Result<Composition> fit = has_room ? fitted_to(fitting, tiles, paper.name)
                                                       : Result<Composition>{failure("")}) {
                    return fit;
                }
            }
        }
    }
    return failure(fmt::format("{}; it fits no {} tiles of {} either", why.message,
                               kMostTiles * kMostTiles, paper.name));
}

std::vector<Orientation> ways_round(const SheetOptions& options) {
    if (options.orientation) {
        return {*options.orientation};
    }
    return {Orientation::landscape, Orientation::portrait};
}

/// The smallest paper of the same family that takes the drawing at the scale asked for; empty when
/// none does.
std::string paper_needed(const Fitting& fitting, const catalogue::Paper& paper) {
    const auto area_m2 = [](const catalogue::Paper& any) { return any.width.m() * any.height.m(); };
    std::string found;
    double least_m2 = std::numeric_limits<double>::max();
    for (const catalogue::Paper& other : fitting.input.catalogue.papers) {
        if (other.family != paper.family || area_m2(other) <= area_m2(paper)
            || area_m2(other) >= least_m2) {
            continue;
        }
        if (const auto fit = fitted(fitting, other, ways_round(fitting.options))) {
            found = paper_text(other, fit->choice.orientation);
            least_m2 = area_m2(other);
        }
    }
    return found;
}

std::vector<LargerScale> larger_scales(const Fitting& fitting, const Composition& composition) {
    std::vector<LargerScale> larger;
    for (const ScaleAlternative& other : composition.choice.larger) {
        SheetOptions options = fitting.options;
        options.scale = other.scale.name;
        options.tile_overlap = options.tile_overlap.value_or(kUsualOverlap);
        const Fitting asked{fitting.input, options, fitting.sheet};
        const auto tiles = tiled(asked, composition.paper, ways_round(options), {});
        larger.push_back({other.scale.name, paper_needed(asked, composition.paper),
                          tiles ? tiles->tiles->columns * tiles->tiles->rows : 0});
    }
    return larger;
}

Result<Composition> placed(const Fitting& fitting, const catalogue::Paper& paper) {
    const std::vector<Orientation> ways = ways_round(fitting.options);
    Result<Composition> fit = fitted(fitting, paper, ways);
    if (!fit && fitting.options.tile_overlap && !fitting.options.scale.empty()) {
        fit = tiled(fitting, paper, ways, fit.error());
    }
    if (!fit) {
        return fit;
    }
    const Extent& extent = fitting.sheet.extent;
    fit->frame.mm_per_m = 1000.0 / fit->choice.scale.ratio;
    const Vec2 middle = (extent.low + extent.high) / 2.0;
    const Surround& around = fitting.sheet.surround;
    const Vec2 centre =
        fit->page.field.centre()
        + Vec2{kGutter_mm + around.left_mm - around.right_mm, around.above_mm - around.below_mm}
              / 2.0;
    fit->frame.origin_mm = {centre.x() - fit->frame.mm(middle.x()),
                            centre.y() + fit->frame.mm(middle.y())};
    return fit;
}

/// Letters what the board shows; what found no room goes into the key.
void letter(Board& board, KeyList& key) {
    std::vector<LabelRequest> shown = board.labels;
    std::erase_if(shown, [&](const LabelRequest& request) { return !board.shows(request.anchor); });
    set_lettering(shown, board.field, key,
                  board.layers[static_cast<std::size_t>(PlanLayer::lettering)]);
}

/// Divides the page once it is known what the legend must explain.
void divide(Board& board, Composition& composition, const Fitting& fitting) {
    for (const checks::Finding* finding : fitting.sheet.findings) {
        board.used.insert(finding->severity == checks::Severity::error     ? LegendEntry::error
                          : finding->severity == checks::Severity::caution ? LegendEntry::caution
                                                                           : LegendEntry::note);
    }
    Page& page = composition.page;
    PageNeeds needs = needs_of(fitting, composition.paper, composition.choice.orientation);
    const double most_mm = kLegendShare * (page.legend.bottom() - page.findings.top);
    needs.legend_height_mm =
        fitting.sheet.with_legend ? legend_height_mm(board.used, page.legend.width, most_mm) : 0.0;
    page = divided_page(composition.paper, composition.choice.orientation, needs);
}

/// The key stands at the foot of the findings' part of the panel.
void draw_key(Board& board, const KeyList& key, Page& page) {
    const double height_mm = key.height_mm();
    page.findings.height -= height_mm;
    key.draw(board.layers[static_cast<std::size_t>(PlanLayer::frame)],
             {page.findings.left, page.findings.bottom(), page.findings.width, height_mm});
}

/// The panel decides which findings are marked on the drawing, so it is laid out before them.
/// Returns how many errors found no room in it.
int draw_panel(Board& board, const Fitting& fitting, const Page& page) {
    Marks& marks = board.layers[static_cast<std::size_t>(PlanLayer::frame)];
    if (fitting.sheet.panel) {
        fitting.sheet.panel(marks, page.findings);
        return 0;
    }
    Box rest = page.findings;
    if (fitting.sheet.before_findings) {
        rest = fitting.sheet.before_findings(marks, rest);
    }
    FindingsShown shown =
        draw_findings_panel(marks, rest, grouped(fitting.sheet.findings, fitting.input.analysis),
                            fitting.input.measure);
    std::erase_if(shown.findings, [&](const NumberedFinding& numbered) {
        return !board.shows(board.frame.at(numbered.finding->at));
    });
    draw_finding_marks(board, shown.findings);
    return shown.errors_left_out;
}

/// Returns how many errors found no room in the panel.
int draw_surroundings(Board& board, const Composition& composition, const Fitting& fitting) {
    const Page& page = composition.page;
    const plan::Plan& plan = *fitting.input.analysis.plan;
    const TextMeasure& measure = fitting.input.measure;
    Marks& marks = board.layers[static_cast<std::size_t>(PlanLayer::frame)];
    const int errors_left_out = draw_panel(board, fitting, page);
    if (fitting.sheet.with_legend) {
        draw_legend(marks, page.legend, board.used);
    }
    draw_title_block(marks, page.title,
                     {plan, fitting.options, composition.choice.scale.name, composition.paper.name,
                      paper_way(composition), fitting.sheet.with_north,
                      composition.choice.scale.standard},
                     measure);
    draw_rulers(marks, page.strip, composition.frame, plan.units);
    draw_cautions(marks,
                  {page.strip.left, page.strip.top + kRulersHeight_mm, page.strip.width,
                   page.strip.height - kRulersHeight_mm},
                  fitting.sheet.cautions, measure);
    draw_page_lines(marks, page);
    return errors_left_out;
}

/// The plan's underlay, on sheets that show it from above.
void draw_picture_beneath(Board& board, const Page& page, const Fitting& fitting) {
    const std::optional<plan::Underlay>& underlay = fitting.input.analysis.plan->underlay;
    if (underlay && fitting.sheet.with_north) {
        draw_underlay_on(board, *underlay, {fitting.options.underlay, 1}, page);
    }
}

Drawing finished(Board& board, const Composition& composition, const Fitting& fitting) {
    const std::string& title = fitting.input.analysis.plan->title;
    Drawing drawing;
    drawing.title = fmt::format("{}: {}", title, fitting.options.sheet_name);
    drawing.scale = composition.choice.scale.name;
    drawing.paper = paper_text(composition.paper, paper_way(composition));
    drawing.subject = fmt::format("{} of {}, scale {} on {}", fitting.options.sheet_name, title,
                                  drawing.scale, drawing.paper);
    drawing.width_mm = composition.page.width_mm;
    drawing.height_mm = composition.page.height_mm;
    drawing.tiles = composition.tiles;
    drawing.caption = fmt::format("{}, scale {}", drawing.title, drawing.scale);
    if (!fitting.options.file_hash.empty()) {
        drawing.caption += fmt::format(", file {}", fitting.options.file_hash);
    }
    if (fitting.sheet.tells_larger && !composition.tiles) {
        drawing.larger = larger_scales(fitting, composition);
    }
    for (int i = 0; i < kPlanLayers; ++i) {
        if (static_cast<PlanLayer>(i) == PlanLayer::underlay && !fitting.options.underlay) {
            continue;
        }
        drawing.layers.push_back({std::string{name_of(static_cast<PlanLayer>(i))},
                                  std::move(board.layers[static_cast<std::size_t>(i)])});
    }
    return drawing;
}

/// Everything of a plan that stands on the floor or hangs over it, so that nothing is drawn off the
/// sheet.
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

} // namespace

std::string paper_text(const catalogue::Paper& paper, Orientation orientation) {
    return fmt::format("{} {}", paper.name, name_of(orientation));
}

Result<catalogue::Paper> paper_of(const SheetOptions& options,
                                  const catalogue::Catalogue& catalogue) {
    if (options.own_paper) {
        return *options.own_paper;
    }
    return paper_named(options.paper, catalogue);
}

const stage::Stage& stage_shown(const SheetInput& input, const Selection& selection,
                                stage::Stage& bare) {
    if (!selection.beats.empty()) {
        return selection.beats.front()->stage;
    }
    bare = stage::raise(*input.analysis.plan, input.catalogue, {});
    return bare;
}

Result<PlanShown> plan_shown(const SheetInput& input, const SheetOptions& options) {
    const plan::Plan& plan = *input.analysis.plan;
    if (plan.room.outline.size() < 3) {
        return failure("the plan has no room to draw");
    }
    return selected(input.analysis, options).map([&](Selection selection) {
        stage::Stage bare;
        const stage::Stage& stage = stage_shown(input, selection, bare);
        PlanShown shown;
        shown.lamps = lamps_shown(stage, selection);
        shown.extent = extent_of(plan, stage, selection);
        shown.selection = std::move(selection);
        return shown;
    });
}

Result<Drawing> composed(const SheetInput& input, const SheetOptions& options,
                         const ScaledSheet& sheet) {
    const Result<catalogue::Paper> paper = paper_of(options, input.catalogue);
    if (!paper) {
        return tl::unexpected{paper.error()};
    }
    const Fitting fitting{input, options, sheet};
    Result<Composition> composition = placed(fitting, *paper);
    if (!composition) {
        return tl::unexpected{composition.error()};
    }
    LabelField field{composition->page.field.inset(1.0), input.measure};
    Board board{composition->frame, field};
    if (sheet.is_cutout) {
        const Box& field_box = composition->page.field;
        board.window = Box{field_box.left + kGutter_mm + 1.5, field_box.top,
                           field_box.width - kGutter_mm - 1.5, field_box.height};
    }
    const Box& around = composition->page.field;
    draw_upright_ruler(board.layers[static_cast<std::size_t>(PlanLayer::frame)],
                       {around.left + 1.5, around.centre().y() + 50.0});
    field.take({around.left, around.centre().y() - 51.0, kGutter_mm + 1.5, 102.0});
    draw_picture_beneath(board, composition->page, fitting);
    sheet.draw(board);
    divide(board, *composition, fitting);
    Page& page = composition->page;
    KeyList key{page.findings.width, kKeyShare * page.findings.height, input.measure};
    letter(board, key);
    draw_key(board, key, page);
    const int errors_left_out = draw_surroundings(board, *composition, fitting);
    Drawing drawing = finished(board, *composition, fitting);
    drawing.errors_left_out = errors_left_out;
    return drawing;
}

} // namespace throwline::sheet
