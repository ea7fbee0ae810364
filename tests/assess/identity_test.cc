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

Identity identity_of(const record::Record& record) {
  return identity(record, dating::Finding(), nullptr);
}

base::EdtfDate date(const char* text) {
  return base::EdtfDate::parse(text).value();
}

}  // namespace

TEST_CASE("a maker is known, attributed, or not known, and never surer than the bench wrote") {
  const Identity made = identity_of(reel(Kind::made_by, "Harroway Reel Works"));
  CHECK(made.how == Maker::made_by);
  CHECK(made.maker == "Harroway Reel Works");
  CHECK(made.place == "Port Ellery");
  CHECK(identity_of(reel(Kind::attributed, "Harroway Reel Works")).how == Maker::attributed);
  CHECK(identity_of(reel(Kind::made_by, "")).how == Maker::not_known);
  const Identity open = identity_of(reel(Kind::not_determined, "Harroway Reel Works"));
  CHECK(open.how == Maker::not_known);
  CHECK(open.maker.empty());
  CHECK(open.place.empty());
}

TEST_CASE("a stranger calls it by its model, and by its own name where none is known") {
  record::Record record = reel(Kind::not_determined, "");
  CHECK(identity_of(record).in_trade() == "Aunt Effie’s reel");
  CHECK_FALSE(identity_of(record).trade_says_more());
  record.reel.model = "Skerry No. 40";
  CHECK(identity_of(record).in_trade() == "Skerry No. 40");
  CHECK(identity_of(record).trade_says_more());
  record.reel.model = record.reel.name;
  CHECK_FALSE(identity_of(record).trade_says_more());
  record.reel.serial = "H 4417";
  CHECK(identity_of(record).trade_says_more());
}

TEST_CASE("it is dated by its marks, and as the bench wrote it where no mark speaks") {
  record::Record record = reel(Kind::not_determined, "");
  dating::Finding dating;
  CHECK(made(record, dating).by == Made::By::nobody);
  record.reel.made.emplace();
  record.reel.made->date = date("1947~");
  const Made written = made(record, dating);
  CHECK(written.by == Made::By::bench);
  REQUIRE(written.written);
  CHECK(written.written->text() == "1947~");
  CHECK_FALSE(written.certain);
  dating.window.not_before = dating::WindowEnd{{1940, 1, 1}, record::EndFirmness::hard, 0};
  const Made marked = made(record, dating);
  CHECK(marked.by == Made::By::marks);
  CHECK_FALSE(marked.written);
  CHECK(marked.certain);
  CHECK(marked.days.first == base::Day{1940, 1, 1});
  CHECK_FALSE(marked.days.last);
  dating.window.not_after = dating::WindowEnd{{1949, 12, 31}, record::EndFirmness::soft, 0};
  CHECK_FALSE(made(record, dating).certain);
}

TEST_CASE("marks that fit no year leave it unsettled") {
  dating::Finding dating;
  dating::Conflict conflict;
  conflict.alternatives_in_all = 1;
  dating.conflicts.push_back(conflict);
  CHECK(made(record::Record(), dating).by == Made::By::nobody);
  dating.conflicts.front().alternatives_in_all = 2;
  CHECK(made(record::Record(), dating).by == Made::By::marks);
  CHECK_FALSE(made(record::Record(), dating).settled);
}

TEST_CASE("a reel put together from several says so in its identity") {
  originality::Finding originality;
  CHECK_FALSE(identity(record::Record(), {}, &originality).assembled());
  originality.reels = 3;
  CHECK(identity(record::Record(), {}, &originality).assembled());
  CHECK(identity(record::Record(), {}, &originality).reels == 3);
}

}  // namespace winchbook::assess
