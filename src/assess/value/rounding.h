#pragma once

namespace winchbook::assess::value {

/// An amount rounded to two figures, as a price is told: low ends down, high ends up.
/// Example: 86.4 down is 86; 1234 up is 1300.
enum class RoundPrice { down, near, up };
[[nodiscard]] double rounded_price(double amount, RoundPrice how);

}  // namespace winchbook::assess::value
