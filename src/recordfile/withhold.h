#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "base/result.h"
#include "record/people.h"
#include "recordfile/record_file.h"
#include "xml/edit.h"

namespace winchbook::recordfile {

/// One text or photograph that a reader may not see.
struct Taken {
  enum class Kind { name, short_name, address, contact, mention, inscription, photograph };

  Kind kind = Kind::name;
  /// What the digest is made of, after the salt: the text with its white space folded; an
  /// inscription's lines parted by line feeds; of a photograph, the SHA-256 of its file.
  std::string text;
  std::string digest;    ///< 64 hexadecimal digits
  std::string salt;      ///< 32 hexadecimal digits
  std::string file;      ///< of a photograph: its path
  std::string person;    ///< the id, in the full record, of whom it names; empty when not known
  base::Location where;  ///< in the full record
};

/// A record as a reader may see it.
struct Withholding {
  std::string bytes;                 ///< the edition's record.xml
  std::vector<Taken> taken;          ///< in document order
  std::vector<Taken> unbound;        ///< mentions in what is left out whole; they have no digest
  std::vector<std::string> digests;  ///< every digest that stands in `bytes`, in document order
  std::vector<xml::Splice> splices;  ///< how the full record became `bytes`, by offset

  /// Where the byte at `offset` of `bytes` stands in the full record; where something else was put
  /// in, the place of what it replaces.
  [[nodiscard]] std::size_t origin(std::size_t offset) const;
};

/// Whether a reader may see what a mark says: that follows the person it names. An owner's mark
/// that names nobody in the record is for the owner.
[[nodiscard]] bool may_see(const record::Record& record, record::Reader reader,
                           const record::Marking& marking);

/// Whether a reader may see a photograph: not when it shows somebody, or a mark, that they may not
/// see.
[[nodiscard]] bool may_see(const record::Record& record, record::Reader reader,
                           const record::Photo& photo);

/// The full record as `reader` may see it; for the owner, the very same bytes. In the place of
/// every name, short name, address, contact, mention, inscription and photograph that the reader
/// may not see stands its digest (seal::withheld_digest). Left out without a digest, because they
/// say who somebody is: what a person was to the reel and when they lived, the caption and rights
/// of a withheld photograph, and the story, which was told to the family; and the salts of what is
/// withheld, comments, instructions, and elements of other namespaces. Ids that are or hold a
/// withheld name become "person-2": the element and its number. Every other byte stays.
/// Errors: something that has to be withheld has no salt ("withheld-salt").
[[nodiscard]] base::Result<Withholding> withhold(const LoadedRecord& full, record::Reader reader);

}  // namespace winchbook::recordfile
