#include "record/enum_words.h"

#include <array>

namespace winchbook::record {

std::span<const EnumWord<Certainty>> enum_words(Certainty /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<Certainty>>({
      {Certainty::certain, "certain"},
      {Certainty::likely, "likely"},
      {Certainty::possible, "possible"},
  });
  return kWords;
}

std::span<const EnumWord<ReelKind>> enum_words(ReelKind /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<ReelKind>>({
      {ReelKind::multiplier, "multiplier"},
      {ReelKind::baitcaster, "baitcaster"},
      {ReelKind::fixed_spool, "fixed-spool"},
      {ReelKind::closed_face, "closed-face"},
      {ReelKind::centrepin, "centrepin"},
      {ReelKind::sidecast, "sidecast"},
      {ReelKind::fly_reel, "fly-reel"},
      {ReelKind::plain_winch, "plain-winch"},
      {ReelKind::wooden_reel, "wooden-reel"},
  });
  return kWords;
}

std::span<const EnumWord<Brake>> enum_words(Brake /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<Brake>>({
      {Brake::star, "star"},
      {Brake::lever, "lever"},
      {Brake::click, "click"},
      {Brake::front_drag, "front-drag"},
      {Brake::rear_drag, "rear-drag"},
      {Brake::rim, "rim"},
      {Brake::none, "none"},
      {Brake::not_determined, "not-determined"},
  });
  return kWords;
}

std::span<const EnumWord<Hand>> enum_words(Hand /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<Hand>>({
      {Hand::left, "left"},
      {Hand::right, "right"},
      {Hand::either, "either"},
      {Hand::not_determined, "not-determined"},
  });
  return kWords;
}

std::span<const EnumWord<MakerStatement::Kind>> enum_words(MakerStatement::Kind /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<MakerStatement::Kind>>({
      {MakerStatement::Kind::made_by, "made-by"},
      {MakerStatement::Kind::attributed, "attributed"},
      {MakerStatement::Kind::not_determined, "not-determined"},
  });
  return kWords;
}

std::span<const EnumWord<NamedTo>> enum_words(NamedTo /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<NamedTo>>({
      {NamedTo::anyone, "anyone"},
      {NamedTo::insurer, "insurer"},
      {NamedTo::owner, "owner"},
  });
  return kWords;
}

std::span<const EnumWord<Reader>> enum_words(Reader /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<Reader>>({
      {Reader::owner, "owner"},
      {Reader::insurer, "insurer"},
      {Reader::stranger, "stranger"},
  });
  return kWords;
}

std::span<const EnumWord<Held>> enum_words(Held /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<Held>>({
      {Held::possession, "possession"},
      {Held::title, "title"},
      {Held::both, "both"},
  });
  return kWords;
}

std::span<const EnumWord<LifeEventKind>> enum_words(LifeEventKind /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<LifeEventKind>>({
      {LifeEventKind::repair, "repair"},
      {LifeEventKind::engraving, "engraving"},
      {LifeEventKind::refinish, "refinish"},
      {LifeEventKind::conversion, "conversion"},
      {LifeEventKind::damage, "damage"},
      {LifeEventKind::loss, "loss"},
      {LifeEventKind::use, "use"},
      {LifeEventKind::storage, "storage"},
      {LifeEventKind::other, "other"},
  });
  return kWords;
}

std::span<const EnumWord<FinishBy>> enum_words(FinishBy /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<FinishBy>>({
      {FinishBy::maker, "maker"},
      {FinishBy::life, "life"},
      {FinishBy::bench, "bench"},
      {FinishBy::other, "other"},
      {FinishBy::not_determined, "not-determined"},
  });
  return kWords;
}

std::span<const EnumWord<MadeBy>> enum_words(MadeBy /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<MadeBy>>({
      {MadeBy::this_maker, "this-maker"},
      {MadeBy::another, "another"},
      {MadeBy::bench, "bench"},
      {MadeBy::owner, "owner"},
      {MadeBy::not_determined, "not-determined"},
  });
  return kWords;
}

std::span<const EnumWord<OfThisReel>> enum_words(OfThisReel /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<OfThisReel>>({
      {OfThisReel::yes, "yes"},
      {OfThisReel::no, "no"},
      {OfThisReel::not_determined, "not-determined"},
  });
  return kWords;
}

std::span<const EnumWord<Pattern>> enum_words(Pattern /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<Pattern>>({
      {Pattern::right, "right"},
      {Pattern::running_change, "running-change"},
      {Pattern::service_spare, "service-spare"},
      {Pattern::wrong, "wrong"},
      {Pattern::not_determined, "not-determined"},
  });
  return kWords;
}

std::span<const EnumWord<PieceRole>> enum_words(PieceRole /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<PieceRole>>({
      {PieceRole::part, "part"},
      {PieceRole::spare, "spare"},
      {PieceRole::content, "content"},
  });
  return kWords;
}

std::span<const EnumWord<Hazard>> enum_words(Hazard /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<Hazard>>({
      {Hazard::asbestos, "asbestos"},
      {Hazard::lead, "lead"},
      {Hazard::cadmium, "cadmium"},
      {Hazard::mercury, "mercury"},
      {Hazard::celluloid, "celluloid"},
      {Hazard::beryllium, "beryllium"},
      {Hazard::radium, "radium"},
      {Hazard::pesticides, "pesticides"},
  });
  return kWords;
}

std::span<const EnumWord<Whereabouts::Kind>> enum_words(Whereabouts::Kind /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<Whereabouts::Kind>>({
      {Whereabouts::Kind::fitted, "fitted"},
      {Whereabouts::Kind::bagged, "bagged"},
      {Whereabouts::Kind::to_owner, "to-owner"},
      {Whereabouts::Kind::kept_by_bench, "kept-by-bench"},
      {Whereabouts::Kind::lost, "lost"},
      {Whereabouts::Kind::scrapped, "scrapped"},
      {Whereabouts::Kind::with_reel, "with-reel"},
      {Whereabouts::Kind::not_known, "not-known"},
  });
  return kWords;
}

std::span<const EnumWord<MarkMethod>> enum_words(MarkMethod /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<MarkMethod>>({
      {MarkMethod::stamped, "stamped"},
      {MarkMethod::cast, "cast"},
      {MarkMethod::moulded, "moulded"},
      {MarkMethod::engraved, "engraved"},
      {MarkMethod::transfer, "transfer"},
      {MarkMethod::paper, "paper"},
      {MarkMethod::painted, "painted"},
      {MarkMethod::etched, "etched"},
      {MarkMethod::pencilled, "pencilled"},
      {MarkMethod::other, "other"},
      {MarkMethod::not_determined, "not-determined"},
  });
  return kWords;
}

std::span<const EnumWord<MarkOf>> enum_words(MarkOf /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<MarkOf>>({
      {MarkOf::maker, "maker"},
      {MarkOf::retailer, "retailer"},
      {MarkOf::owner, "owner"},
      {MarkOf::repairer, "repairer"},
      {MarkOf::assembler, "assembler"},
      {MarkOf::not_determined, "not-determined"},
  });
  return kWords;
}

std::span<const EnumWord<MarkState>> enum_words(MarkState /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<MarkState>>({
      {MarkState::as_struck, "as-struck"},
      {MarkState::recut, "recut"},
      {MarkState::filed_off, "filed-off"},
      {MarkState::worn, "worn"},
      {MarkState::not_determined, "not-determined"},
  });
  return kWords;
}

std::span<const EnumWord<Legibility>> enum_words(Legibility /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<Legibility>>({
      {Legibility::clear, "clear"},
      {Legibility::in_part, "in-part"},
      {Legibility::not_legible, "not-legible"},
      {Legibility::not_determined, "not-determined"},
  });
  return kWords;
}

std::span<const EnumWord<EndFirmness>> enum_words(EndFirmness /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<EndFirmness>>({
      {EndFirmness::hard, "hard"},
      {EndFirmness::soft, "soft"},
  });
  return kWords;
}

std::span<const EnumWord<Stage>> enum_words(Stage /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<Stage>>({
      {Stage::as_found, "as-found"},
      {Stage::strip_down, "strip-down"},
      {Stage::cleaning, "cleaning"},
      {Stage::work, "work"},
      {Stage::fitting, "fitting"},
      {Stage::test, "test"},
      {Stage::as_left, "as-left"},
      {Stage::history, "history"},
      {Stage::document, "document"},
  });
  return kWords;
}

std::span<const EnumWord<Use>> enum_words(Use /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<Use>>({
      {Use::fish, "fish"},
      {Use::show, "show"},
      {Use::fish_and_show, "fish-and-show"},
      {Use::sell, "sell"},
      {Use::keep, "keep"},
      {Use::not_determined, "not-determined"},
  });
  return kWords;
}

std::span<const EnumWord<Matter>> enum_words(Matter /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<Matter>>({
      {Matter::memory, "memory"},
      {Matter::originality, "originality"},
      {Matter::value, "value"},
      {Matter::use, "use"},
      {Matter::way_back, "way-back"},
      {Matter::cost, "cost"},
  });
  return kWords;
}

std::span<const EnumWord<Presence>> enum_words(Presence /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<Presence>>({
      {Presence::fitted, "fitted"},
      {Presence::loose, "loose"},
      {Presence::missing, "missing"},
      {Presence::not_examined, "not-examined"},
  });
  return kWords;
}

std::span<const EnumWord<Filled>> enum_words(Filled /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<Filled>>({
      {Filled::yes, "yes"},
      {Filled::in_part, "in-part"},
      {Filled::empty, "empty"},
      {Filled::not_examined, "not-examined"},
  });
  return kWords;
}

std::span<const EnumWord<SurfaceState>> enum_words(SurfaceState /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<SurfaceState>>({
      {SurfaceState::untouched, "untouched"},
      {SurfaceState::cleaned, "cleaned"},
      {SurfaceState::worn_through, "worn-through"},
      {SurfaceState::polished, "polished"},
      {SurfaceState::stripped, "stripped"},
      {SurfaceState::repaired, "repaired"},
      {SurfaceState::refinished, "refinished"},
      {SurfaceState::darkened_on_purpose, "darkened-on-purpose"},
  });
  return kWords;
}

std::span<const EnumWord<FaultKind>> enum_words(FaultKind /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<FaultKind>>({
      {FaultKind::crack, "crack"},
      {FaultKind::bend, "bend"},
      {FaultKind::pitting, "pitting"},
      {FaultKind::crumbling_zinc, "crumbling-zinc"},
      {FaultKind::filed_foot, "filed-foot"},
      {FaultKind::added_hole, "added-hole"},
      {FaultKind::stripped_thread, "stripped-thread"},
      {FaultKind::stripped_slot, "stripped-slot"},
      {FaultKind::grooved_roller, "grooved-roller"},
      {FaultKind::grooved_pawl, "grooved-pawl"},
      {FaultKind::cracked_agate, "cracked-agate"},
      {FaultKind::worn_teeth, "worn-teeth"},
      {FaultKind::broken, "broken"},
      {FaultKind::worn_plating, "worn-plating"},
      {FaultKind::fading, "fading"},
      {FaultKind::other, "other"},
  });
  return kWords;
}

std::span<const EnumWord<Severity>> enum_words(Severity /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<Severity>>({
      {Severity::blemish, "blemish"},
      {Severity::weakening, "weakening"},
      {Severity::unsafe, "unsafe"},
  });
  return kWords;
}

std::span<const EnumWord<FaultLeft>> enum_words(FaultLeft /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<FaultLeft>>({
      {FaultLeft::blemish, "blemish"},
      {FaultLeft::weakening, "weakening"},
      {FaultLeft::unsafe, "unsafe"},
      {FaultLeft::put_right, "put-right"},
  });
  return kWords;
}

std::span<const EnumWord<LookedFor>> enum_words(LookedFor /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<LookedFor>>({
      {LookedFor::marks, "marks"},
      {LookedFor::serial, "serial"},
      {LookedFor::faults, "faults"},
      {LookedFor::hazards, "hazards"},
      {LookedFor::photographs, "photographs"},
      {LookedFor::contents, "contents"},
      {LookedFor::box, "box"},
      {LookedFor::loose_parts, "loose-parts"},
      {LookedFor::life, "life"},
      {LookedFor::remaining, "remaining"},
      {LookedFor::parted, "parted"},
  });
  return kWords;
}

std::span<const EnumWord<Looked>> enum_words(Looked /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<Looked>>({
      {Looked::none, "none"},
      {Looked::some, "some"},
  });
  return kWords;
}

std::span<const EnumWord<Verdict>> enum_words(Verdict /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<Verdict>>({
      {Verdict::as_made, "as-made"},
      {Verdict::with_care, "with-care"},
      {Verdict::in_part, "in-part"},
      {Verdict::not_working, "not-working"},
  });
  return kWords;
}

std::span<const EnumWord<TestResult::Kind>> enum_words(TestResult::Kind /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<TestResult::Kind>>({
      {TestResult::Kind::done, "done"},
      {TestResult::Kind::not_safe_to_test, "not-safe-to-test"},
      {TestResult::Kind::not_tested, "not-tested"},
  });
  return kWords;
}

std::span<const EnumWord<Flag::Kind>> enum_words(Flag::Kind /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<Flag::Kind>>({
      {Flag::Kind::hazard, "hazard"},
      {Flag::Kind::legal, "legal"},
  });
  return kWords;
}

std::span<const EnumWord<Course>> enum_words(Course /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<Course>>({
      {Course::keep_as_found, "keep-as-found"},
      {Course::clean_for_show, "clean-for-show"},
      {Course::make_it_fish, "make-it-fish"},
      {Course::rebuild_to_fish, "rebuild-to-fish"},
  });
  return kWords;
}

std::span<const EnumWord<Keyed>> enum_words(Keyed /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<Keyed>>({
      {Keyed::to_gear, "to-gear"},
      {Keyed::to_sleeve, "to-sleeve"},
      {Keyed::free, "free"},
  });
  return kWords;
}

std::span<const EnumWord<SaleKind>> enum_words(SaleKind /*list*/) {
  static constexpr auto kWords = std::to_array<EnumWord<SaleKind>>({
      {SaleKind::auction, "auction"},
      {SaleKind::dealer, "dealer"},
      {SaleKind::private_sale, "private"},
      {SaleKind::asking_price, "asking-price"},
      {SaleKind::other, "other"},
  });
  return kWords;
}

}  // namespace winchbook::record
