#include "command/json_value.h"

#include <cmath>
#include <nlohmann/json.hpp>
#include <stdexcept>

namespace throwline::command {

namespace {

using Json = nlohmann::ordered_json;

Json converted(const JsonValue& value);

struct Converter {
    Json operator()(std::nullptr_t) const { return nullptr; }
    Json operator()(bool value) const { return value; }
    Json operator()(std::int64_t value) const { return value; }
    Json operator()(const std::string& value) const { return value; }
    Json operator()(double value) const {
        if (!std::isfinite(value)) {
            throw std::logic_error{"a result is not a finite number"};
        }
        // A negative zero would be written as one.
        return value == 0.0 ? 0.0 : value;
    }
    Json operator()(const JsonValue::Array& values) const {
        Json array = Json::array();
        for (const JsonValue& value : values) {
            array.push_back(converted(value));
        }
        return array;
    }
    Json operator()(const JsonValue::Object& members) const {
        Json object = Json::object();
        for (const auto& [key, value] : members) {
            object[key] = converted(value);
        }
        return object;
    }
};

Json converted(const JsonValue& value) {
    return std::visit(Converter{}, value.held());
}

} // namespace

std::string text_of(const JsonValue& value) {
    constexpr int kIndent = 2;
    return converted(value).dump(kIndent, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace throwline::command
