package calibration_test

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	. "gaugewright/calc/calibration"
	"gaugewright/calc/published"
)

func TestRefusals(t *testing.T) {
	line := func(n int) (list []Point) {
		for i := range n {
			list = append(list, Point{float64(i), 2 * float64(i)})
		}
		return list
	}
	hump := []Point{{0, 0}, {1, 5}, {2, 8}, {3, 9}, {4, 8}, {5, 5.5}, {6, 1}}
	for code, c := range map[string]struct {
		points []Point
		degree Degree
	}{
		"calibration.tooFew":          {line(1), Line},
		"calibration.quadraticTooFew": {line(5), Quadratic},
		"calibration.notFinite":       {append(line(3), Point{math.NaN(), 1}), Line},
		"calibration.setEqual":        {[]Point{{3, 1}, {3, 2}, {3, 4}}, Line},
		"calibration.observedEqual":   {[]Point{{1, 4}, {2, 4}, {3, 4}}, Line},
		"calibration.places":          {[]Point{{1, 1}, {1, 2}, {1, 1}, {2, 3}, {2, 4}, {2, 3}}, Quadratic},
		"calibration.decreasing":      {[]Point{{1, 9}, {2, 7}, {3, 6}}, Line},
		"calibration.turns":           {hump, Quadratic},
	} {
		_, err := Fit(c.points, c.degree)
		var fault *Fault
		require.ErrorAs(t, err, &fault, code)
		assert.Equal(t, code, fault.Code)
		assert.Contains(t, err.Error(), code)
	}

	// Two points: a line, and nothing about its doubt.
	c, err := Fit(line(3)[1:], Line)
	require.NoError(t, err)
	assert.False(t, c.Known())
	assert.True(t, math.IsNaN(c.Doubt(1.5, 1)), "not known is not zero")
	for _, err := range []error{second(c.Predict(1.5, 0.95, 1)), second(c.Inverse(3, 0.95, 1))} {
		var fault *Fault
		require.ErrorAs(t, err, &fault)
		assert.Equal(t, "calibration.doubtNotKnown", fault.Code)
	}
	_, _, ok := c.Outliers()
	assert.False(t, ok)

	c, err = Fit(line(5), Line)
	require.NoError(t, err)
	for _, err := range []error{second(c.Predict(4.1, 0.95, 1)), second(c.Inverse(8.1, 0.95, 1)), second(c.Inverse(-0.1, 0.95, 1))} {
		var fault *Fault
		require.ErrorAs(t, err, &fault)
		assert.Equal(t, "calibration.outside", fault.Code)
	}
	_, ok = c.LackOfFit()
	assert.False(t, ok, "nothing repeats")

	// A slope that cannot be told from zero has no limits.
	for _, degree := range []Degree{Line, Quadratic} {
		c, err := Fit([]Point{{1, 1}, {2, 5}, {3, -1}, {4, 8}, {5, 2}, {6, 9}, {7, 6}}, degree)
		require.NoError(t, err)
		in, err := c.Inverse(c.At(4), 0.95, 1)
		var fault *Fault
		require.ErrorAs(t, err, &fault)
		assert.Equal(t, "calibration.noFiniteInterval", fault.Code)
		near(t, 4, in.Value, 1e-9, "the value itself")
	}
}

func second[T any](_ T, err error) error { return err }

// Points x = 1, 2, 3, 10 and y = 2.1, 3.8, 5.2, 2.1: externally studentised
// residuals -1.7431, 0.1217, 1.6361, -19.7990 (teaching example of Pennsylvania
// State University, STAT 501, lesson on influential points, as quoted by others).
func TestOutliers(t *testing.T) {
	c, err := Fit([]Point{{1, 2.1}, {2, 3.8}, {3, 5.2}, {10, 2.1}}, Line)
	require.Error(t, err, "this curve falls, and comes along to be shown")
	list, limit, ok := c.Outliers()
	require.True(t, ok)
	lesson := published.Source{Document: "Pennsylvania State University, STAT 501", Place: "lesson 11, influential points", Mark: basis.SecondHand}
	for i, want := range []string{"-1.7431", "0.1217", "1.6361", "-19.7990"} {
		published.Check(t, lesson, "studentised deleted residual "+strconv.Itoa(i+1), want, list[i].T, published.Printed)
	}
	// One degree of freedom: tan(pi (1 - 0.0125)/2) by hand.
	near(t, math.Tan(math.Pi*0.4937500), limit, 1e-9, "limit")
	assert.False(t, list[3].Outlier, "four points cannot tell")

	// The definition: fit without the point, and predict it.
	rnd := seeded(3)
	for range 200 {
		var points []Point
		for i := range 9 {
			points = append(points, Point{float64(i), 3*float64(i) + rnd.NormFloat64()})
		}
		strange := rnd.IntN(9)
		points[strange].Y += 30
		c, err := Fit(points, Line)
		require.NoError(t, err)
		list, _, ok := c.Outliers()
		require.True(t, ok)
		for i, p := range points {
			rest := append(append([]Point(nil), points[:i]...), points[i+1:]...)
			without, _ := Fit(rest, Line)
			near(t, (p.Y-without.At(p.X))/without.Doubt(p.X, 1), list[i].T, 1e-9, "deletion")
		}
		assert.True(t, list[strange].Outlier)
		assert.Len(t, c.Points, 9, "flagged, not dropped")
	}

	// Points exactly on a line have no outlier, whatever rounding leaves.
	var exact []Point
	for i := range 8 {
		exact = append(exact, Point{0.1 * float64(i), 0.3 + 0.7*0.1*float64(i)})
	}
	c, err = Fit(exact, Line)
	require.NoError(t, err)
	list, _, _ = c.Outliers()
	for _, d := range list {
		assert.False(t, d.Outlier)
	}
}

func TestHysteresis(t *testing.T) {
	c, err := Fit([]Point{{5, 100}, {10, 200}, {15, 301}, {15, 303}, {20, 402}}, Line)
	require.NoError(t, err)
	h, ok := c.Compare([]Point{{20, 402}, {15, 310}, {10, 205}, {12.5, 260}, {2, 50}})
	require.True(t, ok)
	assert.InDelta(t, 8, h.Differences[1], 1e-9, "against the mean of the two rising ones")
	assert.InDelta(t, 260-c.At(12.5), h.Differences[3], 1e-9)
	assert.True(t, math.IsNaN(h.Differences[4]), "below the rising run")
	assert.Equal(t, 3, h.At)
	assert.InDelta(t, math.Abs(h.Largest)/402, h.Share, 1e-12)
	_, ok = c.Compare(nil)
	assert.False(t, ok)
}

// certificate draws points of a rising curve with normal errors.
func certificate(rnd interface{ NormFloat64() float64 }, n int, a, b, c, low, high, sigma float64) (list []Point) {
	for i := range n {
		x := low + (high-low)*float64(i)/float64(n-1)
		list = append(list, Point{x, a + b*x + c*x*x + sigma*rnd.NormFloat64()})
	}
	return list
}

func TestProperties(t *testing.T) {
	rnd := seeded(9)
	for range 500 {
		n, high := 7+rnd.IntN(8), 10+30*rnd.Float64()
		points := certificate(rnd, n, 20*rnd.Float64(), 100, (rnd.Float64()-0.5)*0.8, 2, high, 5+20*rnd.Float64())
		for _, degree := range []Degree{Line, Quadratic} {
			c, err := Fit(points, degree)
			if err != nil {
				continue
			}
			x := c.Low + (c.High-c.Low)*rnd.Float64()
			direct, err := c.Predict(x, 0.95, 1)
			require.NoError(t, err)

			// There and back.
			in, err := c.Inverse(c.At(x), 0.95, 1)
			if err != nil {
				continue
			}
			near(t, x, in.Value, 1e-9, "inverse of the curve")
			assert.Less(t, in.Low, in.Value)
			assert.Less(t, in.Value, in.High)

			// Monotone: a larger value lies farther on, a higher level and a single
			// observation are wider.
			if y := c.At(x) * 1.001; y < c.At(c.High) {
				more, err := c.Inverse(y, 0.95, 1)
				require.NoError(t, err)
				assert.Greater(t, more.Value, in.Value)
			}
			wider, err := c.Inverse(c.At(x), 0.99, 1)
			if err == nil {
				assert.Greater(t, wider.High-wider.Low, in.High-in.Low)
			}
			mean, err := c.Inverse(c.At(x), 0.95, CurveItself)
			require.NoError(t, err)
			assert.Less(t, mean.High-mean.Low, in.High-in.Low)

			// Other units: x in thousandths, y in 1/4.448.
			scaled := make([]Point, n)
			for i, p := range points {
				scaled[i] = Point{p.X * 1000, p.Y / 4.448}
			}
			s, err := Fit(scaled, degree)
			require.NoError(t, err)
			near(t, c.B[1]/4448, s.B[1], 1e-10, "slope in other units")
			near(t, c.SD/4.448, s.SD, 1e-9, "scatter in other units")
			other, err := s.Inverse(c.At(x)/4.448, 0.95, 1)
			require.NoError(t, err)
			near(t, in.Low*1000, other.Low, 1e-8, "limit in other units")
			near(t, in.High*1000, other.High, 1e-8, "limit in other units")

			// Mirrored about the origin the limits change places.
			for i, p := range points {
				scaled[i] = Point{-p.X, -p.Y}
			}
			m, err := Fit(scaled, degree)
			require.NoError(t, err)
			back, err := m.Inverse(-c.At(x), 0.95, 1)
			require.NoError(t, err)
			near(t, -in.Low, back.High, 1e-9, "mirrored")
			near(t, -in.High, back.Low, 1e-9, "mirrored")

			// In another order it is the same certificate.
			rnd.Shuffle(n, func(i, j int) { scaled[i], scaled[j] = scaled[j], scaled[i] })
			again, err := Fit(scaled, degree)
			require.NoError(t, err)
			near(t, m.B[1], again.B[1], 1e-10, "order")
			near(t, direct.Doubt, again.Doubt(-x, 1), 1e-9, "order")

			// Residuals are at right angles to what was fitted.
			sum, along, largest := 0.0, 0.0, 0.0
			for i, e := range c.Residuals {
				sum, along = sum+e, along+e*points[i].X
				largest = math.Max(largest, math.Abs(points[i].Y*points[i].X))
			}
			assert.Less(t, math.Abs(sum), 1e-12*largest)
			assert.Less(t, math.Abs(along), 1e-12*largest)
		}
	}
}

func TestCombineProperties(t *testing.T) {
	rnd := seeded(5)
	for range 2000 {
		var terms []Term
		for range 1 + rnd.IntN(7) {
			df := Certain()
			if rnd.IntN(2) == 0 {
				df = 1 + 30*rnd.Float64()
			}
			terms = append(terms, Term{U: 10 * rnd.Float64(), Sensitivity: rnd.NormFloat64(), DF: df})
		}
		b := Combine(terms, 0.95)
		least, all := math.Inf(1), 0.0
		for _, p := range b.Parts {
			least, all = math.Min(least, p.DF), all+p.Share
			require.LessOrEqual(t, p.Contribution, b.Uc*(1+1e-12))
		}
		require.GreaterOrEqual(t, b.DF, least*(1-1e-12), "never fewer degrees of freedom than the worst term")
		require.InDelta(t, 1, all, 1e-9)
		require.InDelta(t, 0.025, b.Short(b.U, 0), 1e-8, "at its own limit a value is short with 2.5 %")
		require.InDelta(t, 1, b.Short(3, 5)+b.Passed(3, 5), 1e-12)
		require.InDelta(t, b.Short(3, 5), b.Passed(5, 3), 1e-12, "mirrored")
		require.GreaterOrEqual(t, b.Short(3, 5), b.Short(4, 5), "monotone")
	}
	none := Combine(nil, 0.95)
	assert.Equal(t, []float64{0, 0, 1}, []float64{none.U, none.Short(5, 4), none.Short(3, 4)})
	assert.InDelta(t, 8, Doubted(0.25), 1e-12, "the example of JCGM 100, G.4.2")
}
