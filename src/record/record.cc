#include "record/record.h"

#include <algorithm>
#include <type_traits>

namespace winchbook::record {
namespace {

template <class Thing, class ThingId>
const Thing* find_in(const std::vector<Thing>& things, const ThingId& id) {
  const auto found =
      std::find_if(things.begin(), things.end(), [&](const Thing& one) { return one.id == id; });
  return found == things.end() ? nullptr : &*found;
}

/// Whether a fitting, as its dates tell, could not yet have begun on `day`.
bool begins_after(const Fitting& fitting, const base::EdtfDate& day) {
  return fitting.from && surely_before(day, *fitting.from);
}

bool ends_before(const Fitting& fitting, const base::EdtfDate& day) {
  return fitting.until && surely_before(*fitting.until, day);
}

/// Where a visit stands among the visits; -1 when the fitting names none.
std::ptrdiff_t position(const Record& record, const std::optional<VisitId>& id) {
  if (!id) return -1;
  const auto found = std::find_if(record.visits.begin(), record.visits.end(),
                                  [&](const Visit& one) { return one.id == *id; });
  return found == record.visits.end() ? -1 : found - record.visits.begin();
}

bool in_force(const Record& record, const Fitting& fitting, const Visit& visit, Moment moment) {
  const std::ptrdiff_t here = position(record, visit.id);
  const std::ptrdiff_t begun = position(record, fitting.visit);
  const std::ptrdiff_t ended = position(record, fitting.removed_in);
  if (moment == Moment::found) {
    if (begun >= here || begins_after(fitting, visit.taken_in)) return false;
    return ended >= 0 ? ended >= here : !ends_before(fitting, visit.taken_in);
  }
  const base::EdtfDate& end = visit.hand_back ? visit.hand_back->on : visit.taken_in;
  if (begun > here) return false;
  if (begun < 0 && visit.hand_back && begins_after(fitting, end)) return false;
  if (ended >= 0) return ended > here;
  return !fitting.until ||
         (!surely_before(*fitting.until, end) && fitting.until->latest() != end.latest());
}

std::string name_of(const Person& person) {
  const std::string* name = told(person.name);
  return name == nullptr ? person.stand_in : *name;
}

std::string words_of(const Record& record, const PersonMention& mention) {
  const Person* person = find(record, mention.person);
  if (person == nullptr) return mention.words;
  if (told(person->name) == nullptr) return person->stand_in;
  return mention.words.empty() ? name_of(*person) : mention.words;
}

std::string words_of(const Record& record, const PieceMention& mention) {
  const Piece* piece = find(record, mention.piece);
  return mention.words.empty() && piece != nullptr ? piece->name : mention.words;
}

}  // namespace

const Person* find(const Record& record, const PersonId& id) {
  return find_in(record.people, id);
}
const Place* find(const Record& record, const PlaceId& id) {
  return find_in(record.places, id);
}
const Piece* find(const Record& record, const PieceId& id) {
  return find_in(record.pieces, id);
}
const Donor* find(const Record& record, const DonorId& id) {
  return find_in(record.donors, id);
}
const Fitting* find(const Record& record, const FittingId& id) {
  return find_in(record.fittings, id);
}
const Marking* find(const Record& record, const MarkingId& id) {
  return find_in(record.markings, id);
}
const Visit* find(const Record& record, const VisitId& id) {
  return find_in(record.visits, id);
}
const Photo* find(const Record& record, const PhotoId& id) {
  return find_in(record.photos, id);
}

std::vector<const Fitting*> fittings_in(const Record& record, const PlaceId& place,
                                        const Visit& visit, Moment moment) {
  std::vector<const Fitting*> here;
  for (const Fitting& fitting : record.fittings) {
    if (fitting.place == place && in_force(record, fitting, visit, moment))
      here.push_back(&fitting);
  }
  return here;
}

const Visit* last_visit(const Record& record) {
  return record.visits.empty() ? nullptr : &record.visits.back();
}

std::string plain_text(const Record& record, const Words& words) {
  std::string out;
  for (const Run& run : words.runs) {
    std::visit(
        [&](const auto& one) {
          using T = std::decay_t<decltype(one)>;
          if constexpr (std::is_same_v<T, Plain> || std::is_same_v<T, Emphasis>) {
            out += one.words;
          } else if constexpr (!std::is_same_v<T, PhotoMention>) {
            out += words_of(record, one);
          }
        },
        run);
  }
  return out;
}

}  // namespace winchbook::record
