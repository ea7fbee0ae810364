#pragma once

#include <cstddef>
#include <cstdint>

/// Reads the bytes as a record. Traps when a refusal has no sentence or no place, or is no error.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);
