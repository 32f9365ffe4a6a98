#include "catalogue/json_document.h"

#include <cmath>
#include <gtest/gtest.h>
#include <limits>

using namespace throwline;
using namespace throwline::catalogue;

namespace {

JsonNode parsed(std::string_view text) {
    const Checked<JsonNode> node = parse_json(text, "t.json");
    EXPECT_TRUE(node) << text << "\n" << (node ? "" : text_of(node.error().front()));
    return node ? *node : JsonNode{};
}

std::string first_error(std::string_view text) {
    const Checked<JsonNode> node = parse_json(text, "t.json");
    return node ? "accepted" : text_of(node.error().front());
}

} // namespace

TEST(JsonDocument, KeepsValuesInTheOrderOfTheFile) {
    const JsonNode root = parsed(R"({"b": [1, "x", true, false, null], "a": {}})");
    ASSERT_TRUE(root.is(JsonKind::object));
    ASSERT_EQ(root.members.size(), 2U);
    EXPECT_EQ(root.members[0].key, "b");
    EXPECT_EQ(root.members[1].key, "a");
    const std::vector<JsonNode>& items = root.members[0].value.items;
    ASSERT_EQ(items.size(), 5U);
    EXPECT_DOUBLE_EQ(items[0].number, 1.0);
    EXPECT_EQ(items[1].text, "x");
    EXPECT_TRUE(items[2].boolean);
    EXPECT_TRUE(items[3].is(JsonKind::boolean));
    EXPECT_FALSE(items[3].boolean);
    EXPECT_TRUE(items[4].is(JsonKind::null));
    EXPECT_EQ(root.find("a"), &root.members[1].value);
    EXPECT_EQ(root.find("c"), nullptr);
    EXPECT_EQ(items[0].find("b"), nullptr);
}

TEST(JsonDocument, KnowsLineAndColumnOfValuesAndKeys) {
    const JsonNode root = parsed("{\n  \"name\": \"x\",\r\n  \"list\": [ 1,\n 2.5 ]\n}\n");
    EXPECT_EQ(root.line, 1);
    EXPECT_EQ(root.column, 1);
    EXPECT_EQ(root.members[0].line, 2);
    EXPECT_EQ(root.members[0].column, 3);
    EXPECT_EQ(root.members[0].value.column, 11);
    const JsonNode& list = root.members[1].value;
    EXPECT_EQ(list.line, 3);
    EXPECT_EQ(list.items[0].column, 13);
    EXPECT_EQ(list.items[1].line, 4);
    EXPECT_EQ(list.items[1].column, 2);
}

TEST(JsonDocument, CountsColumnsInCharactersNotBytes) {
    const JsonNode root = parsed("[\"5’ 9½”\", 1]");
    EXPECT_EQ(root.items[0].text, "5’ 9½”");
    EXPECT_EQ(root.items[1].column, 12);
}

TEST(JsonDocument, KeepsNumbersAsWrittenToo) {
    const JsonNode root = parsed("[0.10, -0, 1E+2, 12345678901234567890123, 4.9e-324]");
    EXPECT_EQ(root.items[0].text, "0.10");
    EXPECT_DOUBLE_EQ(root.items[0].number, 0.1);
    EXPECT_TRUE(std::signbit(root.items[1].number));
    EXPECT_DOUBLE_EQ(root.items[2].number, 100.0);
    EXPECT_DOUBLE_EQ(root.items[3].number, 12345678901234567890123.0);
    EXPECT_EQ(root.items[4].number, std::numeric_limits<double>::denorm_min());
}

TEST(JsonDocument, UnderstandsEveryEscape) {
    const JsonNode root = parsed(R"(["\"\\\/\b\f\n\r\t", "\u0041\u00e9\u20AC\uD83C\uDFA5"])");
    EXPECT_EQ(root.items[0].text, "\"\\/\b\f\n\r\t");
    EXPECT_EQ(root.items[1].text, "Aé€🎥");
}

TEST(JsonDocument, SkipsAByteOrderMark) {
    const JsonNode root = parsed("\xEF\xBB\xBF{}");
    EXPECT_TRUE(root.is(JsonKind::object));
    EXPECT_EQ(root.column, 1);
}

TEST(JsonDocument, NamesPlaceAndReasonOfAFault) {
    EXPECT_EQ(first_error("{\"a\": [1, 2,\n x]}"), "t.json:2:2: /a/2: expected a value, found 'x'");
    EXPECT_EQ(first_error("{\"a\" 1}"), "t.json:1:6: /a: expected ':', found '1'");
    EXPECT_EQ(first_error("[1 2]"), "t.json:1:4: expected ',' or ']', found '2'");
    EXPECT_EQ(first_error("{}{}"), "t.json:1:3: expected the end of the file, found '{'");
    EXPECT_EQ(first_error(""), "t.json:1:1: the file is empty");
    EXPECT_EQ(first_error(" \n\t "), "t.json:2:3: the file is empty");
}

TEST(JsonDocument, RefusesEachDuplicateKeyAtItsSecondPlace) {
    const Checked<JsonNode> node =
        parse_json("{\"a\": 1,\n \"a\": 2,\n \"b\": {\"c\": 0, \"c\": 0},\n \"a\": 3}", "t.json");
    ASSERT_FALSE(node);
    ASSERT_EQ(node.error().size(), 3U);
    EXPECT_EQ(text_of(node.error()[0]),
              "t.json:3:16: /b/c: key \"c\" is given twice, before in line 3");
    EXPECT_EQ(text_of(node.error()[1]),
              "t.json:2:2: /a: key \"a\" is given twice, before in line 1");
    EXPECT_EQ(text_of(node.error()[2]),
              "t.json:4:2: /a: key \"a\" is given twice, before in line 2");
}

TEST(JsonDocument, EscapesPointers) {
    EXPECT_EQ(pointer_to("", "lamps"), "/lamps");
    EXPECT_EQ(pointer_to("/lamps", std::size_t{3}), "/lamps/3");
    EXPECT_EQ(pointer_to("", "a/b~c"), "/a~1b~0c");
    EXPECT_EQ(pointer_to("/x", ""), "/x/");
}
