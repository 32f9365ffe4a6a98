#include "lists/phone_page.h"

#include "lists/html_text.h"

#include <gtest/gtest.h>

namespace throwline::lists {
namespace {

bool says(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

std::size_t times(const std::string& text, const std::string& part) {
    std::size_t count = 0;
    for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) {
        ++count;
    }
    return count;
}

constexpr const char* kHostile = "</script><img src=x onerror=\"alert(1)\" '>&amp;";

/// A page whose every text is `text`.
PhonePage page_of(const std::string& text) {
    const Cell cell{text, std::nullopt};
    const auto table = [&](std::vector<std::string> keys) {
        Table made{text, text, {}, {{text, {{{}, false, Topic::camera}}, {text}}}, {text}};
        for (const std::string& key : keys) {
            made.columns.push_back({key, text});
            made.sections.front().rows.front().cells.push_back(cell);
        }
        return made;
    };
    PhonePage page;
    page.title = text;
    page.lines = {text};
    page.mark = text;
    page.floor_plan_svg = "<?xml version=\"1.0\"?>\n<svg><g id=\"layer-lamps\"/></svg>";
    page.shots = table({"shot", "camera", "subjects", "size_wanted", "size_got", "composition"});
    page.camera_cards = table({"shot", "beat", "place"});
    page.running_order = table({"what", "who", "length_m", "details"});
    page.lists = {table({"a", "b"}), table({"a", "b", "c", "d", "e"})};
    page.findings = {{1, "error", text, text, text}};
    page.cautions = {text};
    return page;
}

TEST(PhonePage, LetsNoTextBecomeMarkup) {
    const std::string html = phone_page(page_of(kHostile));
    EXPECT_FALSE(says(html, "<img"));
    EXPECT_EQ(times(html, "</script>"), 1U);
    EXPECT_EQ(times(html, "<script"), 1U);
    EXPECT_FALSE(says(html, "onerror=\"alert"));
    EXPECT_TRUE(says(html, "&lt;/script&gt;&lt;img src=x onerror=&quot;alert(1)&quot; &#39;"));
}

TEST(PhonePage, HasAsMuchMarkupWhateverTheTexts) {
    EXPECT_EQ(times(phone_page(page_of(kHostile)), "<"), times(phone_page(page_of("x")), "<"));
}

TEST(PhonePage, AsksForNothing) {
    const std::string html = phone_page(page_of("x"));
    for (const char* part : {"http:", "https:", "//fonts", "@import", "url(", "src=", "<link"}) {
        EXPECT_FALSE(says(html, part)) << part;
    }
    EXPECT_TRUE(says(html, "Content-Security-Policy\" content=\"default-src 'none'"));
    EXPECT_FALSE(says(html, "unsafe"));
}

TEST(PhonePage, TakesTheDrawingAlone) {
    EXPECT_FALSE(says(phone_page(page_of("x")), "<?xml"));
    EXPECT_TRUE(says(phone_page(page_of("x")), "<svg><g id=\"layer-lamps\"/></svg>"));
    PhonePage without = page_of("x");
    without.floor_plan_svg.clear();
    EXPECT_FALSE(says(phone_page(without), "<svg"));
}

TEST(HtmlText, KeepsTextOnOneLine) {
    EXPECT_EQ(html_text("a\nb\tc <&>\"'"), "a b c &lt;&amp;&gt;&quot;&#39;");
    EXPECT_EQ(html_text("\x01\xff"), "\xEF\xBF\xBD\xEF\xBF\xBD");
    EXPECT_EQ(html_text("Größe → 5 µm"), "Größe → 5 µm");
}

// RFC 4648, section 10: "", "f", "fo", "foo", "foobar".
TEST(Base64, FollowsTheStandard) {
    EXPECT_EQ(base64_of_hex(""), "");
    EXPECT_EQ(base64_of_hex("66"), "Zg==");
    EXPECT_EQ(base64_of_hex("666f"), "Zm8=");
    EXPECT_EQ(base64_of_hex("666f6f"), "Zm9v");
    EXPECT_EQ(base64_of_hex("666f6f626172"), "Zm9vYmFy");
}

} // namespace
} // namespace throwline::lists
