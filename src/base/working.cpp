#include "base/working.h"

namespace throwline {

std::string text_of(const Working& working) {
    std::string text = working.formula;
    for (const WorkingTerm& term : working.inputs) {
        text += "; ";
        if (!term.symbol.empty()) {
            text += term.symbol + " ";
        }
        text += term.name + " = " + term.value;
    }
    text += "; result: " + working.result;
    text += "; source: " + working.source;
    return text;
}

} // namespace throwline
