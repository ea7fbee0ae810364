#include "assess/dating/tables.h"

#include <algorithm>
#include <utility>

#include "assess/dating/counting.h"
#include "knowledge/recognise.h"

namespace winchbook::assess::dating {
namespace {

using knowledge::BoundEnd;
using knowledge::Mark;
using knowledge::MarkSort;
using knowledge::Readings;
using record::EndFirmness;
using record::Marking;
using record::MarkOf;

End end_of(const BoundEnd& end) {
  return {end.day, end.hard ? EndFirmness::hard : EndFirmness::soft, Basis::table};
}

/// Whoever strikes patents, addresses and serial numbers; an owner or a repairer does not.
bool struck_in_trade(const Marking& mark) {
  return mark.whose != MarkOf::owner && mark.whose != MarkOf::repairer;
}

/// Read with doubt: worn, or guessed at in brackets.
bool read_in_part(const Marking& mark, const std::string& text) {
  return mark.legibility == record::Legibility::in_part || text.find('[') != std::string::npos;
}

void append(std::string& to, const std::string& sentence) {
  if (sentence.empty()) return;
  if (!to.empty()) to += ' ';
  to += sentence;
}

/// What the tables say of one stamp, taken together.
Evidence taken_together(const Readings& readings) {
  Evidence together;
  for (const knowledge::Reading& reading : readings.readings) {
    const auto& first = reading.bound.not_before;
    const auto& last = reading.bound.not_after;
    if (!first && !last) continue;
    if (first && (!together.not_before || together.not_before->day < first->day))
      together.not_before = end_of(*first);
    if (last && (!together.not_after || last->day < together.not_after->day))
      together.not_after = end_of(*last);
    if (!together.what.empty()) together.what += ", ";
    together.what += reading.what;
    append(together.because, reading.bound.basis);
    for (const std::string& reason : reading.reasons)
      append(together.because, reason);
    if (together.source.find(reading.bound.source) == std::string::npos) {
      if (!together.source.empty()) together.source += "; ";
      together.source += reading.bound.source;
    }
  }
  return together;
}

/// The marks of a record under the eyes of the tables.
class MarkReading {
 public:
  MarkReading(const record::Record& record, const Tables& tables, Gathered& gathered)
      : record_(record), tables_(tables), gathered_(gathered) {}

  void read(std::size_t i) {
    const Marking* mark = find(record_, *gathered_.evidence[i].marking);
    const std::string* text = mark == nullptr ? nullptr : record::told(mark->text);
    if (text == nullptr || !struck_in_trade(*mark)) return;
    if (mark->legibility == record::Legibility::not_legible) return;
    if (left_out(record_, mark->piece) != LeftOut::no && !says(*mark)) return;
    const Readings readings =
        knowledge::recognise(tables_.marks, tables_.makers, *text, maker_of(*mark));
    tell(i, readings);
    Evidence table = taken_together(readings);
    if (says(*mark)) {
      compare(i, table);
    } else {
      adopt(i, std::move(table), read_in_part(*mark, *text));
    }
  }

 private:
  static bool says(const Marking& mark) {
    return mark.says && (mark.says->not_before || mark.says->not_after);
  }

  /// Whose file to read by: the reel's maker's, for his own marks.
  const knowledge::Maker* maker_of(const Marking& mark) const {
    const record::Piece* piece = find(record_, mark.piece);
    if (piece != nullptr && piece->made_by.answer == record::MadeBy::another)
      return find_maker(tables_.makers, piece->maker_name);
    return find_maker(tables_.makers, record_.reel.maker.name);
  }

  void warn(std::size_t i, std::string words) {
    gathered_.warnings.push_back({Warning::Kind::table, i, {}, std::move(words)});
  }

  void tell(std::size_t i, const Readings& readings) {
    for (const base::Diagnostic& fault : readings.faults)
      warn(i, fault.message);
    for (const knowledge::Reading& reading : readings.readings) {
      for (const std::string& assumed : reading.assumed)
        warn(i, assumed);
      for (const std::string& doubt : reading.warnings)
        warn(i, doubt);
    }
  }

  /// The bench's ends count. A firm end of the tables that they pass is a doubt.
  void compare(std::size_t i, const Evidence& table) {
    Evidence& bench = gathered_.evidence[i];
    const auto hard = [](const std::optional<End>& end) {
      return end && end->firmness == EndFirmness::hard;
    };
    const bool too_early =
        hard(table.not_before) && bench.not_before && bench.not_before->day < table.not_before->day;
    const bool too_late =
        hard(table.not_after) && bench.not_after && table.not_after->day < bench.not_after->day;
    const bool ends_before =
        hard(table.not_before) && bench.not_after && bench.not_after->day < table.not_before->day;
    const bool begins_after =
        hard(table.not_after) && bench.not_before && table.not_after->day < bench.not_before->day;
    if (!too_early && !too_late && !ends_before && !begins_after) return;
    const bool early = too_early || ends_before;
    gathered_.warnings.push_back(
        {Warning::Kind::bench_against_table, i, early ? Side::not_before : Side::not_after, {}});
    const End& end = early ? *table.not_before : *table.not_after;
    warn(i, table.what + ": not " + (early ? "before " : "after ") + base::iso_text(end.day));
  }

  void adopt(std::size_t i, Evidence table, bool in_part) {
    Evidence& evidence = gathered_.evidence[i];
    if (in_part) evidence.legibility = record::Legibility::in_part;
    for (const Side side : {Side::not_before, Side::not_after}) {
      auto& end = side == Side::not_before ? table.not_before : table.not_after;
      if (!end) continue;
      if (in_part && end->firmness == EndFirmness::hard) {
        end->firmness = EndFirmness::soft;
        gathered_.warnings.push_back({Warning::Kind::made_soft_in_part, i, side, {}});
      }
      (side == Side::not_before ? evidence.not_before : evidence.not_after) = end;
    }
    evidence.what = std::move(table.what);
    evidence.because = std::move(table.because);
    evidence.source = std::move(table.source);
  }

  const record::Record& record_;
  const Tables& tables_;
  Gathered& gathered_;
};

void add_row(const record::Piece& piece, Grounds grounds, const Mark* row, Gathered& gathered) {
  if (row == nullptr || (!row->bound.not_before && !row->bound.not_after)) return;
  Evidence evidence;
  evidence.grounds = grounds;
  evidence.piece = piece.id;
  evidence.what = row->name;
  if (row->bound.not_before) evidence.not_before = end_of(*row->bound.not_before);
  if (row->bound.not_after) evidence.not_after = end_of(*row->bound.not_after);
  evidence.because = row->bound.basis;
  evidence.source = row->bound.source;
  gathered.evidence.push_back(std::move(evidence));
}

}  // namespace

void read_marks(const record::Record& record, const Tables& tables, Gathered& gathered) {
  MarkReading reading(record, tables, gathered);
  for (std::size_t i = 0; i < gathered.evidence.size(); ++i) {
    const Evidence& evidence = gathered.evidence[i];
    if (evidence.marking && evidence.grounds == Grounds::mark) reading.read(i);
  }
}

void add_materials(const record::Record& record, const Tables& tables, Gathered& gathered) {
  const auto row = [&](MarkSort sort, const std::string& text) {
    return best_mark(tables.marks, sort, text);
  };
  for (const record::Piece& piece : record.pieces) {
    if (left_out(record, piece.id) != LeftOut::no) continue;
    add_row(piece, Grounds::material, row(MarkSort::material, piece.material), gathered);
    for (const record::FinishLayer& layer : piece.finish) {
      if (layer.by != record::FinishBy::maker) continue;
      add_row(piece, Grounds::finish, row(MarkSort::finish, layer.what), gathered);
    }
    add_row(piece, Grounds::fastener, row(MarkSort::fastener, piece.name), gathered);
  }
}

}  // namespace winchbook::assess::dating
