#!/usr/bin/env python3
"""Writes src/base/power_of_ten.c: the first 128 bits of 10^-342 .. 10^342, exact integers cut off.

Usage: python3 tools/power_of_ten.py > src/base/power_of_ten.c
"""
FIRST, LAST = -342, 342


def leading_bits(exponent):
    """floor(10^exponent * 2^shift), with the shift that makes it 128 bits long."""
    if exponent >= 0:
        whole = 10**exponent
        shift = 128 - whole.bit_length()
        return whole << shift if shift >= 0 else whole >> -shift
    under = 10**-exponent
    shift = 127 + under.bit_length()
    bits = (1 << shift) // under
    return bits >> (bits.bit_length() - 128)


def main():
    print("/* base/power_of_ten.c: what are the leading 128 bits of a power of ten?")
    print(" *")
    print(" * Written by tools/power_of_ten.py; derived: exact integer arithmetic, cut off. */")
    print('#include "base/power_of_ten.h"\n')
    print('#include "base/assert.h"\n')
    print("/* clang-format off */")
    print("static const ts_power_of_ten table[TS_POWER_OF_TEN_LAST - TS_POWER_OF_TEN_FIRST + 1] = {")
    for exponent in range(FIRST, LAST + 1):
        bits = leading_bits(exponent)
        assert bits.bit_length() == 128
        print(f"    {{0x{bits >> 64:016X}, 0x{bits & (1 << 64) - 1:016X}}}, /* {exponent} */")
    print("};")
    print("/* clang-format on */\n")
    print("ts_power_of_ten ts_power_of_ten_at(int exponent)")
    print("{")
    print("    TS_ASSERT(exponent >= TS_POWER_OF_TEN_FIRST && exponent <= TS_POWER_OF_TEN_LAST);")
    print("    return table[exponent - TS_POWER_OF_TEN_FIRST];")
    print("}")


if __name__ == "__main__":
    main()
