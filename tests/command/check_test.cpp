#include "checks/check.h"
#include "command/bare_studio.h"
#include "command/call.h"
#include "command/cautions.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace throwline::command_test {
namespace {

bool says(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

TEST(CheckCommand, IsContentWithACleanPlan) {
    const Called answer = call({"check", "-"}, bare_studio(32));
    EXPECT_EQ(answer.code, 0) << answer.out << answer.err;
    EXPECT_EQ(answer.out, "0 errors, 0 cautions, 0 notes\n");
    const Called json = call({"check", "-", "--json"}, bare_studio(32));
    EXPECT_EQ(size_at(json, "/findings"), 0U);
    EXPECT_EQ(number_at(json, "/errors"), 0.0);
}

// 3000 W / 230 V = 13.04 A on 10 A.
TEST(CheckCommand, ReturnsOneForAnError) {
    const Called answer = call({"check", "-"}, bare_studio(10));
    EXPECT_EQ(answer.code, 1);
    EXPECT_TRUE(answer.err.empty()) << answer.err;
    EXPECT_TRUE(answer.out.starts_with("Errors\n  1  Circuit C1 would carry 13.0 A")) << answer.out;
    EXPECT_TRUE(says(answer.out, "\n1 error, 0 cautions, 0 notes\n")) << answer.out;
    EXPECT_TRUE(says(answer.out, "licensed electrician decide")) << answer.out;
}

TEST(CheckCommand, KeepsTheKeysThatScriptsRelyOn) {
    const Called answer = call({"check", "-", "--json"}, bare_studio(10));
    EXPECT_EQ(answer.code, 1);
    ASSERT_EQ(size_at(answer, "/findings"), 1U);
    EXPECT_EQ(text_at(answer, "/findings/0/check"), "circuit-load");
    EXPECT_EQ(text_at(answer, "/findings/0/severity"), "error");
    EXPECT_TRUE(is_null_at(answer, "/findings/0/shot"));
    EXPECT_TRUE(is_null_at(answer, "/findings/0/beat"));
    EXPECT_EQ(size_at(answer, "/findings/0/things"), 3U);
    EXPECT_EQ(text_at(answer, "/findings/0/things/0"), "C1");
    EXPECT_EQ(number_at(answer, "/findings/0/x_m"), 1.0);
    EXPECT_EQ(number_at(answer, "/findings/0/y_m"), 1.5);
    EXPECT_TRUE(says(text_at(answer, "/findings/0/message"), "Circuit C1"));
    EXPECT_EQ(text_at(answer, "/findings/0/working/result"), "13.04 A");
    EXPECT_EQ(number_at(answer, "/errors"), 1.0);
    EXPECT_EQ(size_at(answer, "/mind"), 1U);
}

TEST(CheckCommand, LetsTheCrewAcceptAnError) {
    const std::string accepted =
        R"(, "accepted": [ { "check": "circuit-load", "reason": "only one is on at a time" } ])";
    const Called answer = call({"check", "-"}, bare_studio(10, accepted));
    EXPECT_EQ(answer.code, 0) << answer.out << answer.err;
    EXPECT_TRUE(says(answer.out, "Accepted\n  1  ")) << answer.out;
    EXPECT_TRUE(says(answer.out, "accepted: only one is on at a time")) << answer.out;
    EXPECT_TRUE(says(answer.out, "0 errors, 0 cautions, 0 notes; 1 accepted")) << answer.out;
    EXPECT_EQ(
        text_at(call({"check", "-", "--json"}, bare_studio(10, accepted)), "/findings/0/accepted"),
        "only one is on at a time");
}

TEST(CheckCommand, ShowsTheWorkingOfEachFinding) {
    EXPECT_FALSE(says(call({"check", "-"}, bare_studio(10)).out, "result: 13.04 A"));
    EXPECT_TRUE(says(call({"check", "-", "--working"}, bare_studio(10)).out, "result: 13.04 A"));
}

TEST(CheckCommand, PointsIntoAPlanThatItCannotRead) {
    const WorkingFolder folder;
    std::string plan = bare_studio(10);
    plan.replace(plan.find("\"circuits\""), 10, "\"circiuts\"");
    write("plan.json", plan);
    const Called answer = call({"check", "plan.json"});
    EXPECT_EQ(answer.code, 2);
    EXPECT_TRUE(answer.out.empty());
    EXPECT_TRUE(says(answer.err, "throwline: plan.json:5:3: ")) << answer.err;
    EXPECT_TRUE(says(answer.err, "circuits")) << answer.err;
}

TEST(CheckCommand, RefusesWhatIsNoPlan) {
    const WorkingFolder folder;
    write("empty.json", "");
    for (const char* name : {"missing.json", "empty.json", ".", "/dev/null"}) {
        const Called answer = call({"check", name});
        EXPECT_EQ(answer.code, 2) << name;
        EXPECT_TRUE(answer.err.starts_with("throwline: ")) << name << answer.err;
    }
    EXPECT_EQ(call({"check"}).code, 2);
    EXPECT_EQ(call({"check", "-"}, "").code, 2);
}

TEST(CheckCommand, ListsEveryCheckWithItsRule) {
    const Called json = call({"check", "--list", "--json"});
    EXPECT_EQ(json.code, 0);
    const auto checks = checks::all_checks();
    ASSERT_EQ(size_at(json, "/checks"), checks.size());
    const Called text = call({"check", "--list"});
    for (const checks::Check& check : checks) {
        EXPECT_TRUE(says(text.out, std::string{check.id} + ": ")) << check.id;
    }
}

TEST(Cautions, BelongToChecksThatExist) {
    const auto checks = checks::all_checks();
    for (const std::string& id : command::checks_with_caution()) {
        EXPECT_TRUE(std::any_of(checks.begin(), checks.end(), [&](const checks::Check& check) {
            return check.id == id;
        })) << id;
    }
}

} // namespace
} // namespace throwline::command_test
