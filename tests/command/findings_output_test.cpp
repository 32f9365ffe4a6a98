#include "command/findings_output.h"

#include <gtest/gtest.h>

namespace throwline::command {
namespace {

checks::Finding finding(const std::string& shot, const std::string& thing) {
    checks::Finding made;
    made.check = "in-the-frame";
    made.severity = checks::Severity::error;
    made.shot = {shot};
    made.things = {thing};
    made.message = thing + " is in the frame in shot " + shot + ".";
    return made;
}

TEST(FindingsOutput, GivesOneMatterOneNumber) {
    const std::vector<checks::Finding> findings{finding("1A", "stand"), finding("1B", "boom"),
                                                finding("2A", "stand")};
    EXPECT_EQ(findings_text(findings, false),
              "Errors\n"
              "  1  stand is in the frame in shot 1A. Also shot 2A. [in-the-frame]\n"
              "  2  boom is in the frame in shot 1B. [in-the-frame]\n"
              "\n"
              "2 errors, 0 cautions, 0 notes\n");
    const std::string json = text_of(JsonValue{findings_json(findings)});
    std::string numbers;
    for (auto at = json.find("\"number\": "); at != std::string::npos;
         at = json.find("\"number\": ", at + 1)) {
        numbers += json[at + 10];
    }
    EXPECT_EQ(numbers, "121");
}

TEST(FindingsOutput, PutsEachSeverityUnderItsHeading) {
    std::vector<checks::Finding> findings{finding("1A", "stand"), finding("1A", "boom")};
    findings[1].severity = checks::Severity::note;
    findings.push_back(finding("1A", "lamp"));
    findings[2].accepted = "it is a practical";
    EXPECT_EQ(findings_text(findings, false),
              "Errors\n"
              "  1  stand is in the frame in shot 1A. [in-the-frame]\n"
              "\nNotes\n"
              "  2  boom is in the frame in shot 1A. [in-the-frame]\n"
              "\nAccepted\n"
              "  3  lamp is in the frame in shot 1A. [in-the-frame]\n"
              "     accepted: it is a practical\n"
              "\n"
              "1 error, 0 cautions, 1 note; 1 accepted\n");
}

} // namespace
} // namespace throwline::command
