/// What can be read of damaged plans.

#include "plan/salvage.h"

#include "plan/read_plan.h"
#include "support/demo_plan.h"

#include <algorithm>
#include <fstream>
#include <gtest/gtest.h>
#include <iterator>
#include <random>

namespace throwline::plan {
namespace {

constexpr const char* kDemos[]{"cookery.json", "potters_bench.json", "workshop_interview.json"};

std::string demo_text(const char* name) {
    std::ifstream in{support::source_folder() / "demo" / name, std::ios::binary};
    return {std::istreambuf_iterator<char>{in}, {}};
}

/// Everything that has a name or a place.
std::size_t things_in(const Plan& plan) {
    return plan.room.outline.size() + plan.room.openings.size() + plan.pipes.size()
           + plan.circuits.size() + plan.scenery.size() + plan.people.size() + plan.beats.size()
           + plan.cameras.size() + plan.shots.size() + plan.booms.size() + plan.lamps.size()
           + plan.kit.size();
}

/// What must hold of any text: the rest can be read, and there is something told exactly when the
/// text cannot be.
Salvaged salvaged_well(const std::string& text) {
    const catalogue::Catalogue& catalogue = support::shipped_catalogue();
    Salvaged rest = salvaged(text, catalogue);
    const Checked<Plan> again = read_plan(written(rest.plan), catalogue);
    EXPECT_TRUE(again && *again == rest.plan) << text;
    EXPECT_EQ(rest.errors.empty(), read_plan(text, catalogue).has_value()) << text;
    EXPECT_FALSE(rest.plan.title.empty()) << text;
    EXPECT_LE(rest.errors.size(), kMostSalvageErrors);
    return rest;
}

TEST(Salvage, TakesAWholePlanAsItIs) {
    const Salvaged rest = salvaged_well(demo_text("cookery.json"));
    EXPECT_TRUE(rest.errors.empty());
    EXPECT_TRUE(rest.left_out.empty());
    EXPECT_EQ(rest.plan, support::demo_plan("cookery.json"));
}

TEST(Salvage, ReadsWhatStandsBeforeACut) {
    for (const char* demo : kDemos) {
        const std::string text = demo_text(demo);
        const std::size_t last = text.find_last_of('}');
        std::mt19937 random{7};
        for (int i = 0; i < 500; ++i) {
            const Salvaged rest = salvaged_well(text.substr(0, random() % last));
            EXPECT_FALSE(rest.errors.empty()) << demo;
        }
    }
}

TEST(Salvage, KeepsEverythingThatIsWholeBeforeACut) {
    const std::string text = demo_text("workshop_interview.json");
    const Plan whole = support::demo_plan("workshop_interview.json");
    const Salvaged rest = salvaged_well(text.substr(0, text.find("\"people\"")));
    EXPECT_EQ(rest.plan.room, whole.room);
    EXPECT_EQ(rest.plan.circuits, whole.circuits);
    EXPECT_EQ(rest.plan.scenery, whole.scenery);
    EXPECT_NE(text_of(rest.errors.front()).find("breaks off"), std::string::npos);
}

/// A byte changed, lost or added somewhere.
std::string damaged_once(std::string text, std::mt19937& random) {
    constexpr std::string_view kAdded = "{}[]\",:x\n0\\";
    const std::size_t at = random() % text.size();
    switch (random() % 3) {
    case 0:
        text[at] = static_cast<char>(random() % 256);
        break;
    case 1:
        text.erase(at, 1);
        break;
    default:
        text.insert(at, 1, kAdded[random() % kAdded.size()]);
    }
    return text;
}

/// Nearly all of a plan survives a single wrong byte: what is named elsewhere takes others with it,
/// a lost bracket at worst what stands beside it.
TEST(Salvage, KeepsNearlyEverythingOfATextWithOneWrongByte) {
    for (const char* demo : kDemos) {
        const std::string text = demo_text(demo);
        const double whole = static_cast<double>(things_in(support::demo_plan(demo)));
        std::mt19937 random{11};
        double kept = 0.0;
        int harmed = 0;
        for (int i = 0; i < 700; ++i) {
            const Salvaged rest = salvaged_well(damaged_once(text, random));
            if (!rest.errors.empty()) {
                kept += static_cast<double>(things_in(rest.plan)) / whole;
                ++harmed;
            }
        }
        ASSERT_GT(harmed, 100);
        EXPECT_GT(kept / harmed, 0.94) << demo;
    }
}

TEST(Salvage, SurvivesManyWrongBytes) {
    const std::string text = demo_text("cookery.json");
    std::mt19937 random{13};
    for (int i = 0; i < 300; ++i) {
        std::string damaged = text;
        for (auto hits = 2 + random() % 40; hits > 0; --hits) {
            damaged = damaged_once(std::move(damaged), random);
        }
        salvaged_well(damaged);
    }
}

/// Where each key's quotation marks stand.
std::vector<std::pair<std::size_t, std::size_t>> keys_of(const std::string& text) {
    std::vector<std::pair<std::size_t, std::size_t>> keys;
    for (std::size_t at = text.find('"'); at != std::string::npos; at = text.find('"', at)) {
        const std::size_t end = text.find('"', at + 1);
        if (end == std::string::npos) {
            break;
        }
        if (text.compare(end + 1, 1, ":") == 0) {
            keys.emplace_back(at, end);
        }
        at = end + 1;
    }
    return keys;
}

TEST(Salvage, SurvivesAnyKeyGarbledOrRemoved) {
    for (const char* demo : kDemos) {
        const std::string text = demo_text(demo);
        for (const auto& [begin, end] : keys_of(text)) {
            std::string garbled = text;
            std::reverse(garbled.begin() + static_cast<std::ptrdiff_t>(begin) + 1,
                         garbled.begin() + static_cast<std::ptrdiff_t>(end));
            salvaged_well(garbled);
            // Its value stays behind without it.
            salvaged_well(text.substr(0, begin) + text.substr(end + 2));
        }
    }
}

TEST(Salvage, LeavesOutOneWrongLampAndSaysWhich) {
    std::string text = demo_text("workshop_interview.json");
    const std::string lamp = "LED Fresnel 60 W";
    const std::size_t at = text.find(lamp);
    text.replace(at, lamp.size(), "no such lamp");
    const Salvaged rest = salvaged_well(text);
    const Plan whole = support::demo_plan("workshop_interview.json");
    EXPECT_EQ(rest.plan.lamps.size(), whole.lamps.size() - 1);
    EXPECT_EQ(rest.plan.scenery, whole.scenery);
    ASSERT_EQ(rest.left_out.size(), 1U);
    EXPECT_EQ(rest.left_out.front(), "lamps \"rim\"");
    EXPECT_EQ(find(rest.plan, plan::Id<plan::Lamp>{"rim"}), nullptr);
    // Told where it stands in the file that the user has.
    const auto lines =
        std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n');
    EXPECT_EQ(rest.errors.front().place.line, lines + 1);
}

TEST(Salvage, LeavesOutWhatRefersToWhatIsNotThere) {
    std::string text = demo_text("workshop_interview.json");
    const Plan whole = support::demo_plan("workshop_interview.json");
    const std::size_t at = text.find("\"cameras\"");
    const std::size_t end = text.find("\"shots\"");
    text.erase(at, end - at);
    const Salvaged rest = salvaged_well(text);
    EXPECT_TRUE(rest.plan.cameras.empty());
    EXPECT_TRUE(rest.plan.shots.empty());
    EXPECT_EQ(rest.plan.lamps, whole.lamps);
}

TEST(Salvage, GoesOnBehindALostBracket) {
    const Plan whole = support::demo_plan("workshop_interview.json");
    std::string text = demo_text("workshop_interview.json");
    // The end of the first lamp.
    const std::size_t lamp = text.find("\"lamps\"");
    text.erase(text.find('}', lamp), 1);
    EXPECT_GE(salvaged_well(text).plan.lamps.size(), whole.lamps.size() - 1);
    // The end of the scenery.
    text = demo_text("workshop_interview.json");
    text.erase(text.rfind(']', text.find("\"people\"")), 1);
    const Salvaged rest = salvaged_well(text);
    EXPECT_EQ(rest.plan.scenery, whole.scenery);
    EXPECT_EQ(rest.plan.lamps, whole.lamps);
}

TEST(Salvage, PutsBackThePartsBehindAPartWithoutEnd) {
    std::string text = demo_text("workshop_interview.json");
    // The end of the site, which the whole rest seems to be in.
    text.erase(text.rfind('}', text.find("\"room\"")), 1);
    const Salvaged rest = salvaged_well(text);
    EXPECT_EQ(rest.plan, support::demo_plan("workshop_interview.json"));
    EXPECT_FALSE(rest.errors.empty());
    EXPECT_TRUE(rest.left_out.empty());
}

TEST(Salvage, MarksBytesThatAreNoText) {
    std::string text = demo_text("workshop_interview.json");
    text[text.find("Chair Mender")] = '\xFE';
    const Salvaged rest = salvaged_well(text);
    EXPECT_NE(rest.plan.title.find("\xEF\xBF\xBDhair Mender"), std::string::npos);
    EXPECT_EQ(rest.plan.lamps, support::demo_plan("workshop_interview.json").lamps);
}

TEST(Salvage, OpensAPlanOfANewerFormatAsFarAsItIsKnown) {
    std::string text = demo_text("workshop_interview.json");
    text.replace(text.find("\"format\": 1"), 11, "\"format\": 9");
    const Salvaged rest = salvaged_well(text);
    EXPECT_EQ(rest.plan, support::demo_plan("workshop_interview.json"));
    EXPECT_FALSE(rest.errors.empty());
}

TEST(Salvage, GivesAnEmptyPlanForNoPlanAtAll) {
    for (const char* text :
         {"", "{", "[]", "nonsense", "\xff\xfe", "{\"title\": 3}", "}}}}", "]]]]", "{\"\": {\"\": ",
          "{\"title\": \"a\", \"title\": \"b\", \"lamps\": [[[[\"x\": {}]", "\"a\":1,\"b\":[2,{"}) {
        EXPECT_FALSE(salvaged_well(text).errors.empty()) << text;
    }
}

TEST(Salvage, EndsSoonForTextsMadeToTakeLong) {
    const std::string deep(200'000, '[');
    salvaged_well(deep);
    salvaged_well(deep + std::string(200'000, '{'));
    std::string wide = "{\"lamps\": [";
    for (int i = 0; i < 50'000; ++i) {
        wide += "\"a\" \"b\": {]";
    }
    EXPECT_FALSE(salvaged_well(wide).errors.empty());
}

TEST(Salvage, GivesTheSameForTheSameText) {
    std::mt19937 random{17};
    const std::string damaged =
        damaged_once(damaged_once(demo_text("cookery.json"), random), random);
    const Salvaged once = salvaged_well(damaged);
    const Salvaged again = salvaged_well(damaged);
    EXPECT_EQ(once.plan, again.plan);
    EXPECT_EQ(once.errors, again.errors);
    EXPECT_EQ(once.left_out, again.left_out);
}

} // namespace
} // namespace throwline::plan
