#include "sheet/section_heights.h"

#include "checks/framing.h"
#include "sheet/dimensions.h"
#include "sheet/section_room.h"
#include "sheet/silhouettes.h"
#include "sheet/text_wrap.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <set>

namespace throwline::sheet {

namespace {

constexpr double kLadderOut_mm = 6.0;
constexpr double kTick_mm = 1.6;
constexpr double kWordsOut_mm = 5.0;
constexpr double kRuler_mm = 8.0;

/// What the section shows, by name.
std::set<std::string> names_shown(const SectionCut& cut) {
    std::set<std::string> names;
    for (const Silhouette& shape : silhouettes(cut)) {
        names.insert(cut.stage->owners[static_cast<std::size_t>(shape.owner)].name);
    }
    return names;
}

bool is_screen(const plan::Scenery& piece) {
    return std::holds_alternative<plan::FlatRun>(piece.shape)
           || std::holds_alternative<plan::Drape>(piece.shape);
}

bool is_platform(const plan::Scenery& piece, const catalogue::Catalogue& catalogue) {
    if (const auto* stock = std::get_if<plan::StockPiece>(&piece.shape)) {
        const catalogue::StockItem* item = catalogue.stock_item(stock->item);
        return item != nullptr && item->use == catalogue::StockUse::platform;
    }
    return std::holds_alternative<plan::Riser>(piece.shape);
}

/// Gathers things at one height under what they are.
class LevelCollector {
  public:
    explicit LevelCollector(UnitSystem units) : units_{units} {}

    void add(double height_m, const std::string& what, const std::string& name = {}) {
        const std::int64_t steps = steps_of(Length::metres(height_m), units_);
        auto known = std::find_if(kept_.begin(), kept_.end(), [&](const Kept& other) {
            return other.steps == steps && other.what == what;
        });
        if (known == kept_.end()) {
            known = kept_.insert(kept_.end(), {steps, height_m, what, {}});
        }
        Kept& level = *known;
        if (!name.empty()
            && std::find(level.names.begin(), level.names.end(), name) == level.names.end()) {
            level.names.push_back(name);
        }
    }

    std::vector<Level> levels() const {
        std::vector<Kept> sorted = kept_;
        std::stable_sort(sorted.begin(), sorted.end(),
                         [](const Kept& a, const Kept& b) { return a.steps < b.steps; });
        std::vector<Level> levels;
        std::int64_t last = -1;
        for (const Kept& level : sorted) {
            if (!levels.empty() && level.steps == last) {
                levels.back().words += fmt::format(", {}", words_of(level));
            } else {
                levels.push_back({level.height_m, words_of(level)});
            }
            last = level.steps;
        }
        return levels;
    }

  private:
    struct Kept {
        std::int64_t steps = 0;
        double height_m = 0.0;
        std::string what;
        std::vector<std::string> names;
    };

    /// "top of back wall +2": there is no room beside the drawing for more than one name.
    static std::string words_of(const Kept& level) {
        if (level.names.empty()) {
            return level.what;
        }
        std::string words = fmt::format("{} {}", level.what, level.names.front());
        if (level.names.size() > 1) {
            words += fmt::format(" +{}", level.names.size() - 1);
        }
        return words;
    }

    UnitSystem units_;
    std::vector<Kept> kept_;
};

void add_grid(LevelCollector& collector, const plan::Plan& plan) {
    if (plan.grid) {
        collector.add(plan.grid->height.m(), "grid");
    }
    for (const plan::Pipe& pipe : plan.pipes) {
        collector.add(pipe.height.m(), "pipe", pipe.id.name);
    }
}

/// Baselines of words for marks that rise, none nearer than a line to the one below.
std::vector<double> spread(const std::vector<double>& wanted_mm, double lowest_mm) {
    // Paper y falls as heights rise: place from the floor up, then push the pile down again.
    std::vector<double> placed = wanted_mm;
    for (std::size_t i = 1; i < placed.size(); ++i) {
        placed[i] = std::min(placed[i], placed[i - 1] - kLinePitch_mm);
    }
    double foot = lowest_mm;
    for (double& baseline : placed) {
        baseline = std::min(baseline, foot);
        foot = baseline - kLinePitch_mm;
    }
    return placed;
}

} // namespace

std::vector<Level> levels_of(const SectionCut& cut, const plan::Plan& plan,
                             const catalogue::Catalogue& catalogue) {
    const std::set<std::string> seen = names_shown(cut);
    LevelCollector collector{plan.units};
    collector.add(0.0, "floor");
    for (const stage::PlacedScenery& placed : cut.stage->scenery) {
        const plan::Scenery* piece = plan::find(plan, placed.scenery);
        if (piece == nullptr || seen.count(piece->id.name) == 0) {
            continue;
        }
        if (is_platform(*piece, catalogue)) {
            collector.add(placed.top_z_m, "platform", piece->id.name);
        } else if (is_screen(*piece)) {
            collector.add(placed.top_z_m, "top of", piece->id.name);
        }
    }
    for (const stage::Figure& figure : cut.stage->figures) {
        if (seen.count(figure.person.name) > 0) {
            collector.add(figure.eyes.z(), "eyes", figure.person.name);
        }
    }
    if (cut.shot != nullptr && cut.shot->view) {
        collector.add(cut.shot->view->pose.lens.z(), "lens", cut.shot->shot->camera.name);
    }
    add_grid(collector, plan);
    collector.add(plan.room.height.m(), "ceiling");
    return collector.levels();
}

void draw_levels(Board& board, const std::vector<Level>& levels, double left_m, UnitSystem units) {
    if (levels.empty()) {
        return;
    }
    const Vec2 out{-kLadderOut_mm, 0.0};
    const auto mark_at = [&](double height_m) {
        return Vec2{board.frame.at(Vec2{left_m, height_m}) + out};
    };
    std::vector<double> wanted_mm;
    for (const Level& level : levels) {
        wanted_mm.push_back(mark_at(level.height_m).y() + kLetter_mm / 2.0);
    }
    const std::vector<double> baselines = spread(wanted_mm, wanted_mm.front());
    // Clear of the ruler at the edge of the field.
    const double least_mm = board.field.area().left + kRuler_mm;
    const Pen fine = pen(Ink::dimension, kConstruction_mm);
    board.add(PlanLayer::lettering,
              line(mark_at(levels.front().height_m), mark_at(levels.back().height_m), fine),
              Crowd::never);
    for (std::size_t i = 0; i < levels.size(); ++i) {
        const Vec2 mark = mark_at(levels[i].height_m);
        const Vec2 words{mark.x() - kWordsOut_mm, baselines[i]};
        board.add(PlanLayer::lettering, line(mark + Vec2{kTick_mm, 0.0}, mark - Vec2{kTick_mm, 0.0},
                                             pen(Ink::dimension, kStanding_mm)));
        board.add(PlanLayer::lettering,
                  line(mark - Vec2{kTick_mm, 0.0}, words + Vec2{0.8, -kLetter_mm / 2.0}, fine),
                  Crowd::firm);
        board.add(
            PlanLayer::lettering,
            Text{cut_to_width(fmt::format("{} {}",
                                          tape_text(Length::metres(levels[i].height_m), units),
                                          levels[i].words),
                              words.x() - least_mm, kLetter_mm, false, board.field.measure()),
                 words, kLetter_mm, TextAnchor::end, 0.0, false, Ink::dimension},
            Crowd::never);
    }
}

void draw_height_chain(Board& board, const SectionCut& cut, const plan::Plan& plan,
                       double right_m) {
    std::set<double> stops{0.0, plan.room.height.m()};
    for (const Silhouette& shape : silhouettes(cut)) {
        if (shape.part == stage::Part::flat_front || shape.part == stage::Part::flat_back) {
            Extent extent;
            for (const Vec2& corner : shape.outline) {
                extent.include(corner);
            }
            stops.insert(std::round(extent.high.y() * 1e4) / 1e4);
        }
    }
    if (plan.grid) {
        stops.insert(plan.grid->height.m());
    }
    DimensionRow row;
    row.origin = {right_m, 0.0};
    row.along = Vec2::UnitY();
    row.aside = Vec2::UnitX();
    row.aside_mm = kFirstRow_mm;
    for (const double stop : stops) {
        if (row.stops_m.empty() || stop - row.stops_m.back() > 0.01) {
            row.stops_m.push_back(stop);
            row.feet_m.push_back(0.0);
        }
    }
    row.words = chain_words(row.stops_m, plan.units);
    DimensionRows rows{board};
    rows.add_with_overall(std::move(row), plan.units);
    rows.lay_down();
}

void draw_foot_chain(Board& board, const SectionCut& cut, UnitSystem units) {
    std::set<double> stops{cut.inside.front().from_m, cut.inside.back().to_m};
    if (cut.shot != nullptr && cut.shot->view) {
        stops.insert(cut.along_m(floor_of(cut.shot->view->pose.lens)));
        const auto subjects = checks::subjects_on_floor(*cut.shot);
        if (!subjects.empty()) {
            stops.insert(cut.along_m(floor_of(subjects.front()->eyes)));
        }
    }
    for (const CutPiece& piece : cut_pieces(cut)) {
        if (piece.stretch.to_m - piece.stretch.from_m < 0.2) { // Flats and drapes.
            stops.insert(piece.stretch.from_m);
        }
    }
    DimensionRow row;
    row.along = Vec2::UnitX();
    row.aside = -Vec2::UnitY();
    row.aside_mm = kFirstRow_mm + kSlab_mm;
    for (const double stop : stops) {
        if (row.stops_m.empty() || stop - row.stops_m.back() > 0.01) {
            row.stops_m.push_back(stop);
            row.feet_m.push_back(kSlab_mm / board.frame.mm_per_m);
        }
    }
    row.words = chain_words(row.stops_m, units);
    DimensionRows rows{board};
    rows.add_with_overall(std::move(row), units);
    rows.lay_down();
}

} // namespace throwline::sheet
