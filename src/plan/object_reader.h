#pragma once

#include "plan/file_keys.h"
#include "plan/read_values.h"

namespace throwline::plan {

/// Reads the members of one object by the table of its keys. Made, it has reported a value that is
/// no object, keys that the table does not have, and required keys that are missing.
class ObjectReader {
  public:
    ObjectReader(Reading& reading, const Value& value, const KeyTable& table);

    bool has(std::string_view key) const { return value_.node->find(key) != nullptr; }
    std::optional<Value> find(std::string_view key) const { return value_.member(key); }
    const Value& value() const { return value_; }

    /// Reads the member of that key by the `read_value` of its type; leaves `into` when it is
    /// absent.
    template <class Part, class... Rule>
    void read(std::string_view key, Part& into, const Rule&... rule) const {
        if (const std::optional<Value> found = find(key)) {
            read_value(reading_, *found, into, rule...);
        }
    }

    void read_name(std::string_view key, std::string& into) const;

  private:
    void report_unknown(const KeyTable& table) const;
    void report_missing(const KeyTable& table) const;

    Reading& reading_;
    Value value_;
};

} // namespace throwline::plan
