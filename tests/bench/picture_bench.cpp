/// Times what the engine draws for the screen: floors with everything laid over them, level maps,
/// lit frames.

#include "checks/mark_light.h"
#include "plan/read_plan.h"
#include "sheet/floor_drawing.h"
#include "sheet/frame_picture.h"
#include "sheet/level_picture.h"
#include "sheet/lit_picture.h"
#include "support/large_plan.h"
#include "support/tenfold.h"

#include <benchmark/benchmark.h>
#include <cstdio>
#include <cstdlib>

namespace throwline {
namespace {

const catalogue::Catalogue& tables() {
    static const catalogue::Catalogue kTables = [] {
        Checked<catalogue::Catalogue> loaded =
            catalogue::load_catalogue(THROWLINE_SOURCE_DIR "/lensdata");
        if (!loaded) {
            std::fputs(text_of(loaded.error().front()).c_str(), stderr);
            std::exit(2);
        }
        return std::move(*loaded);
    }();
    return kTables;
}

plan::Plan demo(const std::string& name) {
    Checked<plan::Plan> read =
        plan::read_plan_file(THROWLINE_SOURCE_DIR "/demo/" + name + ".json", tables());
    if (!read) {
        std::fputs(text_of(read.error().front()).c_str(), stderr);
        std::exit(2);
    }
    return std::move(*read);
}

enum Which { kitchen, hall, tenfold_kitchen, five_thousand };

plan::Plan plan_of(std::int64_t which) {
    switch (static_cast<Which>(which)) {
    case kitchen:
        return demo("cookery");
    case hall:
        return demo("market_hall");
    case tenfold_kitchen:
        return support::repeated(demo("cookery"), 10);
    case five_thousand:
        return support::large_plan();
    }
    return {};
}

const char* label_of(std::int64_t which) {
    switch (static_cast<Which>(which)) {
    case kitchen:
        return "cookery";
    case hall:
        return "market hall";
    case tenfold_kitchen:
        return "cookery tenfold";
    case five_thousand:
        return "5,000 objects";
    }
    return "";
}

/// Every character 0.8 of the height of capitals wide.
class EvenMeasure : public sheet::TextMeasure {
  public:
    double width_mm(const std::string& text, double height_mm, bool) const override {
        return 0.8 * height_mm * static_cast<double>(text.size());
    }
};

stage::Stage first_stage(const plan::Plan& plan) {
    return stage::raise(plan, tables(), plan.shots.front().beats.front(), plan.shots.front().id);
}

void raise_for_drawing(benchmark::State& state) {
    const plan::Plan plan = plan_of(state.range(0));
    while (state.KeepRunning()) {
        benchmark::DoNotOptimize(stage::raise_without_rays(
            plan, tables(), plan.shots.front().beats.front(), plan.shots.front().id));
    }
    state.SetLabel(label_of(state.range(0)));
}
BENCHMARK(raise_for_drawing)->DenseRange(kitchen, five_thousand)->Unit(benchmark::kMillisecond);

/// The whole room on 360 x 240 mm of screen.
sheet::FloorQuestion question_of(const plan::Plan& plan) {
    Vec2 low = plan.room.outline.front();
    Vec2 high = low;
    for (const Vec2& corner : plan.room.outline) {
        low = low.cwiseMin(corner);
        high = high.cwiseMax(corner);
    }
    const Vec2 size = high - low;
    const double mm_per_m = std::min(330.0 / size.x(), 210.0 / size.y());
    sheet::FloorQuestion question{plan, tables(), plan.shots.front().beats.front(),
                                  plan.shots.front().id, mm_per_m};
    question.window = {low.x() * mm_per_m - 15.0, -high.y() * mm_per_m - 15.0,
                       size.x() * mm_per_m + 30.0, size.y() * mm_per_m + 30.0};
    return question;
}

void draw_floor(benchmark::State& state, const sheet::FloorQuestion& question) {
    std::size_t marks = 0;
    while (state.KeepRunning()) {
        const auto drawing = sheet::floor_drawing(question, EvenMeasure{});
        marks = 0;
        for (const sheet::Layer& layer : drawing->layers) {
            marks += layer.marks.size();
        }
    }
    state.counters["marks"] = static_cast<double>(marks);
    state.SetLabel(label_of(state.range(0)));
}

void floor_without_letters(benchmark::State& state) {
    const plan::Plan plan = plan_of(state.range(0));
    sheet::FloorQuestion question = question_of(plan);
    question.overlays.lettering = false;
    draw_floor(state, question);
}
BENCHMARK(floor_without_letters)->DenseRange(kitchen, five_thousand)->Unit(benchmark::kMillisecond);

void floor_lettered(benchmark::State& state) {
    const plan::Plan plan = plan_of(state.range(0));
    draw_floor(state, question_of(plan));
}
BENCHMARK(floor_lettered)->DenseRange(kitchen, five_thousand)->Unit(benchmark::kMillisecond);

/// Part of the room at 1:50 or more, large enough to be lettered.
void floor_from_near_by(benchmark::State& state) {
    const plan::Plan plan = plan_of(state.range(0));
    sheet::FloorQuestion question = question_of(plan);
    const double wider = std::max(1.0, 20.0 / question.mm_per_m);
    question.mm_per_m *= wider;
    const Vec2 middle = question.window.centre() * wider;
    question.window = {middle.x() - 180.0, middle.y() - 120.0, 360.0, 240.0};
    draw_floor(state, question);
}
BENCHMARK(floor_from_near_by)->DenseRange(kitchen, five_thousand)->Unit(benchmark::kMillisecond);

void floor_with_everything_over_it(benchmark::State& state) {
    const plan::Plan plan = plan_of(state.range(0));
    sheet::FloorQuestion question = question_of(plan);
    question.overlays.focus = true;
    question.overlays.sight_lines = true;
    question.overlays.beams = true;
    question.overlays.levels = true;
    question.overlays.circuits = true;
    question.overlays.ways_out = true;
    const stage::Stage stage = first_stage(plan);
    question.levels = std::make_shared<const sheet::LevelPicture>(
        sheet::level_picture(*stage::level_map(stage, plan.room.outline, {}), plan.units));
    draw_floor(state, question);
}
BENCHMARK(floor_with_everything_over_it)
    ->DenseRange(kitchen, five_thousand)
    ->Unit(benchmark::kMillisecond);

void whole_level_map(benchmark::State& state) {
    const plan::Plan plan = plan_of(state.range(0));
    const stage::Stage stage = first_stage(plan);
    std::size_t points = 0;
    while (state.KeepRunning()) {
        points = stage::level_map(stage, plan.room.outline, {})->levels_lx.size();
    }
    state.counters["points"] = static_cast<double>(points);
    state.counters["lamps"] = static_cast<double>(stage.lamps.size());
    state.SetLabel(label_of(state.range(0)));
}
BENCHMARK(whole_level_map)
    ->DenseRange(kitchen, five_thousand)
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();

/// Two maps in turn, one lamp's aim being 20 cm aside, each from the other.
void level_map_of_one_lamp(benchmark::State& state) {
    const plan::Plan plan = plan_of(state.range(0));
    plan::Plan other = plan;
    other.lamps.front().aim = plan::Aim{Vec3{plan.room.outline.front().x() + 1.0, 1.2, 0.0}};
    const stage::Stage stages[]{first_stage(plan), first_stage(other)};
    stage::LevelMap map = *stage::level_map(stages[0], plan.room.outline, {});
    std::size_t next = 1;
    while (state.KeepRunning()) {
        map = *stage::level_map(stages[next], plan.room.outline, {}, &map);
        next = 1 - next;
    }
    state.SetLabel(label_of(state.range(0)));
}
BENCHMARK(level_map_of_one_lamp)
    ->DenseRange(kitchen, five_thousand)
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();

void level_picture_of_a_map(benchmark::State& state) {
    const plan::Plan plan = plan_of(state.range(0));
    const stage::LevelMap map = *stage::level_map(first_stage(plan), plan.room.outline, {});
    while (state.KeepRunning()) {
        benchmark::DoNotOptimize(sheet::level_picture(map, plan.units));
    }
    state.SetLabel(label_of(state.range(0)));
}
BENCHMARK(level_picture_of_a_map)->DenseRange(kitchen, hall)->Unit(benchmark::kMillisecond);

constexpr int kSide_px = 480;

void plain_frame(benchmark::State& state) {
    const plan::Plan plan = plan_of(state.range(0));
    const plan::Shot& shot = plan.shots.front();
    const stage::Stage stage = first_stage(plan);
    const stage::ShotView view = *stage::view_of(plan, tables(), stage, shot);
    while (state.KeepRunning()) {
        benchmark::DoNotOptimize(sheet::frame_picture_of(stage, view, shot, kSide_px));
    }
    state.SetLabel(label_of(state.range(0)));
}
BENCHMARK(plain_frame)
    ->DenseRange(kitchen, five_thousand)
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();

void lit_frame(benchmark::State& state) {
    const plan::Plan plan = plan_of(state.range(0));
    const plan::Shot& shot = plan.shots.front();
    const stage::Stage stage = first_stage(plan);
    const stage::ShotView view = *stage::view_of(plan, tables(), stage, shot);
    const double needed_lx = checks::needed_level_lx(plan, shot, view);
    while (state.KeepRunning()) {
        benchmark::DoNotOptimize(sheet::lit_picture({stage, view, shot, needed_lx}, kSide_px));
    }
    state.SetLabel(label_of(state.range(0)));
}
BENCHMARK(lit_frame)
    ->DenseRange(kitchen, five_thousand)
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();

} // namespace
} // namespace throwline

BENCHMARK_MAIN();
