#include "answers/sales.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <istream>
#include <optional>
#include <utility>

#include "knowledge/courses.h"
#include "tabular/rows.h"
#include "words/catalogue.h"

namespace winchbook::answers {
namespace {

using assess::value::Basis;
using assess::value::Sale;
using assess::value::Trait;

constexpr std::size_t kMostFaults = 100;
constexpr std::size_t kMostModels = 10000;  // counted apart: memory stays bounded

std::vector<std::string> columns() {
  std::vector<std::string> names;
  std::string_view rest = kSalesColumns;
  while (!rest.empty()) {
    const std::size_t comma = std::min(rest.find(','), rest.size());
    names.emplace_back(rest.substr(0, comma));
    rest.remove_prefix(std::min(comma + 1, rest.size()));
  }
  return names;
}

/// "nearly all" and "Nearly-all" are one word.
std::string plain(std::string_view text) {
  std::string word;
  for (const char c : text) {
    word += c == ' ' ? '-' : c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  return word;
}

/// Reads the fields of one sale, whichever kind of file they come from.
class SaleReader {
 public:
  SaleReader(base::Location where, const base::Day& today)
      : where_(std::move(where)), today_(today) {}

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
    if (date->earliest() && *date->earliest() > today_) {
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
    if (!words::is_currency(currency)) {
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
    if (const auto step = knowledge::axis_step(name, plain(text))) {
      into = *step;
      return;
    }
    std::string known;
    for (int step = 0; !knowledge::axis_word(name, step).empty(); ++step)
      known += (step == 0 ? "" : ", ") + std::string(knowledge::axis_word(name, step));
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
  const base::Day& today_;
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

using TakeSale = std::function<void(Sale)>;

base::Diagnostics walk_csv(std::istream& in, const std::string& file, const base::Day& today,
                           const WantsSale& wants, const TakeSale& take) {
  tabular::RowReader rows(in, file);
  const auto first = rows.next();
  if (!first) return first.faults();
  if (!*first) {
    return {base::error_at({file, 1, 0}, "the sales file is empty",
                           "its first row names the columns: " + std::string(kSalesColumns),
                           "table-columns")};
  }
  const auto header = tabular::Header::read(
      **first, file, {"date", "price", "currency", "basis", "maker", "model"}, columns());
  if (!header) return header.faults();
  FaultList faults;
  for (;;) {
    const auto row = rows.next();
    if (!row) {
      faults.add(row.faults());
      break;
    }
    if (!*row) break;
    const tabular::Row& fields = **row;
    if (fields.fields.size() != header->columns()) {
      faults.add({base::error_at({file, fields.line, 0},
                                 fmt::format("this row has {} fields, the first row names {}",
                                             fields.fields.size(), header->columns()),
                                 "put a field with a comma or a quote in quotes", "table-row")});
      continue;
    }
    if (!wants(header->field(fields, "maker"), header->field(fields, "model"))) continue;
    SaleReader reader({file, fields.line, 0}, today);
    auto sale = reader.read(
        [&](std::string_view name) { return std::string(header->field(fields, name)); });
    faults.add(reader.faults());
    if (sale) take(std::move(*sale));
  }
  return std::move(faults).done(file);
}

base::Diagnostics walk_xml(library::Library& library, const std::filesystem::path& path,
                           const base::Day& today, const WantsSale& wants, const TakeSale& take) {
  const auto document = library.valid_xml(path, "sales-1.xsd");
  if (!document) return document.faults();
  FaultList faults;
  for (const pugi::xml_node node : document->root().children("sale")) {
    const auto field = [&](std::string_view name) {
      return std::string(node.child(std::string(name).c_str()).text().get());
    };
    if (!wants(field("maker"), field("model"))) continue;
    SaleReader reader(document->where(node), today);
    auto sale = reader.read(field);
    faults.add(reader.faults());
    if (sale) take(std::move(*sale));
  }
  return std::move(faults).done(path.string());
}

/// Whether XML begins here: behind a byte-order mark and white space there is a "<".
bool begins_with_element(std::istream& in) {
  for (const int mark : {0xEF, 0xBB, 0xBF}) {
    if (in.peek() != mark) break;
    static_cast<void>(in.get());
  }
  in >> std::ws;
  return in.peek() == '<';
}

base::Diagnostics walk(library::Library& library, const std::filesystem::path& file,
                       const base::Day& today, const WantsSale& wants, const TakeSale& take) {
  const auto sniffed = library.files().open(file);
  if (!sniffed) return sniffed.faults();
  if (begins_with_element(**sniffed)) return walk_xml(library, file, today, wants, take);
  const auto stream = library.files().open(file);
  if (!stream) return stream.faults();
  return walk_csv(**stream, file.string(), today, wants, take);
}

struct SalesCheck {
  std::filesystem::path file;
  base::Day today;
  bool json = false;
};

forms::Form form(SalesCheck& asked) {
  return {
      forms::field("FILE", "the sales: CSV or XML", asked.file).must(),
      forms::flag("--json", "what it holds as JSON (schemas/sales_check.schema.json)", asked.json),
      forms::today(asked.today)};
}

base::Result<forms::Outcome> run(const SalesCheck& asked, forms::Setting& setting) {
  const auto summary = check_sales(setting.library, asked.file, asked.today);
  if (!summary) return summary.faults();
  return forms::Outcome{
      asked.json ? summary_as_json(*summary) : summary_in_words(*summary), {}, {}};
}

}  // namespace

base::Result<SalesRead> read_sales(library::Library& library, const std::filesystem::path& file,
                                   const base::Day& today, const WantsSale& wants,
                                   std::size_t most) {
  NewestSales newest(most);
  base::Diagnostics faults =
      walk(library, file, today, wants, [&](Sale sale) { newest.add(std::move(sale)); });
  if (!faults.empty()) return faults;
  return std::move(newest).done();
}

base::Result<SalesSummary> check_sales(library::Library& library, const std::filesystem::path& file,
                                       const base::Day& today) {
  SalesSummary summary;
  std::optional<base::Day> first;
  std::optional<base::Day> last;
  const auto take = [&](const Sale& sale) {
    ++summary.sales;
    const std::string model = sale.maker + ", " + sale.model;
    if (summary.by_model.size() < kMostModels || summary.by_model.contains(model)) {
      ++summary.by_model[model];
    } else {
      ++summary.other_models;
    }
    ++summary.by_currency[sale.price.currency];
    ++summary.by_basis[std::string(base::word_of(sale.basis))];
    const auto day = sale.date.earliest();
    if (!day) return;
    if (!first || *day < *first) {
      first = day;
      summary.first_date = sale.date.text();
    }
    if (!last || *day > *last) {
      last = day;
      summary.last_date = sale.date.text();
    }
  };
  base::Diagnostics faults = walk(
      library, file, today, [](std::string_view, std::string_view) { return true; }, take);
  if (!faults.empty()) return faults;
  return summary;
}

std::string summary_in_words(const SalesSummary& summary) {
  std::string text = fmt::format("{} {}", summary.sales, summary.sales == 1 ? "sale" : "sales");
  if (!summary.first_date.empty()) {
    text += fmt::format(", {} to {}", summary.first_date, summary.last_date);
  }
  text += "; nothing is wrong with them\n";
  const auto list = [&](std::string_view title, const std::map<std::string, std::size_t>& counts) {
    constexpr std::size_t kMostShown = 20;
    text += fmt::format("{}:\n", title);
    std::size_t shown = 0;
    for (const auto& [name, count] : counts) {
      if (shown++ == kMostShown) {
        text += fmt::format("  and {} more\n", counts.size() - kMostShown);
        break;
      }
      text += fmt::format("  {}: {}\n", name, count);
    }
  };
  list("models", summary.by_model);
  if (summary.other_models > 0) {
    text += fmt::format("  and sales of still other models: {}\n", summary.other_models);
  }
  list("bases", summary.by_basis);
  list("currencies", summary.by_currency);
  return text;
}

forms::Job sales_check_job() {
  forms::Job job = forms::job_of(form, run);
  job.more_help = "The columns: " + std::string(kSalesColumns);
  return job;
}

}  // namespace winchbook::answers
