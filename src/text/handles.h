#pragma once

#include <hb.h>

#include <memory>

/// HarfBuzz's blobs and faces, let go of when their owner goes; for this room alone.
namespace winchbook::text {

struct BlobFree {
  void operator()(hb_blob_t* blob) const { hb_blob_destroy(blob); }
};
struct FaceFree {
  void operator()(hb_face_t* face) const { hb_face_destroy(face); }
};
using Blob = std::unique_ptr<hb_blob_t, BlobFree>;
using Face = std::unique_ptr<hb_face_t, FaceFree>;

}  // namespace winchbook::text
