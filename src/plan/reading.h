#pragma once

#include "base/result.h"
#include "catalogue/catalogue.h"
#include "catalogue/json_document.h"
#include "plan/names.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// What the parts of the plan reader share: values with their place, and the list of what is wrong.
namespace throwline::plan {

/// A JSON value and the pointer that leads to it.
struct Value {
    const catalogue::JsonNode* node = nullptr;
    std::string pointer;

    /// The member of that key; nothing when there is none.
    std::optional<Value> member(std::string_view key) const;
    /// The item at that index of an array, or this value itself when there is no such item, so that
    /// an error always has a place.
    Value item(std::size_t index) const;
    /// The member of that key, or this value itself when there is none.
    Value at(std::string_view key) const;
    bool is(catalogue::JsonKind kind) const { return node->kind == kind; }
};

/// More errors are counted but not kept: nobody reads further, and a hostile file could fill
/// memory.
inline constexpr std::size_t kMostPlanErrors = 200;
/// Longest list of things, marks or points that is read; the largest real plan stays far below.
inline constexpr std::size_t kMostItems = 10'000;

/// One reading of one file: what names are looked up in, and everything found wrong so far.
class Reading {
  public:
    Reading(const catalogue::Catalogue& catalogue, std::string file)
        : catalogue_{catalogue}, file_{std::move(file)} {}

    const catalogue::Catalogue& catalogue() const { return catalogue_; }
    void wrong(const Value& value, std::string message);
    void wrong_key(const Value& object, const catalogue::JsonMember& member, std::string message);
    /// Once true, errors are only counted; a message that is costly to word need not be.
    bool is_full() const { return errors_.size() >= kMostPlanErrors; }
    /// "expected a length ..., found an array"
    void expected(const Value& value, std::string_view what);
    /// Whether a value or anything in it has been found wrong, so that checks of what it means
    /// would only repeat it.
    bool is_spoilt(const Value& value) const;
    bool any_wrong() const { return !errors_.empty(); }
    /// All errors in the order of the file, and how many more there were.
    Errors errors() const;

  private:
    void add(Error error);

    const catalogue::Catalogue& catalogue_;
    std::string file_;
    Errors errors_;
    std::size_t left_out_ = 0;
};

/// "; nearest is \"stand\"", or nothing when no candidate is near.
std::string nearest_hint(std::string_view typed, std::span<const std::string> candidates);
/// "a, b, c"
std::string listed(std::span<const std::string> names);
/// What a value is, for "found ...": its text or number itself where that is short.
std::string described(const catalogue::JsonNode& node);

} // namespace throwline::plan
