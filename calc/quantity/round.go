package quantity

import "math"

// Slack is how near a quotient must be to a whole number of divisions to be
// taken as that number: 29.4/0.2 is 147 although the division of the two
// floats is not. It is absolute, in divisions, our own choice; at a thousand
// divisions the error of a float64 quotient is below 1e-12.
const Slack = 1e-9

// Divisions returns x/step rounded up (up true) or down to a whole number of
// divisions, with [Slack]. step must be positive; x may have any sign.
func Divisions(x, step float64, up bool) float64 {
	q := x / step
	// Which way halves go is of no matter here, and this way is one instruction.
	if n := math.RoundToEven(q); math.Abs(q-n) <= Slack {
		return n
	}
	if up {
		return math.Ceil(q)
	}
	return math.Floor(q)
}

// RoundUp returns the smallest multiple of step that is not below x, with
// [Slack]. A set reading is rounded this way: reading less would not reach the
// set load. step > 0 in the same unit as x.
func RoundUp(x, step float64) float64 { return Divisions(x, step, true) * step }

// RoundDown returns the largest multiple of step that is not above x, with
// [Slack]. A reading that must never be exceeded is rounded this way.
// step > 0 in the same unit as x.
func RoundDown(x, step float64) float64 { return Divisions(x, step, false) * step }
