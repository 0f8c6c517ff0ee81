package calibration

import "math"

// Hysteresis compares a falling run with the rising one.
type Hysteresis struct {
	Differences []float64 // observed falling less rising, one for each falling point
	At          int       // the falling point where it is largest in size
	Largest     float64   // that difference, with its sign
	Share       float64   // its size over the largest value observed while rising
}

// Compare sets the points of the falling run against the rising one at equal
// set values: against the mean of the rising points at that place where there
// are any, else against the curve. Falling points outside the range of the
// rising run are compared with nothing and have NaN. ok is false where none can
// be compared.
//
// The share is that of the largest observed value, as the accuracy of gauges is
// told (hysteresis error in per cent of span, EN 837-1, from memory).
func (c Curve) Compare(falling []Point) (h Hysteresis, ok bool) {
	h.At = -1
	largest := 0.0
	for _, p := range c.Points {
		largest = math.Max(largest, math.Abs(p.Y))
	}
	for i, p := range falling {
		d := math.NaN()
		switch {
		case before(c.Points, p.X):
			d = p.Y - c.meanAt(p.X)
		case c.Inside(p.X):
			d = p.Y - c.At(p.X)
		}
		h.Differences = append(h.Differences, d)
		if d-d == 0 && (h.At < 0 || math.Abs(d) > math.Abs(h.Largest)) {
			h.At, h.Largest = i, d
		}
	}
	if h.At < 0 {
		return Hysteresis{}, false
	}
	h.Share = math.Abs(h.Largest) / largest
	return h, true
}
