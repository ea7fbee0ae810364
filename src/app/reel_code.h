#pragma once

#include <string>

#include "record/record.h"

namespace winchbook::app {

/// By which tags, bags and cards name a reel for as long as its record lives: "7QM4 XT29".
///
/// Seven characters of Crockford's base 32, the first 35 bits of SHA-256 over "reel LF secret LF",
/// and a check character (seal::tag_code). The secret is the salt of whoever brought the reel the
/// first time, else the first salt among the people: drawn at intake, kept through every change,
/// and not to be found from the code. A record without any salt has its bench, its name and the day
/// of the first visit instead, so that two reels of one name and one day would share a code.
/// Example: a salt of "9be04c7d2f6a41183c95d0e7ab62f814" gives "RK4E 179G".
[[nodiscard]] std::string reel_code(const record::Record& record);

}  // namespace winchbook::app
