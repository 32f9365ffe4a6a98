#include "command/call.h"
#include "command/refusal.h"

#include <filesystem>
#include <fmt/format.h>

namespace throwline::command_test {
namespace {

using namespace std::string_literals;

std::string demo_text() {
    return read(THROWLINE_SOURCE_DIR "/demo/potters_bench.json");
}

std::string repeated(const std::string& text, std::size_t times) {
    std::string all;
    for (std::size_t i = 0; i < times; ++i) {
        all += text;
    }
    return all;
}

/// A file with that text, and one that must never come to be.
class BadPlanText : public testing::Test {
  protected:
    /// Both commands that read a plan, from a file and from standard input.
    void expect_refused(const std::string& text, const std::string& what) {
        write("bad plan.json", text);
        expect_refused({"check", "bad plan.json"}, "", "bad plan.json", what);
        expect_refused({"check", "-", "--json"}, text, "standard input", what);
        expect_refused({"sheet", "bad plan.json", "-o", "sheet.pdf"}, "", "bad plan.json", what);
        EXPECT_FALSE(std::filesystem::exists("sheet.pdf")) << what;
    }

  private:
    void expect_refused(const std::vector<std::string>& words, const std::string& typed,
                        const std::string& file, const std::string& what) {
        const Called called = call(words, typed);
        EXPECT_TRUE(refuses(called.code, called.out, called.err, file))
            << what << ", " << words.front();
    }

    WorkingFolder folder_;
};

TEST_F(BadPlanText, TextThatIsNoPlanIsRefused) {
    std::string all_bytes;
    for (int byte = 0; byte < 256; ++byte) {
        all_bytes.push_back(static_cast<char>(byte));
    }
    const std::vector<std::string> texts{
        "",
        " \n\t",
        "\xEF\xBB\xBF",
        all_bytes,
        "\0"s,
        std::string(10'000, '\0'),
        "\x7F"
        "ELF\x02\x01\x01"s,
        "null",
        "true",
        "-0",
        "\"plan\"",
        "[]",
        "{}",
        "{\"format\": 1}",
        "{\"format\": 99, \"title\": \"newer\"}",
        "{\"format\": \"1\"}",
        "NaN",
        "[Infinity, -Infinity]",
        "{'format': 1}",
        "{\"a\\nb\": 1, \"\\u001b[2J\": 2}",
        "{\"\": {}}",
        demo_text() + "x",
        demo_text() + demo_text(),
        demo_text() + "\0"s,
    };
    for (const std::string& text : texts) {
        expect_refused(text, text.substr(0, 40));
    }
}

TEST_F(BadPlanText, EveryFiftiethPrefixOfAPlanIsRefused) {
    std::string text = demo_text();
    text.erase(text.find_last_of('}')); // What follows is only white space.
    for (std::size_t size = 0; size < text.size(); size += 50) {
        expect_refused(text.substr(0, size), fmt::format("the first {} bytes", size));
    }
}

TEST_F(BadPlanText, DeepNestingIsRefused) {
    constexpr std::size_t kDeep = 10'000;
    expect_refused(repeated("[", kDeep), "open arrays");
    expect_refused(repeated("[", kDeep) + repeated("]", kDeep), "arrays");
    expect_refused(repeated("{\"a\":", kDeep) + "1" + repeated("}", kDeep), "objects");
    expect_refused("{\"extra\":" + repeated("{\"a\":[", kDeep) + repeated("]}", kDeep) + "}",
                   "below extra");
}

TEST_F(BadPlanText, ManyOfAThingAreRefused) {
    expect_refused("{\"lamps\": [" + repeated("{},", 20'000) + "{}]}", "lamps");
    expect_refused("{\"lamps\": [" + repeated("{\"x\":1},", 9'000) + "{}]}", "unknown keys");
    std::string corners = "[0, 0]";
    for (int i = 1; i < 2000; ++i) {
        corners += fmt::format(",[{},{}]", i, i % 2 + 1);
    }
    expect_refused("{\"format\":1,\"title\":\"\",\"room\":{\"height\":3,\"outline\":[" + corners
                       + "]}}",
                   "corners");
    std::string keys = "{";
    for (int i = 0; i < 50'000; ++i) {
        keys += fmt::format("\"key {}\":0,", i);
    }
    expect_refused(keys + "\"last\":0}", "keys");
    expect_refused("{\"" + std::string(1'000'000, 'k') + "\":1}", "a long key");
    expect_refused("{\"title\":\"" + std::string(1'000'000, 't') + "\"}", "a long title");
}

struct Change {
    std::string from;
    std::string to;
};

class ChangedPlan : public BadPlanText, public testing::WithParamInterface<Change> {};

TEST_P(ChangedPlan, IsRefused) {
    std::string text = demo_text();
    const std::size_t at = text.find(GetParam().from);
    ASSERT_NE(at, std::string::npos) << GetParam().from;
    text.replace(at, GetParam().from.size(), GetParam().to);
    expect_refused(text, GetParam().to);
}

const std::string kRoomHeight = R"("height": "15ft")";
const std::string kOutline = R"([["0", "0"], ["32ft", "0"], ["32ft", "24ft"], ["0", "24ft"]])";

INSTANTIATE_TEST_SUITE_P(
    Numbers, ChangedPlan,
    testing::Values(
        Change{kRoomHeight, R"("height": 1e308)"}, Change{kRoomHeight, R"("height": -1e308)"},
        Change{kRoomHeight, R"("height": 1e400)"}, Change{kRoomHeight, R"("height": 1e-400)"},
        Change{kRoomHeight, R"("height": NaN)"}, Change{kRoomHeight, R"("height": -Infinity)"},
        Change{kRoomHeight, R"("height": "NaN")"}, Change{kRoomHeight, R"("height": "1e308 m")"},
        Change{kRoomHeight, R"("height": "99999999999999999999ft")"},
        Change{kRoomHeight, R"("height": "1/0 in")"}, Change{kRoomHeight, R"("height": "-15ft")"},
        Change{kRoomHeight, R"("height": 0)"}, Change{kRoomHeight, R"("height": -0)"},
        Change{R"("widths": ["2ft",)", R"("widths": ["-2ft",)"},
        Change{R"("stature": "5' 6\"")", R"("stature": "0")"},
        Change{R"("count": [7, 5])", R"("count": [1e9, 1e9])"},
        Change{R"("count": [7, 5])", R"("count": [-7, 5])"},
        Change{R"("pitch": ["4ft", "4ft"])", R"("pitch": [0, 0])"},
        Change{R"("focal": "28mm")", R"("focal": 0)"}, Change{R"("stop": 2.8)", R"("stop": -2.8)"},
        Change{R"("volts": 120)", R"("volts": 0)"}, Change{R"("channel": 1)", R"("channel": 1.5)"},
        Change{R"("level": 0.8)", R"("level": 1e308)"},
        Change{R"("north": "12deg")", R"("north": "1e9deg")"}));

INSTANTIATE_TEST_SUITE_P(
    Types, ChangedPlan,
    testing::Values(Change{kRoomHeight, R"("height": null)"},
                    Change{kRoomHeight, R"("height": ["15ft"])"},
                    Change{kRoomHeight, R"("height": {})"}, Change{kOutline, "{}"},
                    Change{kOutline, R"([[0, 0], 1, [2, 2]])"},
                    Change{kOutline, R"([[0, 0, 0], [4, 0, 0], [4, 4, 0]])"},
                    Change{R"("title": "Potter's bench, insert")", R"("title": 7)"},
                    Change{R"("title": "Potter's bench, insert")", R"("title": "a\tb")"},
                    Change{R"("id": "L1")", R"("id": 1)"}, Change{R"("id": "L1")", R"("id": "")"},
                    Change{R"("dressed": false)", R"("dressed": "no")"},
                    Change{R"("beats": ["1"])", R"("beats": "1")"},
                    Change{R"("marks": { "potter")", R"("marks": { "": {}, "potter")"},
                    Change{R"("format": 1)", R"("format": 1.5)"}));

INSTANTIATE_TEST_SUITE_P(
    Shapes, ChangedPlan,
    testing::Values(Change{kOutline, "[]"}, Change{kOutline, "[[0, 0], [4, 0]]"},
                    Change{kOutline, "[[0, 0], [4, 4], [4, 0], [0, 4]]"},
                    Change{kOutline, "[[0, 0], [4, 0], [4, 0], [4, 4]]"},
                    Change{kOutline, "[[0, 0], [4, 0], [4, 4], [0, 0]]"},
                    Change{kOutline, "[[0, 0], [4, 0], [8, 0]]"},
                    Change{kOutline, "[[0, 0], [0, 0], [0, 0]]"},
                    Change{R"("wall": )", R"("wall": 9)"},
                    Change{R"("from_start": "3ft")", R"("from_start": "23ft")"}));

INSTANTIATE_TEST_SUITE_P(
    References, ChangedPlan,
    testing::Values(Change{R"("camera": "camera 1")", R"("camera": "camera 9")"},
                    Change{R"("beats": ["1"])", R"("beats": ["9"])"},
                    Change{R"("beats": ["1"])", R"("beats": [])"},
                    Change{R"("subjects": ["potter"])", R"("subjects": ["nobody"])"},
                    Change{R"("faces": "potter")", R"("faces": "nobody")"},
                    Change{R"("aim": "potter")", R"("aim": "nobody")"},
                    Change{R"("circuit": "C1")", R"("circuit": "C9")"},
                    Change{R"("hang": "C2")", R"("hang": "Z99")"},
                    Change{R"("lens": "field zoom 18x")", R"("lens": "no such zoom")"},
                    Change{R"("sensor": "2/3-type 16:9")", R"("sensor": "")"},
                    Change{R"("instrument": "Fresnel 1 kW")", R"("instrument": "Fresnel 9 kW")"},
                    Change{R"("filters": ["quarter blue"])", R"("filters": ["quarter mauve"])"},
                    Change{R"("item": "stool")", R"("item": "throne")"},
                    Change{R"("id": "L2")", R"("id": "L1")"}));

} // namespace
} // namespace throwline::command_test
