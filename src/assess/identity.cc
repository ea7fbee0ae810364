#include "assess/identity.h"

#include <algorithm>

namespace winchbook::assess {
namespace {

/// No day fits all pieces, and there are several ways out.
bool open_between(const dating::Finding& dating) {
  return std::any_of(dating.conflicts.begin(), dating.conflicts.end(), [](const auto& one) {
    return one.tier == dating::Tier::hard && one.alternatives_in_all > 1;
  });
}

}  // namespace

Made made(const record::Record& record, const dating::Finding& dating) {
  const dating::Window& window = dating.window;
  Made made;
  if (window.not_before || window.not_after || open_between(dating)) {
    const auto soft = [](const std::optional<dating::WindowEnd>& end) {
      return end && end->firmness == record::EndFirmness::soft;
    };
    made.by = Made::By::marks;
    made.settled = !open_between(dating);
    made.certain = !soft(window.not_before) && !soft(window.not_after);
    made.days = window.days();
  } else if (record.reel.made) {
    made.by = Made::By::bench;
    made.certain = record.reel.made->certainty == record::Certainty::certain;
    made.written = record.reel.made->date;
    made.days = {made.written->earliest(), made.written->latest()};
  }
  return made;
}

Identity identity(const record::Record& record, const dating::Finding& dating,
                  const originality::Finding* originality) {
  using Kind = record::MakerStatement::Kind;
  const record::Reel& reel = record.reel;
  Identity identity;
  identity.name = reel.name;
  identity.model = reel.model;
  identity.serial = reel.serial;
  identity.made = made(record, dating);
  if (originality != nullptr) identity.reels = originality->reels;
  if (reel.maker.kind == Kind::not_determined || reel.maker.name.empty()) return identity;
  identity.how =
      reel.maker.kind == Kind::attributed ? Identity::Maker::attributed : Identity::Maker::made_by;
  identity.maker = reel.maker.name;
  identity.place = reel.maker.place;
  return identity;
}

}  // namespace winchbook::assess
