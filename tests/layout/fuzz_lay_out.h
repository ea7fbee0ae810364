#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

/// Lays out the document that the bytes stand for, in the made-up font, and tells what does not
/// hold of its pages: every word stands once and in order, inside the frame and clear of every
/// other; no heading stands alone; neither a row nor an entry is split that a page could hold;
/// pages are no more than what stands on them. Any bytes are a document: each choice takes one.
[[nodiscard]] std::vector<std::string> layout_faults(std::span<const std::uint8_t> bytes);

/// Traps when there is a fault.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);
