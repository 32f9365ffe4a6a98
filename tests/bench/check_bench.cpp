/// Times the whole check on the demo production and on one ten times its size. Both stand in one
/// run, so that their ratio means something on a busy machine.

#include "checks/check.h"
#include "plan/read_plan.h"
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

plan::Plan demo() {
    Checked<plan::Plan> read =
        plan::read_plan_file(THROWLINE_SOURCE_DIR "/demo/cookery.json", tables());
    if (!read) {
        std::fputs(text_of(read.error().front()).c_str(), stderr);
        std::exit(2);
    }
    return std::move(*read);
}

plan::PlanPtr plan_of_size(int times) {
    return std::make_shared<const plan::Plan>(times == 1 ? demo()
                                                         : support::repeated(demo(), times));
}

void count_things(benchmark::State& state, const plan::Plan& plan) {
    state.counters["shots"] = static_cast<double>(plan.shots.size());
    state.counters["lamps"] = static_cast<double>(plan.lamps.size());
    state.counters["scenery"] = static_cast<double>(plan.scenery.size());
}

void whole_check(benchmark::State& state) {
    const plan::PlanPtr plan = plan_of_size(static_cast<int>(state.range(0)));
    std::size_t findings = 0;
    while (state.KeepRunning()) {
        const std::optional<checks::Analysis> analysis = checks::analyse(plan, tables());
        findings = analysis->findings.size();
        benchmark::DoNotOptimize(findings);
    }
    count_things(state, *plan);
    state.counters["findings"] = static_cast<double>(findings);
}
BENCHMARK(whole_check)->Arg(1)->Arg(10)->Unit(benchmark::kMillisecond)->UseRealTime();

void raise_one_stage(benchmark::State& state) {
    const plan::PlanPtr plan = plan_of_size(static_cast<int>(state.range(0)));
    while (state.KeepRunning()) {
        benchmark::DoNotOptimize(
            stage::raise(*plan, tables(), plan->beats.front().id, plan->shots.front().id));
    }
    count_things(state, *plan);
}
BENCHMARK(raise_one_stage)->Arg(1)->Arg(10)->Unit(benchmark::kMillisecond)->UseRealTime();

void read_plan_text(benchmark::State& state) {
    const plan::PlanPtr plan = plan_of_size(static_cast<int>(state.range(0)));
    const std::string text = plan::written(*plan);
    while (state.KeepRunning()) {
        benchmark::DoNotOptimize(plan::read_plan(text, tables()));
    }
    state.counters["bytes"] = static_cast<double>(text.size());
}
BENCHMARK(read_plan_text)->Arg(1)->Arg(10)->Unit(benchmark::kMillisecond)->UseRealTime();

} // namespace
} // namespace throwline

BENCHMARK_MAIN();
