#include "checks/circuit_sum.h"

namespace throwline::checks {

double current_a(const catalogue::Instrument& instrument, double volts) {
    return instrument.watts / (volts * instrument.power_factor);
}

CircuitSum sum_of(const plan::Circuit& circuit, const plan::Plan& plan,
                  const catalogue::Catalogue& catalogue) {
    CircuitSum sum;
    for (const plan::Lamp& lamp : plan.lamps) {
        const catalogue::Instrument* instrument = catalogue.instrument(lamp.instrument);
        if (lamp.circuit != circuit.id || instrument == nullptr) {
            continue;
        }
        sum.power_w += instrument->watts;
        sum.current_a += current_a(*instrument, circuit.volts);
        sum.lamps.push_back(&lamp);
    }
    return sum;
}

double allowed_a(const plan::Circuit& circuit) {
    return circuit.breaker_amps * (circuit.continuous ? kContinuousShare : 1.0);
}

} // namespace throwline::checks
