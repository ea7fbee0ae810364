#include "assess/entered.h"

#include <algorithm>
#include <variant>

#include "assess/tray/tray.h"
#include "record/looked_for.h"
#include "record/moments.h"

namespace winchbook::assess {
namespace {

/// Collects what is entered, a thing at a time.
class Collector {
 public:
  Collector(const record::Record& record, const record::Visit& visit)
      : record_(record), visit_(visit) {}

  [[nodiscard]] std::set<Entered> all() {
    of_the_reel();
    of_its_life();
    of_its_parts();
    of_the_stay();
    of_findings();
    of_the_work();
    of_what_went_home();
    of_what_was_looked_for();
    taken_together();
    return std::move(found_);
  }

 private:
  void add(Entered what, bool is_there) {
    if (is_there) found_.insert(what);
  }
  template <class List, class Test> void add_if_any(Entered what, const List& list, Test test) {
    add(what, std::any_of(list.begin(), list.end(), test));
  }

  void of_the_reel() {
    const record::Reel& reel = record_.reel;
    add(Entered::brake, reel.brake != record::Brake::not_determined);
    add(Entered::maker, !reel.maker.name.empty());
    add(Entered::serial, !reel.serial.empty());
    using record::Hand;
    add(Entered::hand, reel.hand.made != Hand::not_determined ||
                           reel.hand.found != Hand::not_determined ||
                           reel.hand.left != Hand::not_determined);
    add(Entered::mark, !record_.markings.empty());
    add(Entered::photograph, !record_.photos.empty());
    add(Entered::interest, !record_.bench.own_interest.empty());
  }

  void of_its_life() {
    add(Entered::story, record_.story.has_value());
    add(Entered::life, !record_.life.empty());
    add(Entered::custody, !record_.custody.empty());
  }

  void of_its_parts() {
    using record::Whereabouts;
    const auto& pieces = record_.pieces;
    add(Entered::part, !record_.fittings.empty());
    add_if_any(Entered::standing, pieces, [](const record::Piece& piece) {
      return piece.of_this_reel.answer != record::OfThisReel::not_determined ||
             piece.made_by.answer != record::MadeBy::not_determined;
    });
    add_if_any(Entered::donor, pieces,
               [](const record::Piece& piece) { return piece.donor.has_value(); });
    add_if_any(Entered::content, pieces,
               [](const record::Piece& piece) { return piece.role != record::PieceRole::part; });
    add_if_any(Entered::bag, pieces, [](const record::Piece& piece) {
      return piece.now.kind == Whereabouts::Kind::bagged;
    });
    add_if_any(Entered::parted, pieces, [](const record::Piece& piece) {
      using Kind = Whereabouts::Kind;
      const Kind now = piece.now.kind;
      return now == Kind::lost || now == Kind::scrapped || now == Kind::kept_by_bench ||
             now == Kind::to_owner;
    });
    add_if_any(Entered::date, pieces, [](const record::Piece& piece) {
      return piece.made || !piece.material.empty() || !piece.finish.empty();
    });
    add(Entered::date, record_.reel.made || !record_.markings.empty() || !record_.custody.empty() ||
                           !record_.life.empty());
    add_if_any(Entered::fitting, record_.fittings,
               [](const record::Fitting& fitting) { return fitting.visit.has_value(); });
  }

  void of_the_stay() {
    add(Entered::arrival, true);
    add(Entered::brought_by, visit_.brought_by.has_value());
    add(Entered::arrived, !visit_.arrived.empty());
    const record::Wishes& wishes = visit_.wishes;
    add(Entered::wish, wishes.use != record::Use::not_determined || !wishes.words.empty());
    add(Entered::ranking, !wishes.ranking.empty());
    add(Entered::agreement, !visit_.agreements.empty());
    add(Entered::promise, visit_.promised_by || !visit_.waiting_for.empty());
    add_if_any(Entered::must_stay, visit_.agreements, [](const record::Agreement& one) {
      return !one.must_stay.empty() || !one.pieces_must_stay.empty();
    });
    add_if_any(Entered::must_stay, record_.life, [](const record::LifeEvent& one) {
      return !one.keep_because.empty() || !one.must_stay.empty();
    });
    add_if_any(Entered::cost, visit_.agreements, [](const record::Agreement& one) {
      return one.cost_limit || one.estimate_low || one.estimate_high;
    });
    add_if_any(Entered::cost, visit_.work,
               [](const record::Work& one) { return one.hours || one.parts_cost; });
    add_if_any(Entered::cost, record_.donors,
               [](const record::Donor& one) { return one.cost.has_value(); });
    add_if_any(Entered::earlier_visit, record_.visits, [&](const record::Visit& one) {
      return one.id != visit_.id && !one.summary.empty();
    });
    const auto& advice = visit_.advice;
    add(Entered::advice,
        advice && (advice->advised || !advice->because.empty() || !advice->courses.empty()));
    add(Entered::decision, advice && advice->chosen);
    add(Entered::cost, advice && !advice->courses.empty());
  }

  void of_findings() {
    const record::Findings& findings = visit_.findings;
    add_if_any(Entered::found, findings.pieces,
               [](const record::PieceFinding& one) { return one.found.has_value(); });
    add(Entered::found, !findings.places.empty());
    add_if_any(Entered::surface, findings.pieces, [](const record::PieceFinding& one) {
      return (one.found && !one.found->surface.empty()) || (one.left && !one.left->surface.empty());
    });
    add(Entered::fault, !findings.faults.empty());
    add_if_any(Entered::fault_stays, findings.faults, [](const record::Fault& one) {
      return record::severity_at(one, record::Moment::left).has_value();
    });
    add_if_any(Entered::fault_mended, findings.faults, record::put_right);
    add_if_any(Entered::test, findings.tests, [](const record::Test& one) {
      return record::is_written(one.before) || record::is_written(one.after);
    });
    add_if_any(Entered::tested_twice, findings.tests, [](const record::Test& one) {
      return record::is_written(one.before) && record::is_written(one.after);
    });
  }

  void of_the_work() {
    add(Entered::step, !visit_.strip_down.empty());
    add(Entered::closed_tray, !visit_.tray.empty() && tray::account(record_, visit_).closed());
    add(Entered::cleaning, !visit_.cleaning.empty());
    add_if_any(Entered::warned, visit_.cleaning,
               [](const record::Cleaning& one) { return !one.against_warning.empty(); });
    add(Entered::work, !visit_.work.empty());
    add(Entered::drag, visit_.drag.has_value());
  }

  void of_what_went_home() {
    add(Entered::remaining, !visit_.not_put_right.empty());
    add(Entered::care, visit_.care.has_value());
    add(Entered::next_service, visit_.next_service || visit_.review_by);
    add(Entered::hand_back, visit_.hand_back.has_value());
    add(Entered::receiver, visit_.hand_back && visit_.hand_back->to);
  }

  /// "None" is an answer that somebody gave; what was found is entered itself.
  void of_what_was_looked_for() {
    using record::LookedFor;
    const auto none = [&](LookedFor what) {
      return record::looked_for(record_, visit_, what) == record::Looked::none;
    };
    add(Entered::no_marks, none(LookedFor::marks));
    add(Entered::no_photographs, none(LookedFor::photographs));
    add(Entered::no_faults, none(LookedFor::faults));
    add(Entered::no_remaining, none(LookedFor::remaining));
    add(Entered::no_parted, none(LookedFor::parted));
    add(Entered::no_contents, none(LookedFor::contents));
    add(Entered::no_loose, none(LookedFor::loose_parts));
    add(Entered::no_serial, none(LookedFor::serial));
  }

  void taken_together() {
    const auto any = [&](std::initializer_list<Entered> all) {
      return std::any_of(all.begin(), all.end(), [&](Entered one) { return found_.contains(one); });
    };
    add(Entered::with_it, any({Entered::content}) || !record_.reel.box_and_papers.empty());
    add(Entered::examined, any({Entered::found, Entered::fault, Entered::test}));
    add(Entered::treatment, any({Entered::cleaning, Entered::work, Entered::fitting}));
    add(Entered::counsel, any({Entered::advice, Entered::decision, Entered::care}));
  }

  const record::Record& record_;
  const record::Visit& visit_;
  std::set<Entered> found_;
};

}  // namespace

std::set<Entered> entered(const record::Record& record, const record::Visit& visit) {
  return Collector(record, visit).all();
}

}  // namespace winchbook::assess
