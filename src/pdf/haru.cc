#include "pdf/haru.h"

#include <fmt/format.h>
#include <hpdf_encrypt.h>
#include <hpdf_streams.h>
#include <libdeflate.h>

#include <algorithm>
#include <array>
#include <cstring>
#include <new>
#include <utility>

#include "pdf/syntax.h"

namespace winchbook::pdf {
namespace {

constexpr int kCompressionLevel = 3;  // photographs are most of a file, and they pass through
constexpr HPDF_UINT32 kNumberMask = 0x00FFFFFF;
std::string reference_to(const HPDF_Obj_Header& header) {
  return fmt::format("{} 0 R", header.obj_id & kNumberMask);
}

template <class T> T* demand(T* made) {
  if (made == nullptr) throw std::bad_alloc();
  return made;
}

const HPDF_BYTE* as_bytes(std::string_view text) {
  return reinterpret_cast<const HPDF_BYTE*>(text.data());
}

HPDF_STATUS write_entries(HPDF_Dict dict, HPDF_Stream stream) {
  const std::string& entries = static_cast<const Object*>(dict->attr)->entries;
  return HPDF_Stream_Write(stream, as_bytes(entries), static_cast<HPDF_UINT>(entries.size()));
}

HPDF_STATUS append_to_string(HPDF_Stream stream, const HPDF_BYTE* bytes, HPDF_UINT size) {
  static_cast<std::string*>(stream->attr)->append(reinterpret_cast<const char*>(bytes), size);
  return HPDF_OK;
}

}  // namespace

Object::Object(HPDF_Dict dict, std::string_view data) : dict_(dict), data_(data) {
  dict_->attr = this;
  dict_->write_fn = write_entries;
}

std::string Object::reference() const {
  return reference_to(dict_->header);
}

std::string PageObject::reference() const {
  return reference_to(page_->header);
}

void Haru::record_fault(HPDF_STATUS code, HPDF_STATUS detail, void* fault) {
  auto* first = static_cast<Fault*>(fault);
  if (first->code == 0) *first = {code, detail};
}

/// Some calls fail without telling the error handler.
void Haru::note(HPDF_STATUS status) {
  if (status != HPDF_OK) record_fault(status, 0, &fault_);
}

Haru::Haru()
    : document_(demand(HPDF_New(record_fault, &fault_))),
      compressor_(demand(libdeflate_alloc_compressor(kCompressionLevel)),
                  libdeflate_free_compressor) {
  document_->pdf_version = HPDF_VER_17;
}

Haru::~Haru() {
  HPDF_Free(document_);
}

Object& Haru::add_object() {
  HPDF_Dict dict = demand(HPDF_Dict_New(document_->mmgr));
  note(HPDF_Xref_Add(document_->xref, dict));
  return objects_.emplace_back(dict, std::string_view());
}

/// Takes over a stream dictionary of libharu's: it will read `data` instead of its own buffer.
Object& Haru::keep_stream(HPDF_Dict dict, std::string_view data) {
  Object& object = objects_.emplace_back(dict, data);
  HPDF_Stream_Free(dict->stream);
  const auto read = [](HPDF_Stream stream, HPDF_BYTE* out, HPDF_UINT* size) -> HPDF_STATUS {
    auto* from = static_cast<Object*>(stream->attr);
    const std::string_view left = from->data_.substr(from->read_);
    const std::size_t count = std::min<std::size_t>(*size, left.size());
    std::memcpy(out, left.data(), count);
    from->read_ += count;
    *size = static_cast<HPDF_UINT>(count);
    return from->read_ == from->data_.size() ? HPDF_STREAM_EOF : HPDF_OK;
  };
  const auto seek = [](HPDF_Stream stream, HPDF_INT position, HPDF_WhenceMode) -> HPDF_STATUS {
    static_cast<Object*>(stream->attr)->read_ = static_cast<std::size_t>(position);
    return HPDF_OK;
  };
  const auto tell = [](HPDF_Stream stream) {
    return static_cast<HPDF_INT32>(static_cast<Object*>(stream->attr)->read_);
  };
  const auto size = [](HPDF_Stream stream) {
    return static_cast<HPDF_UINT32>(static_cast<Object*>(stream->attr)->data_.size());
  };
  dict->stream = demand(HPDF_CallbackReader_New(document_->mmgr, read, seek, tell, size, &object));
  return object;
}

void Haru::deflate(Object& object, std::string_view data) {
  std::string& packed = object.packed_;
  packed.resize(libdeflate_zlib_compress_bound(compressor_.get(), data.size()));
  packed.resize(libdeflate_zlib_compress(compressor_.get(), data.data(), data.size(), packed.data(),
                                         packed.size()));
  object.data_ = packed;
  object.entries = "/Filter/FlateDecode";
}

Object& Haru::add_stream(std::string_view data) {
  return keep_stream(demand(HPDF_DictStream_New(document_->mmgr, document_->xref)), data);
}

Object& Haru::add_deflated(std::string_view data) {
  Object& object = add_stream({});
  deflate(object, data);
  return object;
}

void Haru::set_content(const PageObject& page, std::string_view data) {
  const auto* attributes = static_cast<HPDF_PageAttr>(page.page()->attr);
  deflate(keep_stream(attributes->contents, {}), data);
}

PageObject Haru::add_page(base::Length width, base::Length height) {
  HPDF_Page page = demand(HPDF_AddPage(document_));
  note(HPDF_Page_SetWidth(page, static_cast<float>(base::to_points(width))));
  note(HPDF_Page_SetHeight(page, static_cast<float>(base::to_points(height))));
  return PageObject(page);
}

void Haru::put(HPDF_Dict dict, const char* key, const Object& object) {
  note(HPDF_Dict_Add(dict, key, object.dict()));
}

void Haru::put_name(HPDF_Dict dict, const char* key, const char* name) {
  note(HPDF_Dict_AddName(dict, key, name));
}

void Haru::put_number(HPDF_Dict dict, const char* key, int value) {
  note(HPDF_Dict_AddNumber(dict, key, value));
}

void Haru::put_text(HPDF_Dict dict, const char* key, std::string_view utf8) {
  std::string bytes = "\xFE\xFF" + utf16(utf8);
  note(HPDF_Dict_Add(dict, key,
                     HPDF_Binary_New(document_->mmgr, reinterpret_cast<HPDF_BYTE*>(bytes.data()),
                                     static_cast<HPDF_UINT>(bytes.size()))));
}

void Haru::put_plain(HPDF_Dict dict, const char* key, const std::string& ascii) {
  note(HPDF_Dict_Add(dict, key, HPDF_String_New(document_->mmgr, ascii.c_str(), nullptr)));
}

void Haru::put_references(HPDF_Dict dict, const char* key,
                          const std::vector<const Object*>& objects) {
  HPDF_Array array = demand(HPDF_Array_New(document_->mmgr));
  for (const Object* object : objects)
    note(HPDF_Array_Add(array, object->dict()));
  note(HPDF_Dict_Add(dict, key, array));
}

void Haru::put_identifier() {
  HPDF_MD5_CTX state;
  HPDF_MD5Init(&state);
  const auto take = [&](std::string_view bytes) {
    HPDF_MD5Update(&state, as_bytes(bytes), static_cast<HPDF_UINT32>(bytes.size()));
  };
  for (const Object& object : objects_) {
    take(object.entries);
    // Megabytes of photographs are told apart by two fast checksums; their digests stand in the
    // record.
    const std::string_view data = object.data();
    take(fmt::format("{} {} {}", data.size(), libdeflate_crc32(0, data.data(), data.size()),
                     libdeflate_adler32(1, data.data(), data.size())));
  }
  std::array<HPDF_BYTE, 16> identifier{};
  HPDF_MD5Final(identifier.data(), &state);
  HPDF_Array pair = demand(HPDF_Array_New(document_->mmgr));
  for (int i = 0; i < 2; ++i) {
    note(HPDF_Array_Add(pair, HPDF_Binary_New(document_->mmgr, identifier.data(), 16)));
  }
  note(HPDF_Dict_Add(document_->trailer, "ID", pair));
}

base::Result<std::string> Haru::bytes() {
  put_identifier();
  note(HPDF_Dict_Add(document_->trailer, "Root", document_->catalog));
  note(HPDF_Dict_Add(document_->trailer, "Info", document_->info));
  // The second line tells transfer programs that the file is binary (ISO 19005-3, 6.1.2).
  std::string out = "%PDF-1.7\n%\xE2\xE3\xCF\xD3\n";
  std::size_t total = 0;
  for (const Object& object : objects_)
    total += object.entries.size() + object.data().size() + 64;
  out.reserve(out.size() + total + (1U << 14U));
  HPDF_Stream stream = demand(HPDF_CallbackWriter_New(document_->mmgr, append_to_string, &out));
  stream->size = static_cast<HPDF_UINT>(out.size());
  note(HPDF_Xref_WriteToStream(document_->xref, stream, nullptr));
  HPDF_Stream_Free(stream);
  if (fault_.code != 0) {
    return base::error(fmt::format("the PDF library refuses the document: error {:#06x}, detail {}",
                                   fault_.code, fault_.detail),
                       "this is a fault of the program; please report it with the record",
                       "pdf-library");
  }
  return out;
}

}  // namespace winchbook::pdf
