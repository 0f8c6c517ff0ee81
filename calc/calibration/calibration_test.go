package calibration_test

import (
	"encoding/csv"
	"encoding/json"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"

	. "gaugewright/calc/calibration"
)

func number(t testing.TB, text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return v
}

// table reads a file of testdata without its comment lines.
func table(t testing.TB, name string) [][]string {
	file, err := os.Open("../../testdata/" + name)
	require.NoError(t, err)
	defer file.Close()
	r := csv.NewReader(file)
	r.Comment = '#'
	rows, err := r.ReadAll()
	require.NoError(t, err)
	return rows
}

// published reads a JSON file of testdata.
func published(t testing.TB, name string, into any) {
	data, err := os.ReadFile("../../testdata/" + name)
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(data, into))
}

// points reads a table of y beside x.
func points(t testing.TB, name string) (list []Point) {
	for _, row := range table(t, name)[1:] {
		list = append(list, Point{X: number(t, row[1]), Y: number(t, row[0])})
	}
	return list
}

// cert is a reference result of NIST.
type cert struct {
	B0, B1, B2, SSE     float64
	SD0                 float64 `json:"sd_B0"`
	SD1                 float64 `json:"sd_B1"`
	SD2                 float64 `json:"sd_B2"`
	Residual            float64 `json:"residual_sd"`
	DF                  int     `json:"df"`
	Covariance          float64 `json:"cov_B0_B1_recomputed"`
	LackOfFit           float64 `json:"lack_of_fit_F"`
	QuadraticLackOfFitF float64
}

// strd is testdata/nist_strd_certified.json: NIST Statistical Reference
// Datasets, linear regression, Norris and Pontius.
type strd struct {
	Norris, Pontius cert
	Derived         struct {
		Line      cert    `json:"straight_line"`
		LackOfFit float64 `json:"quadratic_lack_of_fit_F"`
		PureError float64 `json:"pure_error_SS"`
		Inverse   struct {
			Y0    float64 `json:"y0"`
			X0    float64 `json:"x0"`
			Lower float64 `json:"ci95_lower"`
			Upper float64 `json:"ci95_upper"`
			T     float64 `json:"t_0.975_37"`
		} `json:"inverse_prediction"`
	} `json:"Pontius_derived_not_certified"`
}

func near(t *testing.T, want, got, relative float64, what string) {
	t.Helper()
	assert.LessOrEqual(t, math.Abs(got-want), relative*math.Abs(want), "%s: want %v, got %v", what, want, got)
}

func TestNorris(t *testing.T) {
	var all strd
	published(t, "nist_strd_certified.json", &all)
	c, err := Fit(points(t, "nist_norris.csv"), Line)
	require.NoError(t, err)
	want := all.Norris
	near(t, want.B0, c.B[0], 1e-12, "B0")
	near(t, want.B1, c.B[1], 1e-12, "B1")
	near(t, want.SD0, c.SE[0], 1e-12, "sd of B0")
	near(t, want.SD1, c.SE[1], 1e-12, "sd of B1")
	near(t, want.Residual, c.SD, 1e-12, "residual sd")
	near(t, want.SSE, c.SSE, 1e-12, "SSE")
	near(t, want.Covariance, c.Cov[0][1], 1e-12, "covariance")
	assert.Equal(t, want.DF, c.DF)
}

func TestPontius(t *testing.T) {
	var all strd
	published(t, "nist_strd_certified.json", &all)
	list := points(t, "nist_pontius_loadcell.csv")
	c, err := Fit(list, Quadratic)
	require.NoError(t, err)
	want := all.Pontius
	near(t, want.B0, c.B[0], 1e-9, "B0")
	near(t, want.B1, c.B[1], 1e-9, "B1")
	near(t, want.B2, c.B[2], 1e-9, "B2")
	near(t, want.SD0, c.SE[0], 1e-9, "sd of B0")
	near(t, want.SD1, c.SE[1], 1e-9, "sd of B1")
	near(t, want.SD2, c.SE[2], 1e-9, "sd of B2")
	near(t, want.Residual, c.SD, 1e-9, "residual sd")
	near(t, want.SSE, c.SSE, 1e-9, "SSE")
	assert.Equal(t, want.DF, c.DF)

	// Derived from the same data, recomputed with 40 digits; the e-Handbook,
	// section 4.6.1, shows them rounded.
	lof, ok := c.LackOfFit()
	require.True(t, ok)
	near(t, all.Derived.LackOfFit, lof.F, 1e-8, "lack of fit of the quadratic")
	near(t, all.Derived.PureError, lof.PureSS, 1e-8, "pure error")
	assert.Equal(t, []int{17, 20}, []int{lof.Above, lof.Below})
	assert.InDelta(t, 0.665, lof.P, 0.005, "P of the e-Handbook's table is 0.6671 (from memory)")
	line, err := Fit(list, Line)
	require.NoError(t, err)
	near(t, all.Derived.Line.B0, line.B[0], 1e-9, "B0 of the line")
	near(t, all.Derived.Line.SD1, line.SE[1], 1e-9, "sd of B1 of the line")
	near(t, all.Derived.Line.Residual, line.SD, 1e-9, "residual sd of the line")
	lof, ok = line.LackOfFit()
	require.True(t, ok)
	near(t, all.Derived.Line.LackOfFit, lof.F, 1e-8, "lack of fit of the line")
	assert.Less(t, lof.P, 1e-12)

	// t of the quadratic term from the published values: B2/sd = -64.95.
	term, ok := QuadraticTerm(list)
	require.True(t, ok)
	near(t, math.Pow(want.B2/want.SD2, 2), term.F, 1e-9, "F of the quadratic term")
	assert.Equal(t, []int{1, 37}, []int{term.Above, term.Below})
	assert.Less(t, term.P, 1e-12)

	inverse := all.Derived.Inverse
	in, err := c.Inverse(inverse.Y0, 0.95, 1)
	require.NoError(t, err)
	near(t, inverse.X0, in.Value, 1e-11, "x0")
	near(t, inverse.Lower, in.Low, 1e-11, "lower limit")
	near(t, inverse.Upper, in.High, 1e-11, "upper limit")
	near(t, inverse.T, in.K, 1e-11, "t")
}

// testdata/calibration_inverse.json: Graybill and Iyer 1994, printed figures
// and the same recomputed.
func TestGraybillAndIyer(t *testing.T) {
	type set struct {
		X, Y []float64
		Fit  struct{ B0, B1, S float64 } `json:"fit_exact"`
		List []struct {
			Y0        float64
			Level     float64
			Mean      bool `json:"mean_response"`
			Published struct{ X0, Lower, Upper float64 }
			Exact     struct {
				X0, Lower, Upper, G float64
				Wald                float64 `json:"wald_se"`
			}
		} `json:"cases"`
	}
	var all struct{ Thermometer, Crystal set }
	published(t, "calibration_inverse.json", &all)
	for name, s := range map[string]set{"thermometer": all.Thermometer, "crystal": all.Crystal} {
		var list []Point
		for i := range s.X {
			list = append(list, Point{s.X[i], s.Y[i]})
		}
		c, err := Fit(list, Line)
		require.NoError(t, err)
		assert.InDelta(t, s.Fit.B0, c.B[0], 1e-9, name)
		assert.InDelta(t, s.Fit.B1, c.B[1], 1e-9, name)
		assert.InDelta(t, s.Fit.S, c.SD, 1e-9, name)
		require.NotEmpty(t, s.List)
		for _, k := range s.List {
			m := 1
			if k.Mean {
				m = CurveItself
			}
			in, err := c.Inverse(k.Y0, k.Level, m)
			require.NoError(t, err)
			near(t, k.Exact.X0, in.Value, 1e-9, name)
			near(t, k.Exact.Lower, in.Low, 1e-9, name)
			near(t, k.Exact.Upper, in.High, 1e-9, name)
			assert.InDelta(t, k.Published.X0, in.Value, 0.005, name)
			digits := 0.05 + 1e-9 // printed to 0.1 for the thermometer, 0.01 for the crystal
			if name == "crystal" {
				digits = 0.005
			}
			assert.InDelta(t, k.Published.Lower, in.Low, digits, name)
			assert.InDelta(t, k.Published.Upper, in.High, digits, name)
			if k.Exact.G > 0 {
				near(t, k.Exact.G, in.G, 1e-8, name)
				near(t, k.Exact.Wald, in.Doubt, 1e-9, name)
			}
			// The closed form is what inverting the band says.
			for _, x := range []float64{in.Low, in.High} {
				near(t, in.K*c.Doubt(x, m), math.Abs(k.Y0-c.At(x)), 1e-9, name)
			}
		}
	}
}

// testdata/student_t_two_sided.csv, computed in the layout of JCGM 100:2008,
// Table G.2; its columns are the probabilities in per cent. Its last digit or two
// are not all right: at 98 % and two degrees of freedom it has 6.964556719 where
// the exact 0.98 sqrt(2/(1 - 0.98^2)) is 6.964556734. Exact values are below.
func TestStudent(t *testing.T) {
	rows := table(t, "student_t_two_sided.csv")
	levels := map[string]float64{"p68.27": 0.6827, "p90": 0.90, "p95": 0.95, "p95.45": 0.9545, "p98": 0.98, "p99": 0.99, "p99.73": 0.9973}
	checked := 0
	for _, row := range rows[1:] {
		nu := math.Inf(1)
		if row[0] != "inf" {
			nu = number(t, row[0])
		}
		for i, head := range rows[0][1:] {
			level, ok := levels[head]
			require.True(t, ok, head)
			want := number(t, row[i+1])
			near(t, want, Coverage(level, nu), 5e-9, head+" "+row[0])
			assert.InDelta(t, (1-level)/2, Beyond(Coverage(level, nu), nu), 1e-12, "%s %s", head, row[0])
			assert.InDelta(t, (1+level)/2, Beyond(-Coverage(level, nu), nu), 1e-12)
			checked++
		}
	}
	require.Greater(t, checked, 200)
}

// Exact: with one degree of freedom t is Cauchy's, k = tan(pi level/2); with two
// k = level sqrt(2/(1 - level^2)). Between whole numbers it falls.
func TestStudentBetweenWholeNumbers(t *testing.T) {
	for _, level := range []float64{0.5, 0.9, 0.95, 0.99} {
		near(t, math.Tan(math.Pi*level/2), Coverage(level, 1), 1e-12, "one degree of freedom")
		near(t, level*math.Sqrt(2/(1-level*level)), Coverage(level, 2), 1e-12, "two")
		last := math.Inf(1)
		for nu := 1.0; nu < 1e10; nu *= 1.07 {
			k := Coverage(level, nu)
			require.Less(t, k, last*(1+1e-12), "%v at %v", level, nu)
			last = k
		}
	}
	near(t, 1.959963984540054, Coverage(0.95, math.Inf(1)), 1e-12, "normal")
	near(t, 1.959963984540054, Coverage(0.95, 9e7), 3e-8, "nearly normal")
	// F with one degree of freedom above is t squared.
	near(t, 2*Beyond(2.5, 7), BeyondF(6.25, 1, 7), 1e-12, "F and t")
}

// JCGM 100:2008, H.1: the budget of a gauge block, printed digits and the same
// recomputed, level 99 %.
func TestGaugeBlockOfJCGM100(t *testing.T) {
	type input struct{ X, U, Nu *float64 }
	var all struct {
		H1 struct {
			Inputs  map[string]input
			Printed struct {
				Uc            float64
				NuEff         float64 `json:"nu_eff"`
				K99, U99      float64
				Contributions []float64
			}
			Exact struct {
				Uc    float64
				NuEff float64 `json:"nu_eff"`
				U16   float64 `json:"U99_at_16"`
				U     float64 `json:"U99_at_nu_eff"`
				T16   float64 `json:"t_0.995_16"`
			}
		}
	}
	published(t, "gum.json", &all)
	h := all.H1
	ls, theta, alpha := *h.Inputs["ls"].X, *h.Inputs["th"].X, *h.Inputs["as"].X
	// l = ls + d - ls (da th + as dt), at da = 0 and dt = 0.
	sensitivity := map[string]float64{"ls": 1, "d": 1, "as": 0, "th": 0, "da": -ls * theta, "dt": -ls * alpha}
	var terms []Term
	for _, key := range []string{"ls", "d", "as", "th", "da", "dt"} {
		in := h.Inputs[key]
		df := Certain()
		if in.Nu != nil {
			df = *in.Nu
		}
		terms = append(terms, Term{Key: key, U: *in.U, Sensitivity: sensitivity[key], DF: df})
	}
	b := Combine(terms, 0.99)
	for i, p := range b.Parts {
		assert.InDelta(t, h.Printed.Contributions[i], p.Contribution, 0.05001, p.Key)
	}
	assert.InDelta(t, h.Printed.Uc, b.Uc, 0.5)
	near(t, h.Exact.Uc, b.Uc, 1e-9, "u_c")
	near(t, h.Exact.NuEff, b.DF, 1e-9, "effective degrees of freedom")
	assert.Equal(t, h.Printed.NuEff, math.Floor(b.DF), "the guide cuts it down to a whole number")
	near(t, h.Exact.T16, Coverage(0.99, 16), 1e-9, "t")
	assert.InDelta(t, h.Printed.K99, Coverage(0.99, 16), 0.005)
	near(t, h.Exact.U16, Coverage(0.99, 16)*b.Uc, 1e-9, "U at 16")
	assert.Equal(t, h.Printed.U99, math.Ceil(Coverage(0.99, 16)*b.Uc), "the guide prints 93, which is 92.6 rounded up")
	near(t, h.Exact.U, b.U, 1e-8, "U with the degrees of freedom kept real")
	share := 0.0
	for _, p := range b.Parts {
		share += p.Share
	}
	assert.InDelta(t, 1, share, 1e-12)
	// Without the last term, by hand: u_c = sqrt(25^2 + 9.7^2 + 2.9^2) = 26.97 and
	// nu = 26.97^4/(25^4/18 + 9.7^4/25.6 + 2.9^4/50) = 24.0, so t = 2.797 and U =
	// 75.4. Without the first, the term with 2 degrees of freedom rules, and U does
	// not fall at all.
	assert.InDelta(t, 75.4, b.Parts[5].Without, 0.3)
	assert.Greater(t, b.Parts[0].Without, b.U)
}

// JCGM 100:2008, H.3: a thermometer's correction fitted on the temperature less
// 20 C, and the correction at 30 C.
func TestThermometerOfJCGM100(t *testing.T) {
	var all struct {
		H3 struct {
			T, B    []float64
			T0      float64
			Printed struct {
				Y1, Y2, R, S, B30 float64
				S1                float64 `json:"s_y1"`
				S2                float64 `json:"s_y2"`
				U30               float64 `json:"u_b30"`
				Nu                int
			}
			Exact struct {
				Y1, Y2, R, S, SSR, B30 float64
				S1                     float64 `json:"s_y1"`
				S2                     float64 `json:"s_y2"`
				U30                    float64 `json:"u_b30"`
			}
		}
	}
	published(t, "gum.json", &all)
	h := all.H3
	var list []Point
	for i := range h.T {
		list = append(list, Point{h.T[i] - h.T0, h.B[i]})
	}
	c, err := Fit(list, Line)
	require.NoError(t, err)
	assert.Equal(t, h.Printed.Nu, c.DF)
	r := c.Cov[0][1] / (c.SE[0] * c.SE[1])
	for _, v := range []struct{ printed, unit, exact, got float64 }{
		{h.Printed.Y1, 0.0001, h.Exact.Y1, c.B[0]}, {h.Printed.S1, 0.0001, h.Exact.S1, c.SE[0]}, {h.Printed.Y2, 0.00001, h.Exact.Y2, c.B[1]},
		{h.Printed.S2, 0.00001, h.Exact.S2, c.SE[1]}, {h.Printed.R, 0.01, h.Exact.R, r}, {h.Printed.S, 0.0001, h.Exact.S, c.SD},
		{h.Printed.B30, 0.0001, h.Exact.B30, c.At(10)}, {h.Printed.U30, 0.0001, h.Exact.U30, c.Doubt(10, CurveItself)},
	} {
		assert.InDelta(t, v.printed, v.got, v.unit/2)
		near(t, v.exact, v.got, 1e-10, "H.3")
	}
	near(t, h.Exact.SSR, c.SSE, 1e-10, "sum of squares")
}

// The same as gonum's orthogonal decomposition of the design matrix, and as its
// line, on certificates of many shapes.
func TestAgreesWithGonum(t *testing.T) {
	rnd := seeded(1)
	for range 300 {
		n := 7 + rnd.IntN(20)
		low, width := rnd.Float64()*5000, 1000+rnd.Float64()*30000
		slope, bend := 0.01+rnd.Float64(), (rnd.Float64()-0.5)*1e-6
		var list []Point
		var xs, ys []float64
		for i := range n {
			x := low + width*float64(i)/float64(n-1)
			y := 10 + slope*x + bend*x*x + rnd.NormFloat64()*slope*width/500
			list, xs, ys = append(list, Point{x, y}), append(xs, x), append(ys, y)
		}
		line, err := Fit(list, Line)
		require.NoError(t, err)
		a, b := stat.LinearRegression(xs, ys, nil, false)
		assert.InDelta(t, a, line.B[0], 1e-9*slope*width)
		near(t, b, line.B[1], 1e-11, "slope")

		c, err := Fit(list, Quadratic)
		if err != nil {
			continue
		}
		design := mat.NewDense(n, 3, nil)
		for i, x := range xs {
			z := x / width
			design.SetRow(i, []float64{1, z, z * z})
		}
		var qr mat.QR
		qr.Factorize(design)
		var beta mat.VecDense
		require.NoError(t, qr.SolveVecTo(&beta, false, mat.NewVecDense(n, ys)))
		assert.InDelta(t, beta.AtVec(0), c.B[0], 1e-8*slope*width)
		assert.InDelta(t, beta.AtVec(1)/width, c.B[1], 1e-8*slope)
		assert.InDelta(t, beta.AtVec(2)/width/width, c.B[2], 1e-8*slope/width)
		var gram, inverse mat.Dense
		gram.Mul(design.T(), design)
		require.NoError(t, inverse.Inverse(&gram))
		scale := []float64{1, width, width * width}
		for i := range 3 {
			for j := range 3 {
				want := inverse.At(i, j) * c.SD * c.SD / scale[i] / scale[j]
				near(t, want, c.Cov[i][j], 1e-6, "covariance")
			}
		}
		// The doubt of the curve is that of the covariances.
		x := low + width*rnd.Float64()
		v := 0.0
		for i := range 3 {
			for j := range 3 {
				v += math.Pow(x, float64(i+j)) * c.Cov[i][j]
			}
		}
		near(t, math.Sqrt(v), c.Doubt(x, CurveItself), 1e-6, "doubt of the curve")
	}
}
