#pragma once

#include "plan/read_values.h"
#include "survey/recce_cursor.h"
#include "survey/recce_text.h"

#include <map>
#include <optional>

namespace throwline::survey {

/// Reads one recce, line after line. A fault ends its line, or its part of a list; then the reading
/// goes on, so that one call tells everything that is wrong.
class RecceReader {
  public:
    RecceReader(std::string_view text, const std::string& file)
        : file_{file}, cursor_{text, file} {}

    Checked<RecceText> read();

  private:
    struct Statement {
        std::string_view word;
        void (RecceReader::*read)();
    };
    static const Statement* statement_of(std::string_view word);

    void read_line();
    void read_corners();
    void read_square();
    void read_squareness();
    void read_units();
    void read_tape();
    void read_point();
    void read_along();
    void read_solid();
    void read_round();
    void read_height();
    void read_outlet();
    void read_bearing();
    void read_note();
    /// "A-B 3m" or "jar: A 3m, B 2m".
    void read_named();
    void read_between(const std::string& from);
    void read_ties(const std::string& point, const Place& place);
    void read_tie(const std::string& point);
    void read_stretches(plan::Chain& chain, const std::string& pointer);
    void read_stretch(plan::Chain& chain, const std::string& pointer);
    bool read_what(plan::Stretch& stretch);
    bool read_sizes(plan::Stretch& stretch);
    bool read_rest(plan::Chain& chain);

    /// Items with commas between them; behind a comma the list may go on in the next line.
    template <class Item>
    void read_list(const Item& item);
    std::optional<std::string> name(std::string_view what);
    /// A name of one or more words.
    std::optional<std::string> long_name(std::string_view what);
    bool checked_name(const std::string& name, const Place& place);
    /// "A-B"; remembers the places of both.
    bool two_names(std::string& from, std::string& to, const std::string& pointer);
    std::optional<Length> length(const plan::LengthRange& range);
    std::optional<Length> length_after(std::string_view word, const plan::LengthRange& range);
    std::optional<Angle> angle(const plan::AngleRange& range);
    std::optional<std::string> quoted();
    Result<Length> parsed(const std::string& text) const;
    void keep_place(std::string pointer);

    void fail(std::string message, Place place);
    void fail_expected(std::string_view what);
    void fail_unknown(const std::string& word, std::string_view is_no, const Place& place,
                      const std::vector<std::string>& known);
    std::string found();

    void forget_tied_corners();
    void settle_names();
    void settle_bearing();
    void report_faults();
    Place place_of(std::string pointer) const;
    Errors sorted_errors() const;

    std::string file_;
    RecceCursor cursor_;
    plan::Survey survey_;
    /// Where parts of the survey stand in the text, by the JSON pointers that its check uses.
    std::map<std::string, Place, std::less<>> places_;
    /// Points that only a line of distances made known.
    std::vector<std::string> tied_;
    /// What a bare number is read as: "cm".
    std::string unit_;
    int metric_ = 0;
    int imperial_ = 0;
    bool corners_given_ = false;
    bool all_square_ = false;
    struct Bearing {
        std::string from;
        std::string to;
        Place place;
    };
    std::optional<Bearing> bearing_;
    Errors errors_;
    std::size_t faults_ = 0;
};

} // namespace throwline::survey
