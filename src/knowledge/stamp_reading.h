#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "knowledge/recognise.h"
#include "knowledge/stamp_dates.h"
#include "knowledge/stamp_text.h"

namespace winchbook::knowledge {

/// Reads the words of one stamp from left to right; what it finds gathers in `out`. Shared by
/// recognise() and recognise_as().
class StampReading {
 public:
  StampReading(const Marks& marks, const std::vector<Maker>& makers, std::string_view text,
               const Maker* maker)
      : marks_(marks), makers_(makers), text_(text), maker_(maker), words_(stamp_words(text)) {}

  /// The whole stamp.
  void read_all();
  /// The text is one number, or several, of a kind; a phrase of the kind before it is passed over.
  void read_numbers_of(ReadAs as);
  /// The text is a form of address.
  void read_address();
  /// The text names a material, a finish or a fastener.
  void read_named(ReadAs as);
  /// The text is of a maker's file: a name, an address, a model, a mark, a feature, a serial
  /// number.
  void read_maker();

  Readings out;

 private:
  /// A number or a date, where it stands, and what is behind a stroke.
  struct Item {
    std::size_t from = 0;
    std::size_t to = 0;
    std::int64_t number = 0;  ///< 0: it is a date
    std::int64_t year = 0;    ///< behind a stroke: "21480/50"
    std::string assumed;
    StampDate date;
  };

  /// What kind of number a phrase announces.
  struct Announced {
    ReadAs as = ReadAs::us_patent;
    const NumberSeries* series = nullptr;
    bool provisional = false;
    bool asked = false;     ///< the user says what it is
    bool american = false;  ///< the phrase says so
  };

  std::size_t step(std::size_t at);
  std::size_t phrase_step(std::size_t at);
  std::size_t address_step(std::size_t at, bool asked);
  std::size_t serial_step(std::size_t at, bool whole);
  std::size_t maker_row_at(std::size_t at, const Maker& maker, bool everything,
                           Reading& into) const;
  std::size_t maker_step(std::size_t at, std::size_t longer_than);

  std::size_t items_at(std::size_t at, const Announced& announced, std::vector<Item>& items);
  bool item_at(std::size_t at, bool bare_year, bool dates, Item& item);
  std::size_t broken_groups(std::size_t at) const;
  void tell(const std::vector<Item>& items, const Announced& announced);
  void tell_patents(const std::vector<Item>& items, const Announced& announced);
  void keep_number(const Item& item, const Announced& announced, const Item* date);
  void keep_date(const Item& item, bool numbered);
  void keep(base::Result<Reading> reading, std::size_t from, std::size_t to,
            const std::string& assumed);
  void keep_mark(const Mark& mark, ReadAs as, std::size_t from, std::size_t to);
  void refuse(std::size_t from, std::size_t to, const std::string& message, std::string hint,
              std::string rule);
  bool other_country(std::size_t before, std::size_t after) const;
  bool says(std::string_view phrase) const;
  bool is_filler(std::size_t at) const;

  const Marks& marks_;
  const std::vector<Maker>& makers_;
  std::string_view text_;
  const Maker* maker_;
  std::vector<StampWord> words_;
};

/// The kind of a sort of mark.
[[nodiscard]] ReadAs read_as(MarkSort sort);

}  // namespace winchbook::knowledge
