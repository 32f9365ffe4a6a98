#include "catalogue/json_document.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <rapidcheck/gtest.h>

using namespace throwline;
using namespace throwline::catalogue;
using namespace std::string_literals;

namespace {

/// The independent reader of RFC 8259 that ours is compared with.
bool library_accepts(const std::string& text) {
    return nlohmann::json::accept(text);
}

/// `opening` as many times as asked, the middle, and as many times `closing`.
std::string enclosed(std::string_view opening, int times, std::string_view middle,
                     std::string_view closing) {
    std::string text;
    for (int i = 0; i < times; ++i) {
        text.append(opening);
    }
    text.append(middle);
    for (int i = 0; i < times; ++i) {
        text.append(closing);
    }
    return text;
}

/// The value of one tree as the other would hold it, to compare whole documents.
nlohmann::json as_library(const JsonNode& node) {
    switch (node.kind) {
    case JsonKind::null:
        return nullptr;
    case JsonKind::boolean:
        return node.boolean;
    case JsonKind::number:
        return node.number;
    case JsonKind::string:
        return node.text;
    case JsonKind::array: {
        nlohmann::json list = nlohmann::json::array();
        for (const JsonNode& item : node.items) {
            list.push_back(as_library(item));
        }
        return list;
    }
    case JsonKind::object: {
        nlohmann::json object = nlohmann::json::object();
        for (const JsonMember& member : node.members) {
            object[member.key] = as_library(member.value);
        }
        return object;
    }
    }
    return nullptr;
}

} // namespace

TEST(JsonHostile, MalformedTextIsRefusedAsTheLibraryRefusesIt) {
    const std::vector<std::string> texts{""s,
                                         " "s,
                                         "\0"s,
                                         "\0\0\0\0"s,
                                         "\x7F"
                                         "ELF\x02\x01\x01\0"s,
                                         "{"s,
                                         "["s,
                                         "}"s,
                                         "]"s,
                                         ","s,
                                         ":"s,
                                         "{]"s,
                                         "[}"s,
                                         "[1,]"s,
                                         "[,1]"s,
                                         "[1,,2]"s,
                                         "{,}"s,
                                         "{\"a\"}"s,
                                         "{\"a\":}"s,
                                         "{\"a\":1,}"s,
                                         "{a:1}"s,
                                         "{'a':1}"s,
                                         "{1:1}"s,
                                         "{null:1}"s,
                                         "{\"a\":1 \"b\":2}"s,
                                         "[1"s,
                                         "[1,"s,
                                         "{\"a\""s,
                                         "{\"a\":"s,
                                         "{\"a\":1"s,
                                         "{\"a\":1,"s,
                                         "\""s,
                                         "\"abc"s,
                                         "\"\\"s,
                                         "\"\\\""s,
                                         "\"\\q\""s,
                                         "\"\\u12\""s,
                                         "\"\\u12G4\""s,
                                         "\"\\u\""s,
                                         "\"\\ud800\""s,
                                         "\"\\udc00\""s,
                                         "\"\\ud800\\ud800\""s,
                                         "\"\\ud800x\""s,
                                         "\"\\ud800\\n\""s,
                                         "\"\n\""s,
                                         "\"\t\""s,
                                         "\"\x01\""s,
                                         "\"\0\""s,
                                         "\"\x80\""s,
                                         "\"\xC0\xAF\""s,
                                         "\"\xC3\""s,
                                         "\"\xE0\x80\x80\""s,
                                         "\"\xED\xA0\x80\""s,
                                         "\"\xF4\x90\x80\x80\""s,
                                         "\"\xF5\x80\x80\x80\""s,
                                         "\"\xFF\""s,
                                         "\"\xF0\x9F\x8E\""s,
                                         "\xFE\xFF\0{\0}"s,
                                         "\xEF\xBB"s,
                                         "tru"s,
                                         "True"s,
                                         "nul"s,
                                         "nulll"s,
                                         "NaN"s,
                                         "Infinity"s,
                                         "-Infinity"s,
                                         "-"s,
                                         "+1"s,
                                         ".5"s,
                                         "1."s,
                                         "1.e3"s,
                                         "1e"s,
                                         "1e+"s,
                                         "01"s,
                                         "-01"s,
                                         "0x10"s,
                                         "1_000"s,
                                         "1,5"s,
                                         "1 2"s,
                                         "{} x"s,
                                         "[] []"s,
                                         "// c\n1"s,
                                         "/* c */1"s,
                                         "1 // c"s,
                                         "\xC2\xA0"
                                         "1"s,
                                         "\v1"s,
                                         "1e400"s,
                                         "-1e400"s,
                                         "[1e999999999]"s};
    for (const std::string& text : texts) {
        SCOPED_TRACE(testing::PrintToString(text));
        const Checked<JsonNode> node = parse_json(text, "bad.json");
        ASSERT_FALSE(node);
        EXPECT_EQ(node.error().size(), 1U);
        EXPECT_GT(node.error().front().place.line, 0);
        EXPECT_GT(node.error().front().place.column, 0);
        EXPECT_FALSE(library_accepts(text));
    }
}

TEST(JsonHostile, TooMuchIsRefusedThoughTheLibraryTakesIt) {
    const std::vector<std::string> texts{
        R"({"a":1,"a":1})",
        R"({"a":1,"\u0061":1})",
        R"("\u0000")",
        R"({"\u0000":1})",
        "1e-400",
        "[1]\0"s,
        "[1]\0junk"s,
        enclosed("[", 65, "", "]"),
        enclosed("[", 10'000, "", "]"),
        enclosed("{\"a\":", 10'000, "1", "}"),
        fmt::format("[{}0]", enclosed("0,", kMostJsonValues, "", "")),
        fmt::format("{{{}\"a\":0}}", enclosed("\"a\":0,", 100'000, "", "")),
        fmt::format("{{\"{}\":1}}", std::string(kLongestJsonKey + 1, 'k'))};
    for (const std::string& text : texts) {
        SCOPED_TRACE(text.substr(0, 40));
        const Checked<JsonNode> node = parse_json(text, "much.json");
        ASSERT_FALSE(node);
        EXPECT_LE(node.error().size(), 100U);
        EXPECT_TRUE(library_accepts(text));
    }
}

TEST(JsonHostile, NestingUpToTheCapIsRead) {
    const std::string text = enclosed("[", kDeepestJson, "", "]");
    EXPECT_TRUE(parse_json(text));
}

TEST(JsonHostile, EveryTruncationIsRefusedAndEveryFlippedByteSurvived) {
    const std::string whole =
        R"({"name": "5’ 9½” \u00e9\n", "list": [1.5e3, -0.25, true, null, {"a/b~": []}]})";
    ASSERT_TRUE(parse_json(whole));
    for (std::size_t length = 0; length < whole.size(); ++length) {
        EXPECT_FALSE(parse_json(std::string_view{whole}.substr(0, length))) << length;
    }
    for (std::size_t at = 0; at < whole.size(); ++at) {
        for (unsigned byte = 0; byte < 256; ++byte) {
            std::string changed = whole;
            changed[at] = static_cast<char>(static_cast<unsigned char>(byte));
            const Checked<JsonNode> node = parse_json(changed);
            ASSERT_TRUE(!node || library_accepts(changed)) << changed;
        }
    }
}

RC_GTEST_PROP(JsonHostile, AgreesWithTheLibraryOnShuffledTokens, ()) {
    const std::vector<std::string> tokens = *rc::gen::container<std::vector<std::string>>(
        rc::gen::element("{"s, "}"s, "["s, "]"s, ","s, ":"s, "\"a\""s, "\"b\\n\""s, "1"s, "-2.5e1"s,
                         "true"s, "null"s, " "s, "\n"s, "\"é\""s, "{\"c\":1}"s, "[2,3]"s));
    std::string text;
    for (const std::string& token : tokens) {
        text += token;
    }
    const Checked<JsonNode> node = parse_json(text);
    if (node) {
        RC_ASSERT(library_accepts(text));
        RC_ASSERT(as_library(*node) == nlohmann::json::parse(text));
    } else if (node.error().front().message.find("given twice") == std::string::npos) {
        RC_ASSERT(!library_accepts(text));
    }
}

RC_GTEST_PROP(JsonHostile, ReadsBackWhatTheLibraryWrites, ()) {
    const auto names = *rc::gen::arbitrary<std::vector<int>>();
    const auto numbers = *rc::gen::arbitrary<std::vector<double>>();
    nlohmann::json document = nlohmann::json::object();
    for (const int name : names) {
        document[fmt::format("k/{}~", name)] = numbers;
    }
    const Checked<JsonNode> node = parse_json(document.dump(2));
    RC_ASSERT(node.has_value());
    RC_ASSERT(as_library(*node) == document);
}

RC_GTEST_PROP(JsonHostile, AnyBytesAreReadOrRefused, ()) {
    const std::string text = *rc::gen::arbitrary<std::string>();
    const Checked<JsonNode> node = parse_json(text);
    RC_ASSERT(!node || library_accepts(text));
}
