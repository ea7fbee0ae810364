#include "assess/identity.h"

namespace winchbook::assess {

Identity identity(const record::Record& record) {
  using Kind = record::MakerStatement::Kind;
  const record::Reel& reel = record.reel;
  Identity identity;
  identity.name = reel.name;
  identity.model = reel.model;
  identity.serial = reel.serial;
  if (reel.maker.kind == Kind::not_determined || reel.maker.name.empty()) return identity;
  identity.how =
      reel.maker.kind == Kind::attributed ? Identity::Maker::attributed : Identity::Maker::made_by;
  identity.maker = reel.maker.name;
  identity.place = reel.maker.place;
  return identity;
}

}  // namespace winchbook::assess
