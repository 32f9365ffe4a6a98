#include "plan/file_keys.h"
#include "plan/names.h"

#include "base/text_file.h"
#include "catalogue/json_document.h"

#include <gtest/gtest.h>
#include <set>

/// The published schema and the reader's own tables say the same.
namespace throwline::plan {
namespace {

using catalogue::JsonNode;
using Names = std::set<std::string>;

const JsonNode& schema() {
    static const JsonNode kSchema = [] {
        const auto text =
            read_text_file(THROWLINE_SOURCE_DIR "/src/plan/plan.schema.json", 1U << 20U);
        return *catalogue::parse_json(*text);
    }();
    return kSchema;
}

const JsonNode* definition(std::string_view name) {
    return schema().find("$defs")->find(name);
}

Names keys_of(const JsonNode* object) {
    Names names;
    if (object != nullptr) {
        for (const auto& member : object->members) {
            names.insert(member.key);
        }
    }
    return names;
}

Names texts_of(const JsonNode* array) {
    Names names;
    if (array != nullptr) {
        for (const JsonNode& item : array->items) {
            names.insert(item.text);
        }
    }
    return names;
}

TEST(PlanSchema, HasTheKeysOfTheReader) {
    for (const KeyTable* table : key_tables()) {
        const JsonNode* found = definition(table->object);
        ASSERT_NE(found, nullptr) << table->object;
        Names keys;
        Names required;
        for (const FileKey& key : table->keys) {
            keys.emplace(key.name);
            if (key.required) {
                required.emplace(key.name);
            }
        }
        EXPECT_EQ(keys_of(found->find("properties")), keys) << table->object;
        EXPECT_EQ(texts_of(found->find("required")), required) << table->object;
        ASSERT_NE(found->find("additionalProperties"), nullptr) << table->object;
        EXPECT_FALSE(found->find("additionalProperties")->boolean) << table->object;
    }
}

TEST(PlanSchema, HasNoObjectThatTheReaderHasNot) {
    Names objects;
    for (const KeyTable* table : key_tables()) {
        objects.emplace(table->object);
    }
    for (const auto& member : schema().find("$defs")->members) {
        if (member.value.find("properties") != nullptr) {
            EXPECT_EQ(objects.count(member.key), 1U) << member.key;
        }
    }
}

TEST(PlanSchema, HasTheChoicesOfTheReader) {
    for (const ChoiceList& list : choice_lists()) {
        const JsonNode* found = definition(list.kind);
        ASSERT_NE(found, nullptr) << list.kind;
        EXPECT_EQ(texts_of(found->find("enum")), Names(list.names.begin(), list.names.end()))
            << list.kind;
    }
}

TEST(PlanSchema, KnowsTheFormatThatIsWritten) {
    EXPECT_EQ(definition("plan")->find("properties")->find("format")->find("const")->number,
              Plan::kFormat);
}

} // namespace
} // namespace throwline::plan
