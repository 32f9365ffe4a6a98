#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace throwline::plan {

/// JSON to be written: what it holds, apart from how it is laid out on lines.
class JsonOut {
  public:
    /// JSON text that is a value already: a number, true, a quoted string.
    static JsonOut leaf(std::string json);
    static JsonOut array(std::vector<JsonOut> items);
    static JsonOut object();

    /// Adds a member to an object.
    void put(std::string_view key, JsonOut value);
    bool is_empty() const { return parts_.empty(); }

    /// The text: whatever fits in 100 bytes stands on one line, but each object of a list on its
    /// own; the rest is broken and indented by two spaces, the outermost value always. Ends with a
    /// line end.
    std::string laid_out() const;

  private:
    enum class Kind { leaf, array, object };

    bool holds_objects() const;
    bool append_line(std::string& text, std::size_t most) const;
    void append_broken(std::string& text, std::size_t indent) const;
    void append(std::string& text, std::size_t indent, std::size_t taken) const;

    Kind kind_ = Kind::leaf;
    std::string leaf_;
    /// Items of an array, whose keys are empty, or members of an object, whose keys are quoted.
    std::vector<std::pair<std::string, JsonOut>> parts_;
};

} // namespace throwline::plan
