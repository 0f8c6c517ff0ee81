package calibration

import "math"

// Interval is a value with its limits at a level of confidence.
type Interval struct {
	Value     float64
	Low, High float64
	Level     float64 // 0.95
	K         float64 // coverage factor of Student's t
	// Doubt is the standard uncertainty to the first order, for a budget.
	Doubt float64
	// G is the part of the squared slope at the value that doubt eats up: with
	// a line Fieller's g. From about 0.05 on the limits are visibly uneven, at 1
	// there are none.
	G float64
}

// Predict goes from a set value x to the observed one,
//
//	y = f(x) -/+ k s sqrt(1/m + h(x))
//
// with m new observations or [CurveItself]. Errors: outside, doubtNotKnown.
// Source: textbooks of regression; JCGM 100:2008, H.3 for the curve itself.
func (c Curve) Predict(x, level float64, m int) (Interval, error) {
	switch {
	case !c.Inside(x):
		return Interval{}, &Fault{Code: "calibration.outside", Value: x, Low: c.Low, High: c.High}
	case !c.Known():
		return Interval{Value: c.At(x), Low: math.NaN(), High: math.NaN(), Doubt: math.NaN()}, &Fault{Code: "calibration.doubtNotKnown", Value: float64(len(c.Points)), Low: 3, High: math.Inf(1)}
	}
	y, u, k := c.At(x), c.Doubt(x, m), Coverage(level, float64(c.DF))
	return Interval{Value: y, Low: y - float64(k*u), High: y + float64(k*u), Level: level, K: k, Doubt: u, G: c.g(x, k)}, nil
}

// Solve returns the x at which the curve has the value y, on the branch that
// rises,
//
//	x = (y - b_0)/b_1    or    x = (sqrt(b_1^2 + 4 b_2 (y - b_0)) - b_1)/(2 b_2)
//
// the second written as 2 (y - b_0)/(b_1 + sqrt(...)) where b_1 >= 0, so that a
// small b_2 loses no digits. It may lie outside the range; ok is false where a
// quadratic never reaches y.
func (c Curve) Solve(y float64) (x float64, ok bool) {
	over := y - c.B[0]
	if c.Degree == Line || c.B[2] == 0 {
		return over / c.B[1], true
	}
	square := float64(c.B[1]*c.B[1]) + float64(float64(4*c.B[2])*over)
	switch {
	case square < 0:
		return 0, false
	case c.B[1] >= 0:
		return float64(2*over) / (c.B[1] + math.Sqrt(square)), true
	}
	return (math.Sqrt(square) - c.B[1]) / float64(2*c.B[2]), true
}

// g is Fieller's g with the slope at x.
func (c Curve) g(x, k float64) float64 {
	part := k * c.SD / (c.Slope(x) * c.Half)
	return float64(part*part) / c.S1
}

// Inverse goes from an observed value y back to the set one: the x at which
// the curve has the value y, and the limits between which
//
//	|y - f(x)| <= k s sqrt(1/m + h(x))
//
// With a line this is Fieller's interval in closed form,
//
//	x -/+ r (k s/c_1 sqrt(z^2/S_1 + (1 - g) (1/n + 1/m)) -/+ z g)/(1 - g),  g = (k s/c_1)^2/S_1
//
// with a quadratic the band is inverted by search. The value must lie in the
// range of the points, the limits need not. They are not even about the value.
//
// Errors: outside; doubtNotKnown; noFiniteInterval where g >= 1 (the slope
// cannot be told from zero), or where the band of a quadratic still holds y one
// range beyond its points or where it turns over. Value is then filled in.
//
// Source: E. C. Fieller, J. R. Stat. Soc. B 16 (1954) 175-185 (from memory);
// F. A. Graybill, H. K. Iyer, Regression Analysis (1994), pages 431-434, whose
// cases are in the tests.
func (c Curve) Inverse(y, level float64, m int) (Interval, error) {
	x, ok := c.Solve(y)
	if !ok || !c.Inside(x) {
		return Interval{}, &Fault{Code: "calibration.outside", Value: y, Low: c.At(c.Low), High: c.At(c.High)}
	}
	in := Interval{Value: x, Low: math.NaN(), High: math.NaN(), Level: level, Doubt: math.NaN()}
	if !c.Known() {
		return in, &Fault{Code: "calibration.doubtNotKnown", Value: float64(len(c.Points)), Low: 3, High: math.Inf(1)}
	}
	in.K = Coverage(level, float64(c.DF))
	in.Doubt, in.G = c.Doubt(x, m)/c.Slope(x), c.g(x, in.K)
	if c.Degree == Line {
		if in.G >= 1 {
			return in, &Fault{Code: "calibration.noFiniteInterval", Value: in.G, High: 1}
		}
		down, up := c.fieller(in, m)
		in.Low, in.High = x-down, x+up
		return in, nil
	}
	var below, above bool
	in.Low, below = c.leaves(x, y, in.K, m, -1)
	in.High, above = c.leaves(x, y, in.K, m, 1)
	if !below || !above {
		return in, &Fault{Code: "calibration.noFiniteInterval", Value: in.G, High: 1}
	}
	return in, nil
}

// fieller returns how far the limits of a line lie from the value.
func (c Curve) fieller(in Interval, m int) (down, up float64) {
	z, left := c.z(in.Value), 1-in.G
	half := in.K * c.SD / c.C1 * math.Sqrt(float64(z*z)/c.S1+float64(left*(1/float64(len(c.Points))+fresh(m))))
	aside := float64(z * in.G)
	return c.Half * (half - aside) / left, c.Half * (half + aside) / left
}

// leaves searches from x to one side for the place where the band about the
// curve no longer holds y. ok is false where it does so nowhere on the rising
// branch within one range beyond the points.
func (c Curve) leaves(x, y, k float64, m int, side float64) (limit float64, ok bool) {
	outside := func(at float64) bool {
		return float64(side*(c.At(at)-y)) > float64(k*c.Doubt(at, m))
	}
	width := c.High - c.Low
	end := c.High + width
	if side < 0 {
		end = c.Low - width
	}
	const strides = 512
	from := x
	for i := 1; i <= strides; i++ {
		to := x + float64((end-x)*float64(i))/strides
		if c.Slope(to) <= 0 {
			return 0, false
		}
		if outside(to) {
			return halve(from, to, outside), true
		}
		from = to
	}
	return 0, false
}

// halve narrows the place where is begins to hold to neighbouring numbers.
func halve(not, is float64, holds func(float64) bool) float64 {
	for range 200 {
		middle := not + (is-not)/2
		if middle == not || middle == is {
			break
		}
		if holds(middle) {
			is = middle
		} else {
			not = middle
		}
	}
	return is
}
