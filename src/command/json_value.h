#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace throwline::command {

/// JSON to be written, members in the order in which they were put in. A number must be finite;
/// what has no answer is null.
class JsonValue {
  public:
    using Array = std::vector<JsonValue>;
    using Object = std::vector<std::pair<std::string, JsonValue>>;
    using Held =
        std::variant<std::nullptr_t, bool, std::int64_t, double, std::string, Array, Object>;

    JsonValue() = default;
    JsonValue(std::nullptr_t) {}
    JsonValue(bool value) : held_{value} {}
    JsonValue(int value) : held_{std::int64_t{value}} {}
    JsonValue(double value) : held_{value} {}
    JsonValue(std::string value) : held_{std::move(value)} {}
    JsonValue(const char* value) : held_{std::string{value}} {}
    JsonValue(Array value) : held_{std::move(value)} {}
    JsonValue(Object value) : held_{std::move(value)} {}
    template <class T>
    JsonValue(const std::optional<T>& value) {
        if (value) {
            *this = JsonValue{*value};
        }
    }

    const Held& held() const { return held_; }

  private:
    Held held_ = nullptr;
};

/// Indented text with a line end. Bytes that are not UTF-8 become U+FFFD. Throws std::logic_error
/// for a number that is not finite, since only a fault of ours can make one.
std::string text_of(const JsonValue& value);

} // namespace throwline::command
