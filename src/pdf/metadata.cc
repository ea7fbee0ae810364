#include "pdf/metadata.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>
#include <vector>

#include "pdf/syntax.h"

namespace winchbook::pdf {
namespace {

/// "2026-06-19" as PDF writes a day (ISO 32000-1, 7.9.4).
std::string pdf_date(std::string date) {
  date.erase(std::remove(date.begin(), date.end(), '-'), date.end());
  return "D:" + date;
}

/// `<dc:title><rdf:Alt>…`: one string in the container that XMP asks for; nothing when empty.
std::string property(const char* name, const char* container, std::string_view text) {
  if (text.empty()) return {};
  const bool alternatives = std::string_view(container) == "Alt";
  return fmt::format("<{0}><rdf:{1}><rdf:li{2}>{3}</rdf:li></rdf:{1}></{0}>\n", name, container,
                     alternatives ? " xml:lang=\"x-default\"" : "", escaped_for_xml(text));
}

constexpr std::string_view kPacketBegin =
    "<?xpacket begin=\"\xEF\xBB\xBF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
    "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n"
    "<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n"
    "<rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\""
    " xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\" xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\""
    " xmlns:pdfaid=\"http://www.aiim.org/pdfa/ns/id/\""
    " xmlns:pdfuaid=\"http://www.aiim.org/pdfua/ns/id/\">\n"
    "<pdfaid:part>3</pdfaid:part>\n"
    "<pdfaid:conformance>A</pdfaid:conformance>\n"
    "<pdfuaid:part>1</pdfuaid:part>\n"
    "<dc:format>application/pdf</dc:format>\n";

constexpr std::string_view kPacketEnd =
    "</rdf:Description>\n"
    "<rdf:Description rdf:about=\"\""
    " xmlns:pdfaExtension=\"http://www.aiim.org/pdfa/ns/extension/\""
    " xmlns:pdfaSchema=\"http://www.aiim.org/pdfa/ns/schema#\""
    " xmlns:pdfaProperty=\"http://www.aiim.org/pdfa/ns/property#\">\n"
    "<pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType=\"Resource\">\n"
    "<pdfaSchema:schema>PDF/UA Universal Accessibility Schema</pdfaSchema:schema>\n"
    "<pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>\n"
    "<pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>\n"
    "<pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType=\"Resource\">\n"
    "<pdfaProperty:name>part</pdfaProperty:name>\n"
    "<pdfaProperty:valueType>Integer</pdfaProperty:valueType>\n"
    "<pdfaProperty:category>internal</pdfaProperty:category>\n"
    "<pdfaProperty:description>Part of ISO 14289 that the file follows"
    "</pdfaProperty:description>\n"
    "</rdf:li></rdf:Seq></pdfaSchema:property>\n"
    "</rdf:li></rdf:Bag></pdfaExtension:schemas>\n"
    "</rdf:Description>\n"
    "</rdf:RDF>\n"
    "</x:xmpmeta>\n"
    "<?xpacket end=\"r\"?>";

}  // namespace

std::string escaped_for_xml(std::string_view text) {
  std::string out;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '&') {
      out += "&amp;";
    } else if (c == '<') {
      out += "&lt;";
    } else if (c == '>') {
      out += "&gt;";
    } else if (c == '"') {
      out += "&quot;";
    } else if (byte >= 0x20 || c == '\t' || c == '\n' || c == '\r') {
      out += c;
    }
  }
  return out;
}

std::string xmp_packet(const Metadata& metadata) {
  std::string out(kPacketBegin);
  out += property("dc:title", "Alt", metadata.title);
  out += property("dc:creator", "Seq", metadata.author);
  out += property("dc:description", "Alt", metadata.subject);
  out += property("dc:language", "Bag", metadata.language);
  const std::string date = escaped_for_xml(metadata.date);
  out += fmt::format(
      "<xmp:CreateDate>{0}</xmp:CreateDate>\n<xmp:ModifyDate>{0}</xmp:ModifyDate>\n"
      "<pdf:Producer>{1}</pdf:Producer>\n",
      date, escaped_for_xml(metadata.producer));
  out += kPacketEnd;
  return out;
}

void describe(const Contents& contents, std::string_view packet, Haru& haru) {
  const Metadata& metadata = contents.metadata;
  const auto put_info = [&](const char* key, std::string_view text) {
    if (!text.empty()) haru.put_text(haru.info(), key, text);
  };
  put_info("Title", metadata.title);
  put_info("Author", metadata.author);
  put_info("Subject", metadata.subject);
  put_info("Producer", metadata.producer);
  haru.put_plain(haru.info(), "CreationDate", pdf_date(metadata.date));
  haru.put_plain(haru.info(), "ModDate", pdf_date(metadata.date));

  Object& xmp = haru.add_stream(packet);
  xmp.entries = "/Type/Metadata/Subtype/XML";
  haru.put(haru.catalogue(), "Metadata", xmp);

  Object& profile = haru.add_deflated(contents.icc_profile);
  profile.entries += "/N 3";
  Object& intent = haru.add_object();
  intent.entries = fmt::format(
      "/Type/OutputIntent/S/GTS_PDFA1/OutputConditionIdentifier(sRGB)/Info(sRGB IEC61966-2.1)"
      "/DestOutputProfile {}",
      profile.reference());
  haru.put_references(haru.catalogue(), "OutputIntents", {&intent});

  Object& viewer = haru.add_object();
  viewer.entries = "/DisplayDocTitle true";
  haru.put(haru.catalogue(), "ViewerPreferences", viewer);
  Object& marks = haru.add_object();
  marks.entries = "/Marked true";
  haru.put(haru.catalogue(), "MarkInfo", marks);
  Object& labels = haru.add_object();
  labels.entries = "/Nums[0<</S/D>>]";
  haru.put(haru.catalogue(), "PageLabels", labels);
  haru.put_plain(haru.catalogue(), "Lang", metadata.language);
}

void attach(const Contents& contents, Haru& haru) {
  if (contents.attachments.empty()) return;
  std::vector<std::pair<std::string, const Object*>> files;
  for (const Attachment& attachment : contents.attachments) {
    Object& data = haru.add_deflated(attachment.bytes);
    data.entries += "/Type/EmbeddedFile/Subtype";
    append_name(data.entries, attachment.media_type);
    data.entries += fmt::format("/Params<</Size {}/ModDate({})>>", attachment.bytes.size(),
                                pdf_date(contents.metadata.date));
    Object& file = haru.add_object();
    std::string& out = file.entries;
    out = "/Type/Filespec/F";
    append_text(out, attachment.name);
    out += "/UF";
    append_text(out, attachment.name);
    out += "/Desc";
    append_text(out, attachment.description);
    out += fmt::format("/AFRelationship/{}/EF<</F {}/UF {}>>",
                       attachment.source ? "Source" : "Data", data.reference(), data.reference());
    files.emplace_back(attachment.name, &file);
  }
  std::vector<const Object*> in_order;
  for (const auto& file : files)
    in_order.push_back(file.second);
  haru.put_references(haru.catalogue(), "AF", in_order);
  std::sort(files.begin(), files.end(),
            [](const auto& a, const auto& b) { return a.first < b.first; });
  Object& names = haru.add_object();
  names.entries = "/EmbeddedFiles<</Names[";
  for (const auto& [name, file] : files) {
    append_text(names.entries, name);
    names.entries += file->reference();
  }
  names.entries += "]>>";
  haru.put(haru.catalogue(), "Names", names);
}

}  // namespace winchbook::pdf
