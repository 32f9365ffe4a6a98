#include "support/rig_case.h"

namespace throwline::support {

namespace {

catalogue::Instrument rig_lamp(const std::string& name, double watts, double power_factor,
                               double mass_kg) {
    catalogue::Instrument lamp;
    lamp.name = name;
    lamp.spot = {1000.0, Angle::degrees(20.0), Angle::degrees(30.0)};
    lamp.flood = lamp.spot;
    lamp.watts = watts;
    lamp.power_factor = power_factor;
    lamp.mass_kg = mass_kg;
    lamp.body_width = lamp.body_depth = lamp.body_height = Length::metres(0.2);
    lamp.face_width = lamp.face_height = Length::metres(0.1);
    lamp.source = "round figures";
    return lamp;
}

catalogue::Catalogue with_rig_lamps() {
    catalogue::Catalogue tables = test_catalogue();
    tables.instruments.push_back(rig_lamp("one kilowatt", 1000.0, 1.0, 10.0));
    tables.instruments.push_back(rig_lamp("led lamp", 570.0, 0.95, 4.0));
    return tables;
}

plan::Lamp& put_lamp(plan::Plan& plan, const std::string& name, const std::string& instrument,
                     const plan::LampMount& mount) {
    plan::Lamp lamp;
    lamp.id = {name};
    lamp.instrument = instrument;
    lamp.mount = mount;
    plan.lamps.push_back(lamp);
    return plan.lamps.back();
}

} // namespace

const catalogue::Catalogue& rig_catalogue() {
    static const catalogue::Catalogue kTables = with_rig_lamps();
    return kTables;
}

plan::Circuit& put_circuit(plan::Plan& plan, const std::string& name, double volts,
                           double breaker_amps) {
    plan::Circuit circuit;
    circuit.id = {name};
    circuit.volts = volts;
    circuit.breaker_amps = breaker_amps;
    plan.circuits.push_back(circuit);
    return plan.circuits.back();
}

plan::Grid& put_grid(plan::Plan& plan, plan::PipeRun run) {
    plan::Grid grid;
    grid.origin = Vec2{1.0, 1.0};
    grid.pitch_x = grid.pitch_y = Length::metres(2.0);
    grid.columns = 4;
    grid.rows = 3;
    grid.height = Length::metres(3.5);
    grid.run = run;
    plan.grid = grid;
    return *plan.grid;
}

plan::Pipe& put_pipe(plan::Plan& plan, const std::string& name, double load_kg) {
    plan::Pipe pipe;
    pipe.id = {name};
    pipe.from = Vec2{1.0, 7.0};
    pipe.to = Vec2{7.0, 7.0};
    pipe.height = Length::metres(3.5);
    pipe.load_kg = load_kg;
    plan.pipes.push_back(pipe);
    return plan.pipes.back();
}

plan::Lamp& hang_on_grid(plan::Plan& plan, const std::string& name, const std::string& position,
                         const std::string& instrument) {
    return put_lamp(plan, name, instrument, plan::GridHang{position, Length::metres(0.3)});
}

plan::Lamp& hang_on_pipe(plan::Plan& plan, const std::string& name, const std::string& pipe,
                         double along_m, const std::string& instrument) {
    return put_lamp(plan, name, instrument,
                    plan::PipeHang{{pipe}, Length::metres(along_m), Length::metres(0.3)});
}

plan::Lamp& plug_in(plan::Plan& plan, const std::string& name, const std::string& circuit,
                    const std::string& instrument) {
    const plan::StandMount stand{Vec2{9.0, 1.0}, Length::metres(2.0), "medium light stand"};
    plan::Lamp& lamp = put_lamp(plan, name, instrument, stand);
    lamp.circuit = {circuit};
    return lamp;
}

std::vector<checks::Finding> rig_findings(CheckFunction check, const plan::Plan& plan) {
    return found_by(check, plan, rig_catalogue());
}

} // namespace throwline::support
