/// What a desktop learns about the program: its entry, its kind of file, its description.

#include "command/call.h"

#include <filesystem>
#include <gtest/gtest.h>
#include <map>
#include <pugixml.hpp>
#include <set>
#include <sstream>

namespace throwline::command_test {
namespace {

const std::string kTree = THROWLINE_SOURCE_DIR;
const std::string kId = "org.throwline.Throwline";

pugi::xml_document document_at(const std::string& path) {
    pugi::xml_document document;
    const pugi::xml_parse_result read = document.load_file(path.c_str());
    EXPECT_TRUE(read) << path << ", byte " << read.offset << ": " << read.description();
    return document;
}

std::string shipped(const std::string& ending) {
    return kTree + "/packaging/" + kId + ending;
}

/// Keys and values of the desktop entry; a failed test for a line that is neither.
std::map<std::string, std::string> desktop_entry() {
    std::map<std::string, std::string> entry;
    std::istringstream lines{read(shipped(".desktop"))};
    std::string line;
    std::getline(lines, line);
    EXPECT_EQ(line, "[Desktop Entry]");
    while (std::getline(lines, line)) {
        const auto equals = line.find('=');
        EXPECT_NE(equals, std::string::npos) << line;
        EXPECT_TRUE(entry.emplace(line.substr(0, equals), line.substr(equals + 1)).second) << line;
    }
    return entry;
}

std::set<std::string> parts_of(const std::string& list) {
    std::set<std::string> parts;
    std::istringstream stream{list};
    for (std::string part; std::getline(stream, part, ';');) {
        parts.insert(part);
    }
    return parts;
}

std::set<std::string> texts_of(const pugi::xml_node& parent, const char* name) {
    std::set<std::string> texts;
    for (const pugi::xml_node& child : parent.children(name)) {
        texts.insert(child.text().get());
    }
    return texts;
}

TEST(DesktopEntry, SaysWhatADesktopAsksFor) {
    auto entry = desktop_entry();
    for (const char* key : {"Name", "Comment", "Icon", "Keywords"}) {
        EXPECT_FALSE(entry[key].empty()) << key;
    }
    EXPECT_EQ(entry["Type"], "Application");
    EXPECT_EQ(entry["Exec"], "throwline open %F");
    EXPECT_EQ(entry["Terminal"], "false");
    EXPECT_EQ(entry["Icon"], kId);
    for (const char* list : {"Categories", "MimeType", "Keywords"}) {
        EXPECT_TRUE(entry[list].ends_with(';')) << list;
    }
}

/// Else a desktop would offer the program for a kind of file that it knows nothing of.
TEST(MimeType, IsTheOneThatTheEntryOpens) {
    const pugi::xml_document types = document_at(shipped(".xml"));
    const pugi::xml_node type = types.child("mime-info").child("mime-type");
    EXPECT_EQ(parts_of(desktop_entry()["MimeType"]),
              std::set<std::string>{type.attribute("type").value()});
    EXPECT_STREQ(type.child("glob").attribute("pattern").value(), "*.throwline.json");
    EXPECT_STREQ(type.child("sub-class-of").attribute("type").value(), "application/json");
    EXPECT_NE(type.child("comment").text().get()[0], '\0');
}

/// The magic names two words within stated distances of the beginning of a plan.
TEST(MimeType, KnowsThePlansOfTheDemosByTheirBeginning) {
    const pugi::xml_document types = document_at(shipped(".xml"));
    const pugi::xml_node magic = types.child("mime-info").child("mime-type").child("magic");
    int plans = 0;
    for (const auto& file : std::filesystem::directory_iterator{kTree + "/demo"}) {
        if (file.path().extension() != ".json") {
            continue;
        }
        ++plans;
        const std::string text = read(file.path().string());
        for (pugi::xml_node match = magic.child("match"); match; match = match.child("match")) {
            const std::string range = match.attribute("offset").value();
            const std::string word = match.attribute("value").value();
            const std::size_t last = std::stoul(range.substr(range.find(':') + 1));
            EXPECT_LE(text.find(word), last) << file.path() << ": " << word;
        }
    }
    EXPECT_GE(plans, 4);
}

TEST(Metainfo, AgreesWithTheDesktopEntry) {
    const pugi::xml_document document = document_at(shipped(".metainfo.xml"));
    const pugi::xml_node about = document.child("component");
    auto entry = desktop_entry();
    EXPECT_STREQ(about.attribute("type").value(), "desktop-application");
    EXPECT_EQ(about.child("id").text().get(), kId);
    EXPECT_EQ(about.child("name").text().get(), entry["Name"]);
    EXPECT_EQ(about.child("summary").text().get(), entry["Comment"]);
    EXPECT_EQ(about.child("icon").text().get(), entry["Icon"]);
    EXPECT_EQ(about.child("launchable").text().get(), kId + ".desktop");
    EXPECT_EQ(about.child("provides").child("binary").text().get(), std::string{"throwline"});
    EXPECT_EQ(texts_of(about.child("provides"), "mediatype"), parts_of(entry["MimeType"]));
    EXPECT_EQ(texts_of(about.child("categories"), "category"), parts_of(entry["Categories"]));
    EXPECT_EQ(texts_of(about.child("keywords"), "keyword"), parts_of(entry["Keywords"]));
    EXPECT_TRUE(about.child("description").child("p"));
}

TEST(Metainfo, NamesTheLicenceOfTheTree) {
    const pugi::xml_document document = document_at(shipped(".metainfo.xml"));
    const std::string licence = document.child("component").child("project_license").text().get();
    EXPECT_TRUE(read(kTree + "/LICENSE").starts_with(licence + " License")) << licence;
}

TEST(Icon, IsADrawingWithASize) {
    const pugi::xml_document document = document_at(kTree + "/ui/icons/throwline.svg");
    EXPECT_TRUE(document.child("svg").attribute("viewBox"));
}

} // namespace
} // namespace throwline::command_test
