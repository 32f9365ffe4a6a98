#include "sheet/lamp_key.h"

#include "base/length_text.h"
#include "checks/circuit_sum.h"
#include "checks/wording.h"
#include "sheet/panel_writer.h"
#include "sheet/symbols.h"
#include "sheet/text_wrap.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::sheet {

namespace {

constexpr double kSymbol_mm = 4.6;
constexpr double kRow_mm = 5.6;
constexpr double kWords_mm = 8.0;
constexpr double kKeptForFindings_mm = 16.0;
/// From the names of circuits to what they carry.
constexpr double kLeastTab_mm = 8.0;
constexpr double kMostTab_mm = 26.0;

struct Used {
    const catalogue::Instrument* instrument = nullptr;
    int count = 0;
};

/// In the order of the plan.
std::vector<Used> instruments_used(const SheetInput& input) {
    std::vector<Used> used;
    for (const plan::Lamp& lamp : input.analysis.plan->lamps) {
        const catalogue::Instrument* instrument = input.catalogue.instrument(lamp.instrument);
        if (instrument == nullptr) {
            continue;
        }
        const auto known = std::find_if(used.begin(), used.end(), [&](const Used& other) {
            return other.instrument == instrument;
        });
        if (known == used.end()) {
            used.push_back({instrument, 1});
        } else {
            ++known->count;
        }
    }
    return used;
}

void draw_instrument(Marks& marks, const Box& row, const Used& used, const TextMeasure& measure) {
    const double middle_mm = row.top + row.height / 2.0;
    add_instrument_symbol(marks, {row.left + kSymbol_mm / 2.0, middle_mm}, kSymbol_mm,
                          *used.instrument);
    const std::string words = fmt::format("{} x {}, {} W", used.count, used.instrument->name,
                                          shortest(used.instrument->watts));
    marks.emplace_back(Text{cut_to_width(words, row.width - kWords_mm, kLetter_mm, false, measure),
                            {row.left + kWords_mm, middle_mm + kLetter_mm / 2.0},
                            kLetter_mm,
                            TextAnchor::start,
                            0.0,
                            false,
                            Ink::lettering});
}

void draw_instruments(Marks& marks, PanelWriter& panel, const SheetInput& input) {
    const std::vector<Used> used = instruments_used(input);
    if (!panel.heading(fmt::format("Lamps: {}", input.analysis.plan->lamps.size()))) {
        return;
    }
    for (std::size_t i = 0; i < used.size(); ++i) {
        const auto row = panel.room(kRow_mm);
        if (!row) {
            return panel.left_out(used.size() - i, "kinds of lamp");
        }
        draw_instrument(marks, *row, used[i], input.measure);
    }
    panel.gap();
}

double tab_of(const plan::Plan& plan, const TextMeasure& measure) {
    double tab_mm = kLeastTab_mm;
    for (const plan::Circuit& circuit : plan.circuits) {
        tab_mm = std::max(tab_mm, measure.width_mm(circuit.id.name, kLetter_mm, true) + 2.0);
    }
    return std::min(tab_mm, kMostTab_mm);
}

void letter_circuits(PanelWriter& panel, const SheetInput& input) {
    const plan::Plan& plan = *input.analysis.plan;
    if (plan.circuits.empty() || !panel.heading("Circuits, all lamps at full")) {
        return;
    }
    const double tab_mm = tab_of(plan, input.measure);
    for (std::size_t i = 0; i < plan.circuits.size(); ++i) {
        const plan::Circuit& circuit = plan.circuits[i];
        if (!panel.entry(circuit.id.name, circuit_words(circuit, plan, input.catalogue), tab_mm)) {
            return panel.left_out(plan.circuits.size() - i, "circuits");
        }
    }
    panel.gap();
}

} // namespace

std::string circuit_words(const plan::Circuit& circuit, const plan::Plan& plan,
                          const catalogue::Catalogue& catalogue) {
    const checks::CircuitSum sum = checks::sum_of(circuit, plan, catalogue);
    const double allowed_a = checks::allowed_a(circuit);
    const bool over = sum.current_a > allowed_a + checks::kCurrentRounding_a;
    const std::string breaker = shortest(circuit.breaker_amps);
    std::string words = fmt::format("{}{} W, {} A; ", over ? "OVER: " : "", fixed(sum.power_w, 0),
                                    fixed(sum.current_a, 1));
    words += circuit.continuous ? fmt::format("plan to {} A of {} A", fixed(allowed_a, 1), breaker)
                                : fmt::format("breaker {} A", breaker);
    return words;
}

Box draw_lamp_key(Marks& marks, const Box& box, const SheetInput& input) {
    PanelWriter panel{marks, box, input.measure, kKeptForFindings_mm};
    draw_instruments(marks, panel, input);
    letter_circuits(panel, input);
    return panel.rest();
}

} // namespace throwline::sheet
