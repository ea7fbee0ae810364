#include "forms/fill_and_run.h"

#include <doctest/doctest.h>

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "base/files.h"

namespace winchbook::forms {
namespace {

/// What a made-up job asks for.
struct Request {
  std::string what;
  int count = 1;
  std::string reason;
  bool warned = false;
  base::Day on;
};

/// A job that is objected to while it has no reason, and warns before it is done.
struct Bench {
  base::RealFiles files;
  library::Library library{{files, "/nowhere", "test", [this] {
                              ++clock_asked;
                              return base::Day{2026, 6, 1};
                            }}};
  std::shared_ptr<Request> request = std::make_shared<Request>();
  bool objects = false;
  bool warns = false;
  int runs = 0;
  int clock_asked = 0;

  Job job() {
    return {
        {field("WHAT", "what is done", request->what).asks("What is done?"),
         field("--count", "how many", request->count),
         field("--reason", "why all the same", request->reason)
             .resolves("harm", "Why all the same?"),
         confirm("flies", "Go on?", request->warned), day_or_today("--on", "the day", request->on)},
        [this](Setting& setting) -> base::Result<Outcome> {
          ++runs;
          if (objects && request->reason.empty()) return base::error("it harms", "", "harm");
          if (warns && setting.somebody_there && !request->warned) {
            return base::Diagnostics{base::warning_at({}, "it flies", "", "flies")};
          }
          return Outcome{request->what, {}, {}};
        },
        {}};
  }

  base::Result<Done> done(Job& job, const Ask& ask = nullptr) {
    Setting setting{library, "winchbook made-up", false, {}};
    return fill_and_run(job, setting, ask);
  }
};

/// Somebody who answers in this order, and what they were asked.
struct Somebody {
  std::vector<std::optional<std::string>> answers;
  std::vector<std::string> asked;

  Ask ask() {
    return [this](const base::Diagnostics& /*objections*/, const std::string& question) {
      asked.push_back(question);
      if (answers.empty()) return std::optional<std::string>();
      auto answer = answers.front();
      answers.erase(answers.begin());
      return answer;
    };
  }
};

}  // namespace

TEST_CASE("what is missing is a fault of the command, and asked for where somebody is there") {
  Bench bench;
  Job job = bench.job();
  const auto refused = bench.done(job);
  REQUIRE_FALSE(refused);
  CHECK(refused.faults().front().message == "WHAT is missing");
  CHECK(refused.faults().front().hint == "it answers: What is done?");
  CHECK(refused.faults().front().of == base::FaultOf::command);
  CHECK(bench.runs == 0);

  Somebody somebody{{"Oiled."}, {}};
  const auto done = bench.done(job, somebody.ask());
  REQUIRE(done);
  CHECK(done->outcome.text == "Oiled.");
  CHECK(somebody.asked == std::vector<std::string>{"What is done?"});
}

TEST_CASE("a field that cannot be read names itself, and nothing is run") {
  Bench bench;
  Job job = bench.job();
  const auto faults = say(*find(job.form, "--count"), "many");
  REQUIRE(faults.size() == 1);
  CHECK(faults.front().message == "--count: \"many\" is not a whole number of 1 or more");
  CHECK(faults.front().of == base::FaultOf::command);
  CHECK_FALSE(find(job.form, "--count")->given);
  CHECK(find(job.form, "--colour") == nullptr);
}

TEST_CASE("an objection asks the field that answers it, and the job runs again") {
  Bench bench;
  bench.objects = true;
  Job job = bench.job();
  REQUIRE(say(*find(job.form, "WHAT"), "Polished.").empty());
  Somebody somebody{{"It was asked for."}, {}};
  const auto done = bench.done(job, somebody.ask());
  REQUIRE(done);
  CHECK(done->outcome.text == "Polished.");
  CHECK(bench.runs == 2);
  CHECK(bench.request->reason == "It was asked for.");
  CHECK(somebody.asked == std::vector<std::string>{"Why all the same?"});
}

TEST_CASE("no answer to an objection refuses, and where nobody is there it stays a fault") {
  for (const std::optional<std::string>& answer :
       {std::optional<std::string>(""), std::optional<std::string>()}) {
    Bench bench;
    bench.objects = true;
    Job job = bench.job();
    REQUIRE(say(*find(job.form, "WHAT"), "Polished.").empty());
    Somebody somebody{{answer}, {}};
    const auto done = bench.done(job, somebody.ask());
    REQUIRE(done);
    CHECK(done->refused.size() == 1);
    CHECK_FALSE(done->left);
    CHECK(bench.runs == 1);
  }
  Bench bench;
  bench.objects = true;
  Job job = bench.job();
  REQUIRE(say(*find(job.form, "WHAT"), "Polished.").empty());
  const auto refused = bench.done(job);
  REQUIRE_FALSE(refused);
  CHECK(refused.faults().front().rule == "harm");
}

TEST_CASE("a warning is confirmed by any answer, and left by ending the asking") {
  Bench bench;
  bench.warns = true;
  Job job = bench.job();
  REQUIRE(say(*find(job.form, "WHAT"), "Lifted.").empty());
  Somebody leaves{{}, {}};
  const auto left = bench.done(job, leaves.ask());
  REQUIRE(left);
  CHECK(left->left);
  Somebody goes_on{{""}, {}};
  const auto done = bench.done(job, goes_on.ask());
  REQUIRE(done);
  CHECK_FALSE(done->left);
  CHECK(done->outcome.text == "Lifted.");
}

TEST_CASE("the clock is asked only where a day was left out") {
  Bench bench;
  Job job = bench.job();
  REQUIRE(say(*find(job.form, "WHAT"), "Oiled.").empty());
  REQUIRE(say(*find(job.form, "--on"), "2020-02-29").empty());
  REQUIRE(bench.done(job));
  CHECK(bench.clock_asked == 0);
  CHECK(bench.request->on == base::Day{2020, 2, 29});
  Job other = bench.job();
  Somebody somebody{{"Oiled."}, {}};
  REQUIRE(bench.done(other, somebody.ask()));
  CHECK(bench.clock_asked == 1);
  CHECK(bench.request->on == base::Day{2026, 6, 1});
}

}  // namespace winchbook::forms
