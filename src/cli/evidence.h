#pragma once

#include "daybook/evidence.h"

namespace CLI {
class App;
}

namespace winchbook::cli {

/// Adds --because, --mark, --photo and --told-by.
void add_evidence_options(CLI::App& app, daybook::Evidence& evidence);

}  // namespace winchbook::cli
