#include "assess/with_the_reel.h"

#include <doctest/doctest.h>

#include "assess/reel_on_bench.h"

namespace winchbook::assess {
namespace {

record::Piece& content(bench_test::ReelOnBench& reel, const char* id) {
  record::Piece& one = reel.piece(id);
  one.role = record::PieceRole::content;
  one.now.kind = record::Whereabouts::Kind::with_reel;
  return one;
}

std::vector<std::string> came(const bench_test::ReelOnBench& reel) {
  std::vector<std::string> ids;
  for (const record::Piece* one : came_with_it(reel.record, reel.record.visits.back()))
    ids.push_back(one->id.text);
  return ids;
}

}  // namespace

TEST_CASE("what came with the reel is no part of it, and nothing that the bench put with it") {
  bench_test::ReelOnBench reel;
  reel.piece("spool");
  content(reel, "tin");
  content(reel, "bag").made_by.answer = record::MadeBy::bench;
  content(reel, "line");
  CHECK(came(reel) == std::vector<std::string>{"tin", "line"});
  record::Work work;
  work.pieces = {{"line"}};
  reel.visit().work = {work};
  CHECK(came(reel) == std::vector<std::string>{"tin"});
  record::TrayLine in_tray;
  in_tray.piece = {"line"};
  reel.visit().tray = {in_tray};
  CHECK(came(reel) == std::vector<std::string>{"tin", "line"});
}

TEST_CASE("what was gone before the visit did not come with the reel") {
  bench_test::ReelOnBench reel;  // taken in on 2026-03-03
  record::Piece& tin = content(reel, "tin");
  CHECK(is_with_reel(tin));
  tin.now.kind = record::Whereabouts::Kind::lost;
  CHECK_FALSE(is_with_reel(tin));
  CHECK(came(reel).size() == 1);
  tin.now.since = bench_test::date("2026-04-01");
  CHECK(came(reel).size() == 1);
  tin.now.since = bench_test::date("2020");
  CHECK(came(reel).empty());
}

TEST_CASE("the owner is the last holder who has it still and does not merely keep it") {
  record::Record record;
  CHECK_FALSE(owner_now(record));
  const auto step = [&](const char* holder, record::Held held, const char* until) {
    record::CustodyStep one;
    one.holder = {holder};
    one.held = held;
    if (until != nullptr) one.until = bench_test::date(until);
    record.custody.emplace_back(one);
  };
  step("gus", record::Held::both, "1994");
  CHECK_FALSE(owner_now(record));
  step("nell", record::Held::both, nullptr);
  step("bench", record::Held::possession, nullptr);
  REQUIRE(owner_now(record));
  CHECK(owner_now(record)->text == "nell");
}

TEST_CASE("who owned it in a stay is as the stay says; its papers go to who got it back") {
  bench_test::ReelOnBench reel;
  record::Record& record = reel.record;
  record.custody.clear();
  CHECK_FALSE(client_of(record, reel.visit()));
  reel.visit().brought_by = {"carrier"};
  CHECK_FALSE(owner_of(record, reel.visit()));
  CHECK(client_of(record, reel.visit())->text == "carrier");
  record::CustodyStep has_it;
  has_it.holder = {"nell"};
  record.custody.emplace_back(has_it);
  CHECK(owner_of(record, reel.visit())->text == "nell");
  CHECK(client_of(record, reel.visit())->text == "nell");
  reel.visit().owner = {"gus"};
  CHECK(owner_of(record, reel.visit())->text == "gus");
  CHECK(client_of(record, reel.visit())->text == "gus");
  reel.visit().hand_back = record::HandBack{bench_test::date("2026-05-01"), {{"ada"}}, {}, {}};
  CHECK(client_of(record, reel.visit())->text == "ada");
}

}  // namespace winchbook::assess
