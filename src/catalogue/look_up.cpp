#include "catalogue/catalogue.h"
#include "catalogue/tables.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace throwline::catalogue {

namespace {

template <class Row>
const Row* find_row(const std::vector<Row>& rows, std::string_view name) {
    // Most pieces of a plan leave their finish out, and no row is without a name.
    if (name.empty()) {
        return nullptr;
    }
    const auto exact =
        std::find_if(rows.begin(), rows.end(), [&](const Row& row) { return row.name == name; });
    if (exact != rows.end()) {
        return &*exact;
    }
    const std::string folded = folded_name(name);
    const auto alike = std::find_if(
        rows.begin(), rows.end(), [&](const Row& row) { return folded_name(row.name) == folded; });
    return alike == rows.end() ? nullptr : &*alike;
}

} // namespace

Length SensorMode::diagonal() const {
    return Length::metres(std::hypot(width.m(), height.m()));
}

const SensorMode* Catalogue::sensor(std::string_view name) const {
    return find_row(sensors, name);
}
const Lens* Catalogue::lens(std::string_view name) const {
    return find_row(lenses, name);
}
const Instrument* Catalogue::instrument(std::string_view name) const {
    return find_row(instruments, name);
}
const Filter* Catalogue::filter(std::string_view name) const {
    return find_row(filters, name);
}
const StockItem* Catalogue::stock_item(std::string_view name) const {
    return find_row(stock, name);
}
const Support* Catalogue::support(std::string_view name) const {
    return find_row(supports, name);
}
const Finish* Catalogue::finish(std::string_view name) const {
    return find_row(finishes, name);
}
const Paper* Catalogue::paper(std::string_view name) const {
    return find_row(papers, name);
}

double Catalogue::landmark(std::string_view name) const {
    const BodyLandmark* found = find_row(landmarks, name);
    if (found == nullptr) {
        throw std::logic_error{"no landmark " + std::string{name} + " in the catalogue"};
    }
    return found->share_of_stature;
}

} // namespace throwline::catalogue
