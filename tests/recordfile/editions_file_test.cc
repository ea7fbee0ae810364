#include "recordfile/editions_file.h"

#include "recordfile/small_record.h"

namespace {

using namespace winchbook;
using recordfile::IssuedEdition;

base::Result<std::vector<IssuedEdition>> read_back(const std::string& bytes) {
  const std::string path = WINCHBOOK_SOURCE_DIR "/schemas/editions-1.xsd";
  static const auto kSchema = xml::Schema::compile(path, file_bytes(path));
  REQUIRE(kSchema);
  return recordfile::editions_from("editions.xml", bytes, *kSchema);
}

}  // namespace

TEST_CASE("editions are read as they were written, oldest first") {
  const std::vector<IssuedEdition> written{
      {"keepsake", 1, "2026-06-12", "owner", "issued/keepsake-1.pdf", SIXTY_FOUR, "0123-4567",
       "winchbook 0.1.0"},
      {"keepsake", 2, "2026-06-13", "stranger", "issued/keepsake-2.pdf", SIXTY_FOUR, "89AB-CDEF",
       "winchbook 0.1.0"}};
  const auto read = read_back(recordfile::editions_file(written));
  REQUIRE(read);
  REQUIRE(read->size() == 2);
  CHECK((*read)[0].file == "issued/keepsake-1.pdf");
  CHECK((*read)[0].fingerprint == SIXTY_FOUR);
  CHECK((*read)[1].number == 2);
  CHECK((*read)[1].reader == "stranger");
  CHECK((*read)[1].code == "89AB-CDEF");
}

TEST_CASE("editions that the schema refuses are told with their line") {
  const auto read = read_back(
      "<editions xmlns=\"urn:winchbook:editions:1\" version=\"1\">\n<edition/>\n</editions>");
  REQUIRE_FALSE(read);
  CHECK(read.faults().front().where.line == 2);
}
