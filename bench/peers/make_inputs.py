#!/usr/bin/env python3
"""Writes the launch conditions as decimal text, so that every language reads the same doubles.
usage: make_inputs.py OUT.csv; then g++ -O2 -std=c++17 truth.cpp -o truth && ./truth OUT.csv flights-reference.csv"""
import sys

MASK = (1 << 64) - 1


class SplitMix64:
    """Portable seeded generator."""

    def __init__(self, seed):
        self.state = seed & MASK

    def unit(self):
        self.state = (self.state + 0x9E3779B97F4A7C15) & MASK
        z = self.state
        z = ((z ^ (z >> 30)) * 0xBF58476D1CE4E5B9) & MASK
        z = ((z ^ (z >> 27)) * 0x94D049BB133111EB) & MASK
        return ((z ^ (z >> 31)) >> 11) / float(1 << 53)

    def between(self, a, b):
        return a + (b - a) * self.unit()


random = SplitMix64(20240611)
ranges = ((50, 85), (6, 24), (1500, 7000), (-20, 20), (-8, 8), (-8, 8))
with open(sys.argv[1], "w") as file:
    file.write("id,speed_mps,launch_deg,spin_rpm,tilt_deg,wind_x_mps,wind_z_mps\n")
    for i in range(1000):
        row = [random.between(a, b) for a, b in ranges]
        file.write("%d,%.3f,%.3f,%.1f,%.3f,%.3f,%.3f\n" % (i, *row))
