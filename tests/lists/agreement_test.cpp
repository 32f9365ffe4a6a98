#include "checks/circuit_sum.h"
#include "checks/things_used.h"
#include "checks/walks.h"
#include "lists/list_cases.h"
#include "plan/any_plan.h"
#include "plan/read_plan.h"

#include <algorithm>
#include <cmath>
#include <rapidcheck/gtest.h>
#include <set>

namespace throwline::lists_test {
namespace {

std::vector<std::string> sorted(std::vector<std::string> names) {
    std::sort(names.begin(), names.end());
    return names;
}

template <class Thing>
std::vector<std::string> ids_of(const std::vector<Thing>& things) {
    std::vector<std::string> names;
    for (const Thing& thing : things) {
        names.push_back(thing.id.name);
    }
    return sorted(std::move(names));
}

double full_watts(const plan::Plan& plan) {
    double watts = 0.0;
    for (const plan::Lamp& lamp : plan.lamps) {
        watts += support::shipped_catalogue().instrument(lamp.instrument)->watts;
    }
    return watts;
}

/// A shot that is taken in a beat is there once a beat.
std::vector<std::string> shots_by_beat(const plan::Plan& plan) {
    std::vector<std::string> names;
    for (const plan::Shot& shot : plan.shots) {
        names.insert(names.end(), shot.beats.size(), shot.id.name);
    }
    return sorted(std::move(names));
}

std::vector<std::string> running_order_of(const Production& production, const std::string& what) {
    const lists::Table order = list(production, "running-order");
    std::vector<std::string> names;
    for (const lists::Section& section : order.sections) {
        for (const lists::Row& row : section.rows) {
            if (cell(order, row, "what").text == what) {
                names.push_back(cell(order, row, "who").text);
            }
        }
    }
    return sorted(std::move(names));
}

void expect_lamps_once(const Production& production) {
    for (const char* name :
         {"lamps-by-position", "lamps-by-channel", "lamps-by-circuit", "cables"}) {
        EXPECT_EQ(sorted(texts(list(production, name), "lamp")), ids_of(production.plan().lamps))
            << name << " of " << production.name;
    }
}

void expect_power_agrees(const Production& production) {
    const double watts = full_watts(production.plan());
    for (const char* name :
         {"lamps-by-position", "lamps-by-channel", "lamps-by-circuit", "power"}) {
        EXPECT_NEAR(sum(list(production, name), "power_w"), watts, 1e-6)
            << name << " of " << production.name;
    }
    const lists::Table power = list(production, "power");
    const lists::Table by_circuit = list(production, "lamps-by-circuit");
    for (std::size_t i = 0; i < production.plan().circuits.size(); ++i) {
        const plan::Circuit& circuit = production.plan().circuits[i];
        const lists::Row& row = power.sections.front().rows[i];
        const checks::CircuitSum checked =
            checks::sum_of(circuit, production.plan(), support::shipped_catalogue());
        EXPECT_EQ(cell(power, row, "circuit").text, circuit.id.name);
        EXPECT_EQ(cell(power, row, "current_a").number, checked.current_a);
        EXPECT_EQ(cell(power, row, "left_a").number,
                  checks::allowed_a(circuit) - checked.current_a);
        double summed_a = 0.0;
        for (const lists::Section& section : by_circuit.sections) {
            for (const lists::Row& lamp : section.rows) {
                summed_a += cell(by_circuit, lamp, "circuit").text == circuit.id.name && !lamp.total
                                ? cell(by_circuit, lamp, "current_a").number.value_or(0.0)
                                : 0.0;
            }
        }
        EXPECT_NEAR(summed_a, checked.current_a, 1e-9) << circuit.id.name;
    }
}

/// What the list says is over is what the check finds.
void expect_overloads_agree(const Production& production) {
    std::set<std::string> found;
    for (const checks::Finding& finding : production.analysis.findings) {
        if (finding.check == "circuit-load" && finding.severity == checks::Severity::error) {
            found.insert(finding.things.front());
        }
    }
    const lists::Table power = list(production, "power");
    std::set<std::string> listed;
    for (const lists::Row& row : power.sections.front().rows) {
        if (!row.total && *cell(power, row, "left_a").number < -1e-9) {
            listed.insert(cell(power, row, "circuit").text);
        }
    }
    EXPECT_EQ(listed, found) << production.name;
}

void expect_shots_everywhere(const Production& production) {
    EXPECT_EQ(sorted(texts(list(production, "shots"), "shot")), ids_of(production.plan().shots))
        << production.name;
    EXPECT_EQ(running_order_of(production, "shot"), shots_by_beat(production.plan()))
        << production.name;
    EXPECT_EQ(sorted(texts(list(production, "camera-cards"), "shot")),
              shots_by_beat(production.plan()))
        << production.name;
}

void expect_kit_counts(const Production& production) {
    const lists::Table kit = list(production, "kit");
    checks::ThingsUsed used = checks::things_used(production.plan());
    used.erase("");
    double count = 0.0;
    for (const auto& [item, users] : used) {
        count += static_cast<double>(users.size());
    }
    EXPECT_EQ(sum(kit, "used"), count) << production.name;
    std::set<std::string> short_of;
    for (const checks::Finding& finding : production.analysis.findings) {
        if (finding.check == "kit") {
            short_of.insert(finding.message);
        }
    }
    std::size_t listed = 0;
    for (const lists::Section& section : kit.sections) {
        for (const lists::Row& row : section.rows) {
            listed += cell(kit, row, "short").number ? 1 : 0;
        }
    }
    EXPECT_EQ(listed, short_of.size()) << production.name;
}

void expect_walks_agree(const Production& production) {
    const plan::Plan& plan = production.plan();
    double walked_m = 0.0;
    for (std::size_t beat = 0; beat < plan.beats.size(); ++beat) {
        for (const checks::Walk& walk : checks::walks_into(plan, beat)) {
            const double length_m = checks::length_m(walk);
            walked_m += length_m >= 0.05 ? length_m : 0.0;
        }
    }
    const lists::Table order = list(production, "running-order");
    double listed_m = 0.0;
    for (const lists::Section& section : order.sections) {
        for (const lists::Row& row : section.rows) {
            listed_m += row.topic == lists::Topic::people
                            ? cell(order, row, "length_m").number.value_or(0.0)
                            : 0.0;
        }
    }
    EXPECT_NEAR(listed_m, walked_m, 1e-6) << production.name;
}

void expect_agreement(const Production& production) {
    expect_lamps_once(production);
    expect_power_agrees(production);
    expect_overloads_agree(production);
    expect_shots_everywhere(production);
    expect_kit_counts(production);
    expect_walks_agree(production);
}

TEST(Lists, AgreeWithEachOtherAndThePlan) {
    for (const Production& production : productions()) {
        expect_agreement(production);
    }
}

TEST(Lists, HaveACellForEveryColumnAndAUnitForEveryNumber) {
    const std::vector<std::string> kUnits{"_m",  "_w",   "_a", "_v",      "_kg",
                                          "_mm", "_deg", "_t", "_percent"};
    const std::set<std::string> kPlain{"channel", "pieces", "used", "owned", "short"};
    for (const Production& production : productions()) {
        for (const lists::ListKind& kind : lists::all_lists()) {
            const lists::Table table = list(production, std::string{kind.name});
            EXPECT_EQ(table.name, kind.name);
            EXPECT_EQ(table.title, kind.title);
            for (const lists::Section& section : table.sections) {
                for (const lists::Row& row : section.rows) {
                    ASSERT_EQ(row.cells.size(), table.columns.size()) << table.name;
                    for (std::size_t i = 0; i < row.cells.size(); ++i) {
                        const std::string& key = table.columns[i].key;
                        const bool has_unit =
                            kPlain.count(key) > 0
                            || std::any_of(kUnits.begin(), kUnits.end(),
                                           [&](const auto& unit) { return key.ends_with(unit); });
                        EXPECT_TRUE(!row.cells[i].number || has_unit) << table.name << " " << key;
                        EXPECT_TRUE(!row.cells[i].number || std::isfinite(*row.cells[i].number));
                    }
                }
            }
        }
    }
}

TEST(Lists, AreTheSameEveryTime) {
    const plan::Plan plan = support::demo_plan("cookery.json");
    for (const lists::ListKind& kind : lists::all_lists()) {
        const std::string name{kind.name};
        EXPECT_EQ(lists::as_json(list(production_of(plan), name)),
                  lists::as_json(list(production_of(plan), name)));
    }
}

TEST(Lists, TellTheUsualCautions) {
    const Production production = production_of(support::demo_plan("cookery.json"));
    for (const char* name : {"lamps-by-position", "lamps-by-circuit", "power", "cables"}) {
        EXPECT_GE(list(production, name).cautions.size(), 2U) << name;
    }
}

// A plan of random parts, read as the program would read it.
RC_GTEST_PROP(Lists, AgreeOnAnyPlan, ()) {
    expect_agreement(production_of(plan::testing::any_plan()));
    RC_ASSERT(!testing::Test::HasFailure());
}

} // namespace
} // namespace throwline::lists_test
