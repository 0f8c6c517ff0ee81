package calibration

import "math"

// Degree of a curve.
type Degree int

// The two curves.
const (
	Line      Degree = 1
	Quadratic Degree = 2
)

// QuadraticLeast is the fewest points of a quadratic: with fewer than three
// degrees of freedom left nobody can tell a curve from scatter. Our own choice.
const QuadraticLeast = 6

// Point is one pair of a certificate, in coherent units.
type Point struct {
	X float64 // what was set
	Y float64 // what was observed
}

// Curve is a fit. Its symbols are those of the package comment.
type Curve struct {
	Degree    Degree
	Points    []Point
	Low, High float64 // range of the set quantity

	MeanX, MeanY float64 // x_m, y_m
	Half         float64 // r, half the range
	S1, C1       float64 // sum of z^2; coefficient of z, in the unit of y
	Alpha, Beta  float64 // make q orthogonal; quadratic only
	S2, C2       float64 // sum of q^2; coefficient of q; quadratic only

	B   [3]float64    // f(x) = B[0] + B[1] x + B[2] x^2
	SE  [3]float64    // their standard errors; NaN where DF is 0
	Cov [3][3]float64 // their covariances; NaN where DF is 0

	Residuals []float64 // y - f(x), in the order of the points
	SSE       float64   // sum of their squares
	DF        int       // degrees of freedom: points less coefficients
	SD        float64   // residual standard deviation sqrt(SSE/DF); NaN where DF is 0
}

// Fit fits a straight line or a quadratic by least squares,
//
//	x_m = sum x/n, y_m = sum y/n, S_1 = sum z^2, c_1 = sum z (y - y_m)/S_1
//	alpha = sum z^3/S_1, beta = S_1/n, S_2 = sum q^2, c_2 = sum q (y - y_m - c_1 z)/S_2
//	s = sqrt(SSE/nu), nu = n - 2 or n - 3
//
// with points x, y in any two units and in any order. A line takes 2 points (and
// then nothing is known of its doubt) or more, a quadratic [QuadraticLeast]. The
// curve must rise all over its range.
//
// Errors: a [*Fault] with the codes tooFew, quadraticTooFew, places, notFinite,
// setEqual, observedEqual, decreasing, turns; with the last two the curve comes
// along, to be shown beside its points.
//
// Source: G. E. Forsythe, Generation and use of orthogonal polynomials for
// data-fitting, J. SIAM 5 (1957) 74-88 (from memory); checked against NIST's
// reference data. No point is ever left out here.
func Fit(points []Point, degree Degree) (Curve, error) {
	n := len(points)
	c := Curve{Degree: degree, Points: append([]Point(nil), points...), DF: n - int(degree) - 1}
	if fault := usable(points, degree); fault != nil {
		return Curve{}, fault
	}
	c.Low, c.High = points[0].X, points[0].X
	for _, p := range points {
		c.Low, c.High = math.Min(c.Low, p.X), math.Max(c.High, p.X)
	}
	c.line()
	if degree == Quadratic {
		c.curve()
	}
	c.coefficients()
	c.doubts()
	return c, c.rises()
}

// usable looks at the points before anything is computed with them.
func usable(points []Point, degree Degree) error {
	n := len(points)
	least := 2
	code := "calibration.tooFew"
	if degree == Quadratic {
		least, code = QuadraticLeast, "calibration.quadraticTooFew"
	}
	if n < least {
		return &Fault{Code: code, Value: float64(n), Low: float64(least), High: math.Inf(1)}
	}
	places, level := 0, true
	for i, p := range points {
		if p.X-p.X != 0 || p.Y-p.Y != 0 {
			return &Fault{Code: "calibration.notFinite", Value: p.X + p.Y}
		}
		if !before(points[:i], p.X) {
			places++
		}
		level = level && p.Y == points[0].Y
	}
	switch {
	case places == 1:
		return &Fault{Code: "calibration.setEqual", Value: points[0].X, Low: points[0].X, High: points[0].X}
	case level:
		return &Fault{Code: "calibration.observedEqual", Value: points[0].Y, Low: points[0].Y, High: points[0].Y}
	case places <= int(degree):
		return &Fault{Code: "calibration.places", Value: float64(places), Low: float64(degree + 1), High: math.Inf(1)}
	}
	return nil
}

// total adds from the first point to the last.
func (c *Curve) total(of func(p Point) float64) float64 {
	sum := 0.0
	for _, p := range c.Points {
		sum += float64(of(p))
	}
	return sum
}

func (c *Curve) line() {
	n := float64(len(c.Points))
	c.Half = (c.High - c.Low) / 2
	c.MeanX = c.total(func(p Point) float64 { return p.X }) / n
	c.MeanY = c.total(func(p Point) float64 { return p.Y }) / n
	c.S1 = c.total(func(p Point) float64 { z := c.z(p.X); return z * z })
	c.C1 = c.total(func(p Point) float64 { return c.z(p.X) * (p.Y - c.MeanY) }) / c.S1
	for _, p := range c.Points {
		c.Residuals = append(c.Residuals, c.besideLine(p))
	}
}

// besideLine is the residual of a point from the line.
func (c *Curve) besideLine(p Point) float64 { return p.Y - c.MeanY - float64(c.C1*c.z(p.X)) }

// curve goes on from the residuals of the line.
func (c *Curve) curve() {
	c.Alpha = c.total(func(p Point) float64 { z := c.z(p.X); return float64(z*z) * z }) / c.S1
	c.Beta = c.S1 / float64(len(c.Points))
	c.S2 = c.total(func(p Point) float64 { q := c.q(p.X); return q * q })
	sum := 0.0
	for i, p := range c.Points {
		sum += float64(c.q(p.X) * c.Residuals[i])
	}
	c.C2 = sum / c.S2
	for i, p := range c.Points {
		c.Residuals[i] -= float64(c.C2 * c.q(p.X))
	}
}

// z and q are the orthogonal polynomials.
func (c *Curve) z(x float64) float64 { return (x - c.MeanX) / c.Half }

func (c *Curve) q(x float64) float64 {
	z := c.z(x)
	return float64(z*z) - float64(c.Alpha*z) - c.Beta
}

// coefficients multiplies the polynomials out.
func (c *Curve) coefficients() {
	middle := c.MeanX / c.Half
	if c.Degree == Line {
		c.B = [3]float64{c.MeanY - float64(c.C1*middle), c.C1 / c.Half}
		return
	}
	first, none := c.multiplied()
	c.B = [3]float64{c.MeanY - float64(c.C1*middle) + float64(c.C2*none), (c.C1 - float64(c.C2*first)) / c.Half, c.C2 / float64(c.Half*c.Half)}
}

// multiplied gives q = (x/r)^2 - first x/r + none.
func (c *Curve) multiplied() (first, none float64) {
	middle := c.MeanX / c.Half
	return c.Alpha + float64(2*middle), float64(middle*middle) + float64(c.Alpha*middle) - c.Beta
}

func (c *Curve) doubts() {
	c.SSE = 0
	for _, e := range c.Residuals {
		c.SSE += float64(e * e)
	}
	c.SD = math.NaN()
	if c.DF > 0 {
		c.SD = math.Sqrt(c.SSE / float64(c.DF))
	}
	variance := float64(c.SD * c.SD)
	// Columns: what y_m, c_1 and c_2 bring to B[0], B[1], B[2].
	weights := [3][3]float64{{1, -c.MeanX / c.Half, 0}, {0, 1 / c.Half, 0}, {0, 0, 0}}
	of := [3]float64{1 / float64(len(c.Points)), 1 / c.S1, 0}
	if c.Degree == Quadratic {
		first, none := c.multiplied()
		weights[0][2], weights[1][2], weights[2][2], of[2] = none, -first/c.Half, 1/float64(c.Half*c.Half), 1/c.S2
	}
	for i := range weights {
		for j := range weights {
			for k, v := range of {
				c.Cov[i][j] += float64(float64(weights[i][k]*weights[j][k]) * v)
			}
			c.Cov[i][j] *= variance
		}
		c.SE[i] = math.Sqrt(c.Cov[i][i])
	}
}

// rises refuses a curve that does not rise all over its range.
func (c *Curve) rises() error {
	low, high := c.Slope(c.Low), c.Slope(c.High)
	switch {
	case c.C1 <= 0:
		return &Fault{Code: "calibration.decreasing", Value: c.C1, Low: c.Low, High: c.High}
	case c.Degree == Quadratic && (low <= 0 || high <= 0):
		return &Fault{Code: "calibration.turns", Value: -c.B[1] / (2 * c.B[2]), Low: c.Low, High: c.High}
	}
	return nil
}

// At returns f(x) = b_0 + b_1 x + b_2 x^2.
func (c Curve) At(x float64) float64 {
	y := c.B[0] + float64(c.B[1]*x)
	if c.Degree == Quadratic {
		y += float64(c.B[2] * float64(x*x))
	}
	return y
}

// Slope returns f'(x) = b_1 + 2 b_2 x.
func (c Curve) Slope(x float64) float64 {
	if c.Degree == Line {
		return c.B[1]
	}
	return c.B[1] + float64(float64(2*c.B[2])*x)
}

// Lever returns how much of the variance of one observation the curve itself
// has at x,
//
//	h(x) = 1/n + z^2/S_1 + q^2/S_2
//
// the last term with a quadratic only.
func (c Curve) Lever(x float64) float64 {
	z := c.z(x)
	h := 1/float64(len(c.Points)) + float64(z*z)/c.S1
	if c.Degree == Quadratic {
		q := c.q(x)
		h += float64(q*q) / c.S2
	}
	return h
}

// Known says whether anything is known about the doubt of the curve: two points
// fix a line and leave its doubt unknown, which is not zero.
func (c Curve) Known() bool { return c.DF > 0 }

// Inside says whether x lies in the range of the points, ends included.
func (c Curve) Inside(x float64) bool { return x >= c.Low && x <= c.High }

// Doubt returns the standard uncertainty of y at x,
//
//	u = s sqrt(1/m + h(x))
//
// m: how many new observations the value stands for, 1 for a single one, or
// [CurveItself] for the curve without a new one. Its degrees of freedom are
// c.DF. It is NaN where c is not [Curve.Known].
func (c Curve) Doubt(x float64, m int) float64 { return c.SD * math.Sqrt(fresh(m)+c.Lever(x)) }

// CurveItself asks for the doubt of the curve, without that of a new
// observation.
const CurveItself = 0

func fresh(m int) float64 {
	if m == CurveItself {
		return 0
	}
	return 1 / float64(m)
}
