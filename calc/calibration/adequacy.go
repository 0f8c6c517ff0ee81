package calibration

import "math"

// Test is an F-test: F with its two degrees of freedom, and P, the chance of so
// large an F where nothing is wrong.
type Test struct {
	F, P     float64
	Above    int // degrees of freedom of the numerator
	Below    int // of the denominator
	PureSS   float64
	LackedSS float64
}

// LackOfFit compares what the curve misses of the mean at each place with the
// scatter of repeated points there,
//
//	F = ((SSE - SS_p)/(m - b)) / (SS_p/(n - m))
//
// SS_p: sum of squares about the mean at each place; m places, n points, b
// coefficients. ok is false where no point repeats, where there are no more
// places than coefficients, or where all repeats agree to the last digit.
//
// Source: NIST/SEMATECH e-Handbook of Statistical Methods, 4.4.4.6 (from
// memory); checked against its load cell example.
func (c Curve) LackOfFit() (t Test, ok bool) {
	places, pure := 0, 0.0
	for i, p := range c.Points {
		if before(c.Points[:i], p.X) {
			continue
		}
		places++
		mean := c.meanAt(p.X)
		for _, other := range c.Points[i:] {
			if other.X == p.X {
				pure += float64((other.Y - mean) * (other.Y - mean))
			}
		}
	}
	t = Test{Above: places - int(c.Degree) - 1, Below: len(c.Points) - places, PureSS: pure, LackedSS: math.Max(0, c.SSE-pure)}
	if t.Above < 1 || t.Below < 1 || pure == 0 {
		return Test{}, false
	}
	t.F = t.LackedSS / float64(t.Above) / (pure / float64(t.Below))
	t.P = BeyondF(t.F, float64(t.Above), float64(t.Below))
	return t, true
}

func before(points []Point, x float64) bool {
	for _, p := range points {
		if p.X == x {
			return true
		}
	}
	return false
}

// meanAt is the mean of what was observed at x.
func (c Curve) meanAt(x float64) float64 {
	sum, n := 0.0, 0
	for _, p := range c.Points {
		if p.X == x {
			sum += p.Y
			n++
		}
	}
	return sum / float64(n)
}

// QuadraticTerm tests whether the points ask for the quadratic term,
//
//	F = c_2^2 S_2/s^2
//
// with 1 and n - 3 degrees of freedom, s of the quadratic. ok is false where no
// quadratic can be fitted, or where one goes through all points exactly. A
// quadratic that turns over is tested all the same.
//
// Source: the t-test of one coefficient, squared; textbooks of regression.
func QuadraticTerm(points []Point) (t Test, ok bool) {
	c, err := Fit(points, Quadratic)
	if err != nil && c.DF == 0 || c.SSE == 0 {
		return Test{}, false
	}
	t = Test{Above: 1, Below: c.DF}
	t.F = float64(float64(c.C2*c.C2)*c.S2) / float64(c.SD*c.SD)
	t.P = BeyondF(t.F, 1, float64(c.DF))
	return t, true
}
