#include "base/text_file.h"
#include "catalogue/json_document.h"
#include "catalogue/shipped.h"

#include <set>

using namespace throwline;
using namespace throwline::catalogue;

namespace {

constexpr std::uintmax_t kLargest = 1U << 20U;

std::set<std::string> keys_of_rows(const std::filesystem::path& file) {
    std::set<std::string> keys;
    const Result<std::string> text = read_text_file(file, kLargest);
    const Checked<JsonNode> root = parse_json(text.value_or(""));
    EXPECT_TRUE(root) << file;
    for (const JsonMember& table : root ? root->members : std::vector<JsonMember>{}) {
        for (const JsonNode& row : table.value.items) {
            for (const JsonMember& member : row.members) {
                keys.insert(member.key);
            }
        }
    }
    return keys;
}

} // namespace

TEST(TablesReadme, DocumentsEveryFileAndEveryKey) {
    const std::string readme = read_text_file(source_tables() / "README.md", kLargest).value_or("");
    int tables = 0;
    for (const auto& entry : std::filesystem::directory_iterator{source_tables()}) {
        const std::filesystem::path& file = entry.path();
        if (file.extension() != ".json") {
            continue;
        }
        ++tables;
        EXPECT_NE(readme.find("## " + file.filename().string()), std::string::npos) << file;
        for (const std::string& key : keys_of_rows(file)) {
            EXPECT_NE(readme.find("`" + key + "`"), std::string::npos) << file << " " << key;
        }
    }
    EXPECT_EQ(tables, 10);
}
