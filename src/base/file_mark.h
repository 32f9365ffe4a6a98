#pragma once

#include <string>
#include <string_view>

namespace throwline {

/// Eight hex digits by which a print can be told from one of a later state of its file: the CRC-32
/// of its bytes (ISO/IEC 3309, polynomial EDB88320 reflected), as common tools print it.
std::string file_mark(std::string_view bytes);

} // namespace throwline
