package calibration_test

import "math/rand/v2"

// seeded makes the same draws in every run.
func seeded(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, 6)) }
