#include "plan/differences.h"

#include "plan/any_plan.h"
#include "plan/read_plan.h"
#include "plan/reading_support.h"

#include <filesystem>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <rapidcheck/gtest.h>

/// Whatever is edited in a plan file is a difference: each place of the file is edited in several
/// ways, and whatever the reader still takes as a plan must differ exactly when it is not equal.
namespace throwline::plan {
namespace {

using Json = nlohmann::ordered_json;

/// Pointers to every value in a document, inner ones too.
void add_pointers(const Json& value, const Json::json_pointer& here,
                  std::vector<Json::json_pointer>& into) {
    into.push_back(here);
    if (value.is_object()) {
        for (const auto& [key, member] : value.items()) {
            add_pointers(member, here / key, into);
        }
    } else if (value.is_array()) {
        for (std::size_t i = 0; i < value.size(); ++i) {
            add_pointers(value[i], here / i, into);
        }
    }
}

std::vector<Json::json_pointer> pointers_in(const Json& document) {
    std::vector<Json::json_pointer> pointers;
    add_pointers(document, Json::json_pointer{}, pointers);
    return pointers;
}

/// What could stand there instead.
std::vector<Json> instead_of(const Json& value) {
    std::vector<Json> others;
    if (value.is_number_integer()) {
        others = {value.get<int>() + 1, value.get<int>() - 1, value.get<int>() + 90};
    } else if (value.is_number()) {
        const double number = value.get<double>();
        others = {number + 0.5, number - 0.125, number * (1.0 + 1e-12), number + 2e-4};
    } else if (value.is_boolean()) {
        others = {!value.get<bool>()};
    } else if (value.is_string()) {
        others = {value.get<std::string>() + " again",
                  "fill",
                  "sit",
                  "door",
                  "metric",
                  "12:45",
                  "1/48",
                  "2026-01-02"};
    } else if (value.is_array() && !value.empty()) {
        others = {value, value};
        std::reverse(others[0].begin(), others[0].end());
        others[1].erase(0);
    }
    return others;
}

void erase(Json& document, const Json::json_pointer& pointer) {
    Json& parent = document.at(pointer.parent_pointer());
    if (parent.is_object()) {
        parent.erase(pointer.back());
    } else {
        parent.erase(std::stoul(pointer.back()));
    }
}

/// How often an edit at one place made another plan; nothing when a difference was missed.
std::optional<int> edits_told(const Plan& plan, const Json& document,
                              const Json::json_pointer& pointer) {
    int told = 0;
    std::vector<Json> edited;
    for (Json& other : instead_of(document.at(pointer))) {
        edited.push_back(document);
        edited.back()[pointer] = std::move(other);
    }
    if (!pointer.empty()) {
        edited.push_back(document);
        erase(edited.back(), pointer);
    }
    for (const Json& other : edited) {
        const auto now = testing::read(other.dump());
        if (!now) {
            continue;
        }
        if (differences(plan, *now).empty() != (plan == *now)
            || differences(*now, plan).empty() != (plan == *now)) {
            return std::nullopt;
        }
        told += plan == *now ? 0 : 1;
    }
    return told;
}

RC_GTEST_PROP(Differences, AnyEditIsOne, ()) {
    const Plan plan = testing::any_plan();
    const Json document = Json::parse(written(plan));
    const auto pointers = pointers_in(document);
    constexpr int kPlaces = 25;
    for (int i = 0; i < kPlaces; ++i) {
        const auto pointer = pointers[*rc::gen::inRange<std::size_t>(0, pointers.size())];
        if (!edits_told(plan, document, pointer)) {
            RC_FAIL(pointer.to_string());
        }
    }
}

TEST(Differences, EveryEditOfADemoIsOne) {
    for (const auto& entry : std::filesystem::directory_iterator{THROWLINE_SOURCE_DIR "/demo"}) {
        if (entry.path().extension() != ".json") {
            continue;
        }
        const auto plan = read_plan_file(entry.path(), testing::tables());
        ASSERT_TRUE(plan) << entry.path();
        const Json document = Json::parse(written(*plan));
        int all = 0;
        for (const auto& pointer : pointers_in(document)) {
            const std::optional<int> told = edits_told(*plan, document, pointer);
            EXPECT_TRUE(told) << entry.path() << pointer.to_string();
            all += told.value_or(0);
        }
        EXPECT_GT(all, 300) << entry.path();
    }
}

} // namespace
} // namespace throwline::plan
