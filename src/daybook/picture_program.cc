#include "daybook/picture_program.h"

#include <csignal>
#include <utility>

#include "library/run_program.h"
#include "photo/besides.h"
#include "photo/jpeg.h"

namespace winchbook::daybook {
namespace {

base::Diagnostic fell_over(const std::string& how) {
  return base::error("the photograph could not be read: the program that reads pictures " + how,
                     "nothing was changed; open it elsewhere and save it again as JPEG",
                     "photo-limits");
}

/// Why there is no JPEG; nothing when there may be one.
base::Diagnostics fault_of_end(const library::ProgramEnd& end) {
  if (end.by == library::ProgramEnd::By::our_limit)
    return {fell_over("took too long or said too much")};
  if (end.by == library::ProgramEnd::By::signal) {
    const bool too_long = end.code == SIGXCPU || end.code == SIGKILL;
    return {fell_over(too_long ? "took too long" : "fell over it")};
  }
  if (end.code == 0) return {};
  const auto refused = photo::read_refusal(end.err);
  return {refused ? *refused : fell_over("stopped without a word")};
}

/// True when the JPEG is what a photograph in a record has to be.
bool is_as_it_says(const PrintedPicture& picture) {
  const auto facts = photo::inspect(picture.jpeg);
  return facts && photo::Size{facts->width, facts->height} == picture.answer.size &&
         photo::fits_print(picture.answer.size) &&
         facts->orientation == photo::Orientation::upright && facts->icc_profile.empty() &&
         photo::besides_the_picture(picture.jpeg).empty();
}

}  // namespace

base::Result<PrintedPicture> make_printable(const std::filesystem::path& program,
                                            std::string_view bytes) {
  auto end = library::run_program(program, bytes, {});
  if (!end) return end.faults();
  if (auto faults = fault_of_end(*end); !faults.empty()) return faults;
  auto answer = photo::read_print_answer(end->err);
  if (!answer) return fell_over("answered nothing that makes sense");
  PrintedPicture picture{std::move(end.value().out), std::move(*answer)};
  if (!is_as_it_says(picture)) return fell_over("gave no picture that could be printed");
  return picture;
}

}  // namespace winchbook::daybook
