#include "report/hazards.h"

namespace winchbook::report {

std::vector<document::Caution> hazards(const Telling& telling, Hazards /*where*/) {
  std::vector<document::Caution> cautions;
  for (const record::Flag& flag : telling.visit.findings.flags) {
    if (flag.kind != record::Flag::Kind::hazard) continue;
    cautions.push_back({telling.words.capitalised(flag.name), telling.text(flag.what)});
  }
  return cautions;
}

}  // namespace winchbook::report
