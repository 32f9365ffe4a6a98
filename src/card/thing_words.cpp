#include "card/thing_words.h"

#include "base/words.h"

namespace throwline::card {

std::string what_of(std::span<const edit::Thing> things) {
    const edit::Kind kind = things.front().kind;
    const int count = static_cast<int>(things.size());
    switch (kind) {
    case edit::Kind::camera:
    case edit::Kind::lamp:
    case edit::Kind::boom:
    case edit::Kind::pipe:
        return count == 1 ? with_kind(edit::name_of(kind), things.front().name)
                          : counted(count, edit::name_of(kind));
    case edit::Kind::scenery:
        return count == 1 ? things.front().name : counted(count, "set piece");
    case edit::Kind::person:
        return count == 1 ? things.front().name : std::to_string(count) + " people";
    case edit::Kind::wall:
    case edit::Kind::opening:
    case edit::Kind::outlet:
        return count == 1 ? edit::name_of(things.front()) : counted(count, edit::name_of(kind));
    }
    return {};
}

} // namespace throwline::card
