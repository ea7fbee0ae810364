#include <algorithm>
#include <utility>

#include "assess/care/care.h"
#include "record/moments.h"

namespace winchbook::assess::care {
namespace {

using knowledge::CareMethod;
using knowledge::CareRow;
using knowledge::CareTable;
using knowledge::CareVerdict;
using knowledge::Substance;
using record::Piece;

/// Of what a piece is, outermost first; null where a layer or the base is not known.
using Layers = std::vector<const Substance*>;

void add_layer(const CareTable& table, const std::string& text, Layers& layers) {
  const auto named = knowledge::substances_in(table, text);
  if (named.empty()) layers.push_back(nullptr);
  layers.insert(layers.end(), named.begin(), named.end());
}

Layers layers_of(const CareTable& table, const Piece& piece) {
  Layers layers;
  for (auto layer = piece.finish.rbegin(); layer != piece.finish.rend(); ++layer)
    add_layer(table, layer->what, layers);
  add_layer(table, piece.material, layers);
  return layers;
}

/// What a method touches of them.
Layers touched(const Layers& layers, const CareMethod& method, bool worn) {
  if (method.reach == CareMethod::Reach::through || worn) return layers;
  const auto closed = std::find_if(layers.begin(), layers.end(), [](const Substance* one) {
    return one != nullptr && one->layer == Substance::Layer::whole;
  });
  if (closed == layers.end()) return layers;
  return {layers.begin(), std::next(closed)};
}

/// The coat is gone in places, as it came.
bool is_worn(const record::Visit& visit, const Piece& piece) {
  const auto* state = record::state_entered(visit, piece.id, record::Moment::found);
  if (state != nullptr) {
    for (const record::SurfaceShare& share : state->surface) {
      if (share.state == record::SurfaceState::worn_through && share.share.value.units() > 0)
        return true;
    }
  }
  const auto& faults = visit.findings.faults;
  return std::any_of(faults.begin(), faults.end(), [&](const record::Fault& fault) {
    return fault.piece == piece.id && fault.kind == record::FaultKind::worn_plating;
  });
}

bool has_layer(const Layers& layers) {
  return std::any_of(layers.begin(), layers.end(), [](const Substance* one) {
    return one != nullptr && one->layer != Substance::Layer::no;
  });
}

bool spring_sits_with(const record::Record& record, const record::PieceId& piece) {
  return std::any_of(record.fittings.begin(), record.fittings.end(),
                     [&](const record::Fitting& fitting) {
                       const record::Place* place = find(record, fitting.place);
                       return fitting.piece == piece && place != nullptr && place->captive_spring;
                     });
}

/// The judge of one piece and what is done to it.
class Judge {
 public:
  Judge(const CareTable& table, const record::Record& record, const record::Visit& visit,
        const Intent& intent)
      : table_(table),
        record_(record),
        intent_(intent),
        layers_(layers_of(table, intent.piece)),
        worn_(is_worn(visit, intent.piece) && has_layer(layers_)) {}

  std::vector<Judged> verdicts() && {
    const auto methods = knowledge::methods_in(table_, intent_.method);
    if (methods.empty()) add({.because = Because::method_unknown});
    for (const CareMethod* method : methods) {
      by_table(*method);
      by_company(*method, methods);
      if (method->bath) by_what_is_joined(*method);
      by_time(*method);
    }
    std::stable_sort(judged_.begin(), judged_.end(),
                     [](const Judged& a, const Judged& b) { return a.verdict > b.verdict; });
    return std::move(judged_);
  }

 private:
  void add(Judged one) {
    one.piece = intent_.piece.id;
    const bool there = std::any_of(judged_.begin(), judged_.end(), [&](const Judged& other) {
      return other.because == one.because && other.row == one.row && other.method == one.method &&
             other.other == one.other;
    });
    if (!there) judged_.push_back(std::move(one));
  }

  void by_table(const CareMethod& method) {
    for (const Substance* substance : touched(layers_, method, worn_)) {
      if (substance == nullptr) {
        add({.because = Because::substance_unknown, .method = &method});
        continue;
      }
      const CareRow* row = knowledge::find_row(table_, *substance, method);
      Judged one{.method = &method, .substance = substance, .row = row};
      if (row != nullptr) one.verdict = row->verdict;
      // Rubbing at a coat that is worn through takes more of it.
      const bool rubs = method.reach == CareMethod::Reach::outside && worn_ &&
                        substance->layer != Substance::Layer::no;
      if (rubs && method.word == "metal-polish" && one.verdict < CareVerdict::harms) {
        one.verdict = CareVerdict::harms;
        one.because = Because::worn;
      }
      if (one.verdict != CareVerdict::usual) add(one);
    }
  }

  /// Rows that hold only beside another method, or another metal in the bath.
  void by_company(const CareMethod& method, const std::vector<const CareMethod*>& methods) {
    for (const CareRow& row : table_.rows) {
      if (row.with.empty() && row.beside.empty()) continue;
      for (const Substance* substance : layers_) {
        const Substance& of = substance == nullptr ? unknown_ : *substance;
        if (!knowledge::speaks_of(row, of, method)) continue;
        const bool mixed = std::any_of(methods.begin(), methods.end(), [&](const CareMethod* one) {
          return std::find(row.beside.begin(), row.beside.end(), one->word) != row.beside.end();
        });
        const auto other = row.with.empty() ? std::nullopt : other_of(row.with);
        if (!mixed && !other) continue;
        add({{}, row.verdict, Because::together, &method, substance, &row, other});
        break;
      }
    }
  }

  /// The first piece in the same bath that is of these.
  [[nodiscard]] std::optional<record::PieceId> other_of(
      const std::vector<std::string>& words) const {
    for (const record::PieceId& id : intent_.beside) {
      const Piece* piece = id == intent_.piece.id ? nullptr : find(record_, id);
      if (piece == nullptr) continue;
      const Layers layers = layers_of(table_, *piece);
      const bool of_these = std::any_of(layers.begin(), layers.end(), [&](const Substance* one) {
        return one != nullptr && knowledge::names(words, *one);
      });
      if (of_these) return id;
    }
    return std::nullopt;
  }

  /// A bath takes in what was not taken off.
  void by_what_is_joined(const CareMethod& method) {
    for (const record::PieceId& id : intent_.joined_to) {
      const Piece* other = find(record_, id);
      if (other == nullptr) continue;
      if (spring_sits_with(record_, id)) {
        add({{}, CareVerdict::with_care, Because::captive, &method, nullptr, nullptr, id});
      }
      if (id == intent_.piece.id) continue;
      for (const Substance* substance : layers_of(table_, *other)) {
        const CareRow* row =
            substance == nullptr ? nullptr : knowledge::find_row(table_, *substance, method);
        if (row == nullptr || row->verdict < CareVerdict::harms) continue;
        add({{}, row->verdict, Because::joined, &method, substance, row, id});
      }
    }
  }

  /// Longer than the method, or the row of what it touches, allows.
  void by_time(const CareMethod& method) {
    if (!intent_.minutes) return;
    const base::Decimal& minutes = intent_.minutes->value;
    const auto too_long = [&](int most) { return most > 0 && base::Decimal(most, 0) < minutes; };
    for (const Substance* substance : touched(layers_, method, worn_)) {
      const CareRow* row =
          substance == nullptr ? nullptr : knowledge::find_row(table_, *substance, method);
      if (row == nullptr || !too_long(row->most_minutes)) continue;
      add({.verdict = CareVerdict::with_care,
           .because = Because::time,
           .method = &method,
           .substance = substance,
           .row = row});
      return;
    }
    if (too_long(method.most_minutes))
      add({.verdict = CareVerdict::with_care, .because = Because::time, .method = &method});
  }

  const CareTable& table_;
  const record::Record& record_;
  const Intent& intent_;
  Layers layers_;
  bool worn_ = false;
  Substance unknown_;
  std::vector<Judged> judged_;
};

}  // namespace

std::vector<Judged> judge(const CareTable& table, const record::Record& record,
                          const record::Visit& visit, const Intent& intent) {
  return Judge(table, record, visit, intent).verdicts();
}

CareVerdict worst(const std::vector<Judged>& judged) {
  CareVerdict worst = CareVerdict::usual;
  for (const Judged& one : judged)
    worst = std::max(worst, one.verdict);
  return worst;
}

}  // namespace winchbook::assess::care
