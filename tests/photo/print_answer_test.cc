#include "photo/print_answer.h"

#include <doctest/doctest.h>

#include <string>

namespace winchbook::photo {
namespace {

TEST_CASE("an answer is read as it was written") {
  const PrintAnswer answer{{1963, 1472}, Made::anew,           "heic", {4032, 3024}, true,
                           false,        base::Day{2026, 3, 6}};
  const auto read = read_print_answer(written(answer));
  REQUIRE(read);
  CHECK(read->size == answer.size);
  CHECK(read->camera_size == answer.camera_size);
  CHECK(read->made == Made::anew);
  CHECK(read->ending == "heic");
  CHECK(read->recoloured);
  CHECK_FALSE(read->profile_unusable);
  CHECK(read->taken == base::Day{2026, 3, 6});
  CHECK_FALSE(read_refusal(written(answer)));
}

TEST_CASE("a refusal is read as it was written") {
  const base::Diagnostic fault =
      base::error("the photograph is cut short", "copy it again", "photo-truncated");
  const auto read = read_refusal(written(base::Diagnostics{fault}));
  REQUIRE(read);
  CHECK(*read == fault);
  CHECK_FALSE(read_print_answer(written(base::Diagnostics{fault})));
}

TEST_CASE("what a broken program says is not believed") {
  const std::string good = written(PrintAnswer{{10, 10}, Made::anew, "jpg", {10, 10}});
  CHECK(read_print_answer(good));
  CHECK_FALSE(read_print_answer(""));
  CHECK_FALSE(read_print_answer("width 10\n"));
  std::string wrong = good;
  wrong.replace(wrong.find("width 10"), 8, "width -1");
  CHECK_FALSE(read_print_answer(wrong));
  wrong = good;
  wrong.replace(wrong.find("ending jpg"), 10, "ending ../");
  CHECK_FALSE(read_print_answer(wrong));
  CHECK_FALSE(read_print_answer(good + "taken someday\n"));
  CHECK_FALSE(read_refusal("refused file-read\nmessage no\nhint no\n"));
  const auto loud = read_refusal("refused photo-damaged\nmessage the\x1b[31m photograph\nhint \n");
  REQUIRE(loud);
  CHECK(loud->message == "the[31m photograph");
  const auto long_one =
      read_refusal("refused photo-damaged\nmessage " + std::string(5000, 'a') + "\nhint x\n");
  REQUIRE(long_one);
  CHECK(long_one->message.size() == 240);
}

}  // namespace
}  // namespace winchbook::photo
