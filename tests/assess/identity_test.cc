#include "assess/identity.h"

#include <doctest/doctest.h>

namespace winchbook::assess {
namespace {

using Kind = record::MakerStatement::Kind;
using Maker = Identity::Maker;

record::Record reel(Kind kind, const char* maker) {
  record::Record record;
  record.reel.name = "Aunt Effie’s reel";
  record.reel.maker.kind = kind;
  record.reel.maker.name = maker;
  record.reel.maker.place = "Port Ellery";
  return record;
}

}  // namespace

TEST_CASE("a maker is known, attributed, or not known, and never surer than the bench wrote") {
  const Identity made = identity(reel(Kind::made_by, "Harroway Reel Works"));
  CHECK(made.how == Maker::made_by);
  CHECK(made.maker == "Harroway Reel Works");
  CHECK(made.place == "Port Ellery");
  CHECK(identity(reel(Kind::attributed, "Harroway Reel Works")).how == Maker::attributed);
  CHECK(identity(reel(Kind::made_by, "")).how == Maker::not_known);
  const Identity open = identity(reel(Kind::not_determined, "Harroway Reel Works"));
  CHECK(open.how == Maker::not_known);
  CHECK(open.maker.empty());
  CHECK(open.place.empty());
}

TEST_CASE("a stranger calls it by its model, and by its own name where none is known") {
  record::Record record = reel(Kind::not_determined, "");
  CHECK(identity(record).in_trade() == "Aunt Effie’s reel");
  CHECK_FALSE(identity(record).trade_says_more());
  record.reel.model = "Skerry No. 40";
  CHECK(identity(record).in_trade() == "Skerry No. 40");
  CHECK(identity(record).trade_says_more());
  record.reel.model = record.reel.name;
  CHECK_FALSE(identity(record).trade_says_more());
  record.reel.serial = "H 4417";
  CHECK(identity(record).trade_says_more());
}

}  // namespace winchbook::assess
