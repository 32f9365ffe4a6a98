#include "plan/object_reader.h"

#include "base/utf8.h"

#include <algorithm>

namespace throwline::plan {

namespace {

std::vector<std::string> names_in(const KeyTable& table) {
    std::vector<std::string> names;
    for (const FileKey& key : table.keys) {
        names.emplace_back(key.name);
    }
    return names;
}

bool has_key(const KeyTable& table, std::string_view name) {
    return std::any_of(table.keys.begin(), table.keys.end(),
                       [&](const FileKey& key) { return key.name == name; });
}

} // namespace

ObjectReader::ObjectReader(Reading& reading, const Value& value, const KeyTable& table)
    : reading_{reading}, value_{value} {
    if (!value.is(catalogue::JsonKind::object)) {
        reading.expected(value, fmt::format("an object {{...}}: {}", table.object));
        return;
    }
    report_unknown(table);
    report_missing(table);
}

void ObjectReader::read_name(std::string_view key, std::string& into) const {
    if (const std::optional<Value> found = find(key)) {
        plan::read_name(reading_, *found, into);
    }
}

void ObjectReader::report_unknown(const KeyTable& table) const {
    for (const catalogue::JsonMember& member : value_.node->members) {
        if (has_key(table, member.key)) {
            continue;
        }
        if (reading_.is_full()) {
            reading_.wrong(value_, {});
            continue;
        }
        const std::vector<std::string> names = names_in(table);
        const std::string hint = nearest_hint(member.key, names);
        reading_.wrong_key(value_, member,
                           fmt::format("{} is no key of {}{}", in_quotes(member.key), table.object,
                                       hint.empty() ? "; allowed are " + listed(names) : hint));
    }
}

void ObjectReader::report_missing(const KeyTable& table) const {
    for (const FileKey& key : table.keys) {
        if (key.required && !has(key.name)) {
            reading_.wrong(value_, fmt::format("{} needs \"{}\"", table.object, key.name));
        }
    }
}

} // namespace throwline::plan
