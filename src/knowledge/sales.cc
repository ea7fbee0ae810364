#include "knowledge/sales.h"

#include <fmt/format.h>

#include <algorithm>
#include <istream>
#include <utility>

#include "base/words_of_text.h"
#include "knowledge/courses.h"
#include "knowledge/valid_file.h"
#include "tabular/rows.h"
#include "xml/rows.h"

namespace winchbook::knowledge {
namespace {

constexpr std::size_t kMostFaults = 100;

/// "over half" and "Over-half" are one word.
std::string plain(std::string_view text) {
  std::string word = base::in_small_letters(text);
  std::replace(word.begin(), word.end(), ' ', '-');
  return word;
}

/// Reads the fields of one sale, whichever kind of file they come from.
class SaleReader {
 public:
  SaleReader(base::Location where, const SalesFile& file) : where_(std::move(where)), file_(file) {}

  template <class Field> std::optional<Sale> read(const Field& field) {
    Sale sale;
    sale.line = where_.line;
    date(field("date"), sale);
    price(field("price"), field("currency"), sale);
    basis(field("basis"), sale);
    fees(field("fees"), sale);
    sale.venue = field("venue");
    sale.maker = field("maker");
    sale.model = field("model");
    sale.kind = field("kind");
    axis("surface", field("surface"), sale.state[Trait::surface]);
    axis("structure", field("structure"), sale.state[Trait::structure]);
    axis("working", field("working"), sale.state[Trait::working]);
    axis("completeness", field("completeness"), sale.state[Trait::completeness]);
    box(field("box"), sale.state[Trait::box]);
    originality(field("originality"), sale);
    sale.notes = field("notes");
    sale.source = field("source");
    if (!faults_.empty()) return std::nullopt;
    return sale;
  }

  [[nodiscard]] const base::Diagnostics& faults() const { return faults_; }

 private:
  void tell(std::string message, std::string hint, std::string rule) {
    faults_.push_back(base::error_at(where_, std::move(message), std::move(hint), std::move(rule)));
  }

  void date(std::string_view text, Sale& sale) {
    auto date = base::EdtfDate::parse(text);
    if (!date) {
      const base::Diagnostic& fault = date.faults().front();
      tell("date: " + fault.message, "write 2025-09-20, 2025-09 or 2025", "sale-date");
      return;
    }
    if (date->earliest() && *date->earliest() > file_.today) {
      tell(fmt::format("date: {} has not come yet", text), "write the day on which it was sold",
           "sale-future");
      return;
    }
    sale.date = std::move(date).value();
  }

  void price(std::string_view amount, std::string_view currency, Sale& sale) {
    const auto decimal = base::Decimal::parse(amount);
    if (!decimal) {
      tell(fmt::format("price: \"{}\" is not an amount", amount),
           "write digits and a point, no sign and no thousands: 1250.00", "sale-price");
    } else if (decimal->units() <= 0) {
      tell(fmt::format("price: {} is not above zero", amount),
           "leave out a reel that was given away or went unsold", "sale-price");
    } else {
      sale.price.amount = *decimal;
    }
    if (!file_.is_currency(currency)) {
      tell(fmt::format("currency: there is no currency \"{}\"", currency),
           "write its three capitals: GBP, EUR, USD (ISO 4217)", "sale-currency");
    }
    sale.price.currency = currency;
  }

  void basis(std::string_view text, Sale& sale) {
    const auto basis = base::value_of<Basis>(plain(text));
    if (!basis) {
      tell(fmt::format("basis: \"{}\" is none", text),
           "write hammer, premium (hammer with the buyer's premium), asking, private or dealer",
           "sale-basis");
      return;
    }
    sale.basis = *basis;
  }

  void fees(std::string_view text, Sale& sale) {
    if (text.empty()) return;
    const auto decimal = base::Decimal::parse(text);
    if (decimal && decimal->units() >= 0) {
      sale.fees = *decimal;
    } else {
      tell(fmt::format("fees: \"{}\" is not an amount", text),
           "write what the buyer paid on top of the hammer price: 31.25", "sale-price");
    }
    if (decimal && sale.basis == Basis::premium && *decimal >= sale.price.amount) {
      tell("fees: more than the price that holds them", "look at both again", "sale-price");
    }
  }

  void axis(std::string_view name, std::string_view text, std::optional<double>& into) {
    if (text.empty()) return;
    if (const auto step = axis_step(name, plain(text))) {
      into = *step;
      return;
    }
    std::string known;
    for (int step = 0; !axis_word(name, step).empty(); ++step)
      known += (step == 0 ? "" : ", ") + std::string(axis_word(name, step));
    tell(fmt::format("{}: \"{}\" is none of its words", name, text),
         "write " + known + ", or leave it empty", "sale-word");
  }

  void box(std::string_view text, std::optional<double>& into) {
    const std::string word = plain(text);
    if (word == "yes" || word == "no") {
      into = word == "yes" ? 0 : 1;
    } else if (!word.empty()) {
      tell(fmt::format("box: \"{}\" is none of its words", text),
           "write yes or no, or leave it empty", "sale-word");
    }
  }

  void originality(std::string_view text, Sale& sale) {
    if (text.empty()) return;
    const auto decimal = base::Decimal::parse(text);
    constexpr double kHundred = 100;
    constexpr double kTen = 10;
    const double points = decimal ? decimal->approximate() : -1;
    if (points < 0 || points > kHundred) {
      tell(fmt::format("originality: \"{}\" is not a figure from 0 to 100", text),
           "write 85, or leave it empty", "sale-originality");
      return;
    }
    sale.state[Trait::originality] = (kHundred - points) / kTen;
  }

  base::Location where_;
  const SalesFile& file_;
  base::Diagnostics faults_;
};

/// Keeps a hundred faults, and counts the rest.
class FaultList {
 public:
  void add(const base::Diagnostics& more) {
    for (const base::Diagnostic& one : more) {
      if (faults_.size() < kMostFaults) {
        faults_.push_back(one);
      } else {
        ++more_;
      }
    }
  }
  [[nodiscard]] base::Diagnostics done(const std::string& file) && {
    if (more_ > 0) {
      faults_.push_back(base::error_at({file, 0, 0}, fmt::format("and {} more", more_),
                                       "put these right first", "sale-more"));
    }
    return std::move(faults_);
  }
  [[nodiscard]] bool empty() const { return faults_.empty(); }

 private:
  base::Diagnostics faults_;
  std::size_t more_ = 0;
};

/// Keeps the newest sales of a stream in bounded memory, in the order in which they came.
class NewestSales {
 public:
  explicit NewestSales(std::size_t most) : most_(most) {}

  void add(Sale sale) {
    sales_.push_back(std::move(sale));
    if (sales_.size() >= 2 * most_) cut();
  }
  [[nodiscard]] SalesRead done() && {
    cut();
    return {std::move(sales_), older_};
  }

 private:
  void cut() {
    if (sales_.size() <= most_) return;
    std::vector<std::pair<base::Day, std::size_t>> by_day;
    by_day.reserve(sales_.size());
    for (std::size_t i = 0; i < sales_.size(); ++i)
      by_day.emplace_back(sales_[i].date.earliest().value_or(base::Day{}), i);
    const auto last = by_day.begin() + static_cast<std::ptrdiff_t>(most_);
    // The newest; of one day those that came first.
    std::nth_element(by_day.begin(), last, by_day.end(), [](const auto& a, const auto& b) {
      return a.first != b.first ? b.first < a.first : a.second < b.second;
    });
    std::vector<bool> kept(sales_.size());
    std::for_each(by_day.begin(), last, [&](const auto& one) { kept[one.second] = true; });
    std::size_t to = 0;
    for (std::size_t i = 0; i < sales_.size(); ++i) {
      if (!kept[i]) continue;
      if (to != i) sales_[to] = std::move(sales_[i]);
      ++to;
    }
    older_ += sales_.size() - most_;
    sales_.resize(most_);
  }

  std::size_t most_;
  std::size_t older_ = 0;
  std::vector<Sale> sales_;
};

/// Reads every row that is wanted, and keeps what is wrong with them.
class SalesWalk {
 public:
  SalesWalk(const SalesFile& file, const WantsSale& wants, const std::function<void(Sale)>& take)
      : file_(file), wants_(wants), take_(take) {}

  void table(std::istream& in) {
    const tabular::Table columns{
        "sales file", {"date", "price", "currency", "basis", "maker", "model"}, kSalesColumns};
    const std::string name = file_.path.string();
    tabular::each_row(
        in, name, columns,
        [&](const tabular::Header& header, const tabular::Row& row) {
          sale({name, row.line, 0},
               [&](std::string_view column) { return std::string(header.field(row, column)); });
        },
        [&](const base::Diagnostics& wrong) { faults_.add(wrong); });
  }

  void list(const xml::Document& document) {
    xml::for_each_row(document, "sale", [&](const xml::Row& row) {
      sale(row.where, [&](std::string_view name) { return row[name]; });
    });
  }

  [[nodiscard]] base::Diagnostics faults() && {
    return std::move(faults_).done(file_.path.string());
  }

 private:
  template <class Field> void sale(base::Location where, const Field& field) {
    if (!wants_(field("maker"), field("model"))) return;
    SaleReader reader(std::move(where), file_);
    auto read = reader.read(field);
    faults_.add(reader.faults());
    if (read) take_(std::move(*read));
  }

  const SalesFile& file_;
  const WantsSale& wants_;
  const std::function<void(Sale)>& take_;
  FaultList faults_;
};

/// Whether XML begins here: behind a byte-order mark and white space there is a "<".
bool begins_with_element(std::istream& in) {
  for (const int mark : {0xEF, 0xBB, 0xBF}) {
    if (in.peek() != mark) break;
    static_cast<void>(in.get());
  }
  in >> std::ws;
  return in.peek() == '<';
}

}  // namespace

std::vector<Trait> changes(const SaleState& from, const SaleState& to) {
  std::vector<Trait> changed;
  for (int i = 0; i < kTraits; ++i) {
    const auto trait = static_cast<Trait>(i);
    if (from[trait] != to[trait]) changed.push_back(trait);
  }
  return changed;
}

base::Diagnostics each_sale(const Source& source, const SalesFile& file, const WantsSale& wants,
                            const std::function<void(Sale)>& take) {
  const auto sniffed = source.files().open(file.path);
  if (!sniffed) return sniffed.faults();
  SalesWalk walk(file, wants, take);
  if (begins_with_element(**sniffed)) {
    constexpr std::uintmax_t kMostBytes = std::uintmax_t{64} << 20U;
    auto bytes = source.files().read(file.path, kMostBytes);
    if (!bytes) return bytes.faults();
    const auto document =
        valid_document(source, file.path.string(), std::move(bytes).value(), "sales-1.xsd");
    if (!document) return document.faults();
    walk.list(*document);
  } else {
    const auto stream = source.files().open(file.path);
    if (!stream) return stream.faults();
    walk.table(**stream);
  }
  return std::move(walk).faults();
}

base::Result<SalesRead> read_sales(const Source& source, const SalesFile& file,
                                   const WantsSale& wants, std::size_t most) {
  NewestSales newest(most);
  base::Diagnostics faults =
      each_sale(source, file, wants, [&](Sale sale) { newest.add(std::move(sale)); });
  if (!faults.empty()) return faults;
  return std::move(newest).done();
}

}  // namespace winchbook::knowledge
