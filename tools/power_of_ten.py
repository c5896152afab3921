#!/usr/bin/env python3
"""Which 128 bits does each power of ten begin with?

    power_of_ten.py power_of_ten.inc

Writes one initialiser of two words for each of 10^-342 .. 10^342; derived: exact whole numbers, cut
off.  tests/base/test_power_of_ten.c multiplies every one of them out again.
"""

import sys

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
    if len(sys.argv) != 2:
        sys.exit("usage: power_of_ten.py <out.inc>")
    with open(sys.argv[1], "w", encoding="ascii", newline="\n") as file:
        file.write("/* Made by tools/power_of_ten.py; change that, not this. */\n")
        for exponent in range(FIRST, LAST + 1):
            bits = leading_bits(exponent)
            assert bits.bit_length() == 128
            high, low = bits >> 64, bits & (1 << 64) - 1
            file.write(f"{{0x{high:016X}, 0x{low:016X}}}, /* {exponent} */\n")


if __name__ == "__main__":
    main()
