#include "sheet/layout_check.h"

#include "sheet/marks.h"
#include "sheet/sheet_kinds.h"
#include "sheet/sheet_support.h"
#include "support/random_plan.h"

#include "base/text_file.h"
#include "plan/read_plan.h"
#include "survey/recce.h"
#include "survey/recce_text.h"
#include "survey/to_plan.h"

#include <array>
#include <filesystem>
#include <gtest/gtest.h>

namespace throwline::sheet {
namespace {

using test::analysed;
using test::session;
using test::sheet_catalogue;

constexpr std::array kPapers{"A4", "A3", "A1", "letter", "tabloid"};

/// What is wrong with a sheet, in a sentence; empty when nothing is.
std::string told(const LayoutFaults& faults) {
    std::string text;
    for (const auto& [first, second] : faults.overlapping) {
        text += "\"" + first + "\" lies over \"" + second + "\"; ";
    }
    for (const std::string& words : faults.cut) {
        text += "\"" + words + "\" is cut; ";
    }
    for (const std::string& words : faults.too_small) {
        text += "\"" + words + "\" is too small; ";
    }
    return text;
}

/// Kinds of sheet with more pages than this show each on one paper in one unit only, so that
/// pictures of frames are not painted ten times.
constexpr std::size_t kFewPages = 2;

/// Draws one kind of sheet and looks at its pages, or at every `of`-th from `page` on when there
/// are many. Returns how many texts it looked at.
std::size_t expect_sound(const SheetKind& kind, const SheetInput& input,
                         const SheetOptions& options, std::size_t page = 0, std::size_t of = 1) {
    const auto jobs = kind.jobs(input, options);
    if (!jobs) {
        ADD_FAILURE() << kind.name << ": " << jobs.error().message;
        return 0;
    }
    std::size_t texts = 0;
    const std::size_t step = jobs->size() > kFewPages ? of : 1;
    for (std::size_t i = step > 1 ? page : 0; i < jobs->size(); i += step) {
        const SheetJob& job = (*jobs)[i];
        SheetOptions named = options;
        named.sheet_name = job.name;
        const auto drawing = job.draw(named);
        if (!drawing) {
            // Some sheets say that their paper is too small for them.
            EXPECT_NE(drawing.error().message.find("fit"), std::string::npos)
                << job.name << ": " << drawing.error().message;
            continue;
        }
        const LayoutFaults faults = layout_faults(*drawing, input.measure);
        EXPECT_TRUE(faults.none()) << job.name << " on " << options.paper << ": " << told(faults);
        for (const Layer& layer : drawing->layers) {
            for (const Mark& mark : layer.marks) {
                texts += std::holds_alternative<Text>(mark) ? 1U : 0U;
            }
        }
    }
    return texts;
}

const std::filesystem::path kDemos = std::filesystem::path{THROWLINE_SOURCE_DIR} / "demo";
constexpr std::string_view kRecce = "harbour_kitchen.recce.txt";

/// The demos that are plans, and the one that is a recce.
std::vector<std::string> demos() {
    std::vector<std::string> names{std::string{kRecce}};
    for (const auto& entry : std::filesystem::directory_iterator{kDemos}) {
        if (entry.path().extension() == ".json") {
            names.push_back(entry.path().filename().string());
        }
    }
    std::sort(names.begin(), names.end());
    return names;
}

/// A demo, or the room that its recce makes.
plan::Plan demo_plan(const std::string& name) {
    if (name != kRecce) {
        return plan::read_plan_file(kDemos / name, sheet_catalogue()).value();
    }
    const auto text = read_text_file(kDemos / name, survey::kLargestRecceBytes);
    const auto recce = survey::read_recce(text.value());
    const auto room = survey::plan_of(survey::surveyed(recce.value().survey).value(),
                                      "harbour kitchen", UnitSystem::metric);
    return room.value().plan;
}

const SheetKind& kind_named(std::string_view name) {
    const auto kinds = all_sheets();
    return *std::find_if(kinds.begin(), kinds.end(),
                         [&](const SheetKind& kind) { return kind.name == name; });
}

class EveryDemo : public testing::TestWithParam<std::string> {};

TEST_P(EveryDemo, IsSoundOnEveryKindOfSheetOnEveryPaperInBothUnits) {
    plan::Plan plan = demo_plan(GetParam());
    std::size_t texts = 0;
    for (const UnitSystem units : {UnitSystem::metric, UnitSystem::imperial}) {
        plan.units = units;
        const checks::Analysis analysis = analysed(plan);
        const SheetInput input{analysis, sheet_catalogue(), session().measure()};
        for (std::size_t i = 0; i < kPapers.size(); ++i) {
            SheetOptions options;
            options.paper = kPapers[i];
            options.file_hash = "0123abcd";
            const std::size_t page = 2 * i + (units == UnitSystem::metric ? 0 : 1);
            for (const SheetKind& kind : all_sheets()) {
                texts += expect_sound(kind, input, options, page, 2 * kPapers.size());
            }
        }
    }
    EXPECT_GT(texts, 1000U);
}

INSTANTIATE_TEST_SUITE_P(Demos, EveryDemo, testing::ValuesIn(demos()), [](const auto& made) {
    return made.param.substr(0, made.param.find('.'));
});

/// One check a shard, so that a failure tells which plans it was.
class RandomPlans : public testing::TestWithParam<std::uint32_t> {};

TEST_P(RandomPlans, HaveSoundFloorPlans) {
    constexpr std::uint32_t kPlans = 25;
    for (std::uint32_t seed = GetParam(); seed < GetParam() + kPlans; ++seed) {
        SCOPED_TRACE(seed);
        const checks::Analysis analysis = analysed(support::random_plan(seed));
        SheetOptions options;
        options.paper = kPapers[seed % kPapers.size()];
        EXPECT_GT(expect_sound(kind_named("floor-plan"),
                               {analysis, sheet_catalogue(), session().measure()}, options),
                  30U);
    }
}

INSTANTIATE_TEST_SUITE_P(Plans, RandomPlans,
                         testing::Values(0U, 25U, 50U, 75U, 100U, 125U, 150U, 175U));

} // namespace
} // namespace throwline::sheet
