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

	"gaugewright/calc/basis"
	. "gaugewright/calc/calibration"
	"gaugewright/calc/published"
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

// read reads a JSON file of testdata.
func read(t testing.TB, name string, into any) {
	data, err := os.ReadFile("../../testdata/" + name)
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(data, into))
}

// A compared value is one that stands in a file of testdata, digit for digit.
type compared struct {
	what string
	want json.Number
	got  float64
}

func compare(t *testing.T, s published.Source, tol published.Tolerance, list ...compared) {
	t.Helper()
	for _, v := range list {
		published.Check(t, s, v.what, v.want.String(), v.got, tol)
	}
}

// Where the comments of the files of testdata say that a value was recomputed,
// it is not the source's.
func recomputed(of string) published.Source {
	return published.Worked("recomputed from the published data with 40 digits").At(of)
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
	B0, B1, B2, R2 json.Number
	SSR, SSE, MSE  json.Number
	F              json.Number
	SD0            json.Number `json:"sd_B0"`
	SD1            json.Number `json:"sd_B1"`
	SD2            json.Number `json:"sd_B2"`
	Residual       json.Number `json:"residual_sd"`
	DF             json.Number `json:"df"`
	Covariance     json.Number `json:"cov_B0_B1_recomputed"`
	LackOfFit      json.Number `json:"lack_of_fit_F"`
}

// strd is testdata/nist_strd_certified.json: NIST Statistical Reference
// Datasets, linear regression, Norris and Pontius.
type strd struct {
	Norris, Pontius cert
	Handbook        struct {
		B0, B1, F json.Number
		SD0       json.Number `json:"sd_B0"`
		SD1       json.Number `json:"sd_B1"`
		Residual  json.Number `json:"residual_sd"`
		DF        json.Number `json:"df"`
		Critical  json.Number `json:"F_0.05_18_20"`
	} `json:"Pontius_handbook_straight_line"`
	Derived struct {
		Line      cert        `json:"straight_line"`
		LackOfFit json.Number `json:"quadratic_lack_of_fit_F"`
		PureError json.Number `json:"pure_error_SS"`
		Inverse   struct {
			Y0    float64     `json:"y0"`
			X0    json.Number `json:"x0"`
			Lower json.Number `json:"ci95_lower"`
			Upper json.Number `json:"ci95_upper"`
			T     json.Number `json:"t_0.975_37"`
		} `json:"inverse_prediction"`
	} `json:"Pontius_derived_not_certified"`
}

var nist = published.Source{Document: "NIST Statistical Reference Datasets, linear regression", Mark: basis.Seen}

// certified compares all certified values of a fit. The sums of squares of the
// regression are made here of what the curve says at its points.
func certified(t *testing.T, name string, want cert, c Curve, tol published.Tolerance) {
	ssr := 0.0
	for _, p := range c.Points {
		ssr += math.Pow(c.At(p.X)-c.MeanY, 2)
	}
	mse := c.SSE / float64(c.DF)
	list := []compared{
		{"B0", want.B0, c.B[0]}, {"B1", want.B1, c.B[1]}, {"standard deviation of B0", want.SD0, c.SE[0]}, {"standard deviation of B1", want.SD1, c.SE[1]},
		{"residual standard deviation", want.Residual, c.SD}, {"residual sum of squares", want.SSE, c.SSE}, {"residual mean square", want.MSE, mse},
		{"regression sum of squares", want.SSR, ssr}, {"R squared", want.R2, ssr / (ssr + c.SSE)}, {"F", want.F, ssr / float64(c.Degree) / mse},
	}
	if c.Degree == Quadratic {
		list = append(list, compared{"B2", want.B2, c.B[2]}, compared{"standard deviation of B2", want.SD2, c.SE[2]})
	}
	compare(t, nist.At(name), tol, list...)
	compare(t, nist.At(name), published.Exact, compared{"degrees of freedom", want.DF, float64(c.DF)})
}

func near(t *testing.T, want, got, relative float64, what string) {
	t.Helper()
	assert.LessOrEqual(t, math.Abs(got-want), relative*math.Abs(want), "%s: want %v, got %v", what, want, got)
}

func TestNorris(t *testing.T) {
	var all strd
	read(t, "nist_strd_certified.json", &all)
	c, err := Fit(points(t, "nist_norris.csv"), Line)
	require.NoError(t, err)
	certified(t, "Norris", all.Norris, c, published.Part(1e-12, "fifteen digits, float64 arithmetic"))
	compare(t, recomputed("Norris"), published.Part(1e-12, "fifteen digits, float64 arithmetic"), compared{"covariance of B0 and B1", all.Norris.Covariance, c.Cov[0][1]})
}

func TestPontius(t *testing.T) {
	var all strd
	read(t, "nist_strd_certified.json", &all)
	list := points(t, "nist_pontius_loadcell.csv")
	c, err := Fit(list, Quadratic)
	require.NoError(t, err)
	certified(t, "Pontius", all.Pontius, c, published.Part(1e-12, "fifteen digits, float64 arithmetic"))

	// Derived from the same data; the e-Handbook shows some of them rounded.
	derived := recomputed("Pontius")
	lof, ok := c.LackOfFit()
	require.True(t, ok)
	compare(t, derived, published.Printed, compared{"F of the lack of fit, quadratic", all.Derived.LackOfFit, lof.F})
	compare(t, derived, published.Part(1e-8, "sum of squares of differences in the sixth digit"), compared{"pure error", all.Derived.PureError, lof.PureSS})
	assert.Equal(t, []int{17, 20}, []int{lof.Above, lof.Below})
	line, err := Fit(list, Line)
	require.NoError(t, err)
	want := all.Derived.Line
	compare(t, derived, published.Part(1e-12, "fifteen digits, float64 arithmetic"), compared{"B0 of the line", want.B0, line.B[0]}, compared{"B1 of the line", want.B1, line.B[1]},
		compared{"standard deviation of B0 of the line", want.SD0, line.SE[0]}, compared{"standard deviation of B1 of the line", want.SD1, line.SE[1]},
		compared{"residual standard deviation of the line", want.Residual, line.SD})
	compare(t, derived, published.Exact, compared{"degrees of freedom of the line", want.DF, float64(line.DF)})
	lof2, ok := line.LackOfFit()
	require.True(t, ok)
	compare(t, derived, published.Printed, compared{"F of the lack of fit, line", want.LackOfFit, lof2.F})
	assert.Less(t, lof2.P, 1e-12)

	handbook := published.Source{Document: "NIST/SEMATECH e-Handbook of Statistical Methods", Place: "4.6.1.5, load cell, straight line", Mark: basis.Seen}
	h := all.Handbook
	compare(t, handbook, published.Printed, compared{"standard deviation of B0", h.SD0, line.SE[0]}, compared{"standard deviation of B1", h.SD1, line.SE[1]})
	compare(t, handbook, published.Exact, compared{"degrees of freedom", h.DF, float64(line.DF)})
	compare(t, handbook, published.Part(3e-6, "printed by a program that kept about six digits"), compared{"B0", h.B0, line.B[0]}, compared{"B1", h.B1, line.B[1]},
		compared{"residual standard deviation", h.Residual, line.SD}, compared{"F of the lack of fit", h.F, lof2.F})
	low, high := 1.0, 4.0
	for range 60 {
		if middle := (low + high) / 2; BeyondF(middle, float64(lof2.Above), float64(lof2.Below)) > 0.05 {
			low = middle
		} else {
			high = middle
		}
	}
	compare(t, handbook, published.Printed, compared{"critical F of 5 %, 18 and 20", h.Critical, low})

	// t of the quadratic term from the published values: B2/sd = -64.95.
	term, ok := QuadraticTerm(list)
	require.True(t, ok)
	b2, sd2 := number(t, all.Pontius.B2.String()), number(t, all.Pontius.SD2.String())
	near(t, math.Pow(b2/sd2, 2), term.F, 1e-9, "F of the quadratic term")
	assert.Equal(t, []int{1, 37}, []int{term.Above, term.Below})
	assert.Less(t, term.P, 1e-12)

	inverse := all.Derived.Inverse
	in, err := c.Inverse(inverse.Y0, 0.95, 1)
	require.NoError(t, err)
	compare(t, derived, published.Printed, compared{"x0 at 1.239722", inverse.X0, in.Value}, compared{"lower limit of x0", inverse.Lower, in.Low},
		compared{"upper limit of x0", inverse.Upper, in.High}, compared{"t of 95 % and 37", inverse.T, in.K})
}

// testdata/calibration_inverse.json: Graybill and Iyer 1994, printed figures
// and the same recomputed.
func TestGraybillAndIyer(t *testing.T) {
	type set struct {
		X, Y []float64
		Fit  struct{ B0, B1, S json.Number } `json:"fit_exact"`
		List []struct {
			Y0        float64
			Level     float64
			Mean      bool `json:"mean_response"`
			Published struct {
				X0, Lower, Upper json.Number
				Wald             json.Number `json:"wald_se"`
			}
			Exact struct {
				X0, Lower, Upper, G json.Number
				Wald                json.Number `json:"wald_se"`
				WaldLower           json.Number `json:"wald_lower"`
				WaldUpper           json.Number `json:"wald_upper"`
			}
		} `json:"cases"`
	}
	var all struct{ Thermometer, Crystal set }
	read(t, "calibration_inverse.json", &all)
	book := published.Source{Document: "Graybill & Iyer, Regression Analysis (1994)", Mark: basis.Seen}
	article := published.Source{Document: "Greenwell & Schubert Kabban, The R Journal 6(1), 2014", Place: "crystal", Mark: basis.Seen}
	for name, s := range map[string]set{"thermometer": all.Thermometer, "crystal": all.Crystal} {
		var list []Point
		for i := range s.X {
			list = append(list, Point{s.X[i], s.Y[i]})
		}
		c, err := Fit(list, Line)
		require.NoError(t, err)
		again := recomputed("Graybill & Iyer, " + name)
		compare(t, again, published.Printed, compared{"b0", s.Fit.B0, c.B[0]}, compared{"b1", s.Fit.B1, c.B[1]}, compared{"s", s.Fit.S, c.SD})
		require.NotEmpty(t, s.List)
		for _, k := range s.List {
			m := 1
			if k.Mean {
				m = CurveItself
			}
			in, err := c.Inverse(k.Y0, k.Level, m)
			require.NoError(t, err)
			compare(t, again, published.Printed, compared{"x0", k.Exact.X0, in.Value}, compared{"lower limit", k.Exact.Lower, in.Low}, compared{"upper limit", k.Exact.Upper, in.High})
			compare(t, book.At("pages 431 to 434, "+name), published.Printed, compared{"x0", k.Published.X0, in.Value},
				compared{"lower limit", k.Published.Lower, in.Low}, compared{"upper limit", k.Published.Upper, in.High})
			if k.Published.Wald != "" {
				compare(t, article, published.Printed, compared{"standard error of x0", k.Published.Wald, in.Doubt})
			}
			if k.Exact.G != "" {
				compare(t, again, published.Part(1e-8, "recomputed with a t of nine digits"), compared{"g", k.Exact.G, in.G})
				compare(t, again, published.Printed, compared{"standard error of x0", k.Exact.Wald, in.Doubt},
					compared{"x0 less t standard errors", k.Exact.WaldLower, in.Value - in.K*in.Doubt}, compared{"x0 and t standard errors", k.Exact.WaldUpper, in.Value + in.K*in.Doubt})
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
	freedom := func(text string) float64 {
		if text == "inf" {
			return math.Inf(1)
		}
		return number(t, text)
	}
	g2 := published.Source{Document: guide.Document, Place: "Table G.2", Mark: basis.Memory}
	for _, row := range table(t, "student_g2.csv")[1:] {
		published.Check(t, g2, "95 %, nu "+row[0], row[1], Coverage(0.95, freedom(row[0])), published.Printed)
		published.Check(t, g2, "99 %, nu "+row[0], row[2], Coverage(0.99, freedom(row[0])), published.Printed)
	}
	rows := table(t, "student_t_two_sided.csv")
	levels := map[string]float64{"p68.27": 0.6827, "p90": 0.90, "p95": 0.95, "p95.45": 0.9545, "p98": 0.98, "p99": 0.99, "p99.73": 0.9973}
	quantiles := published.Worked("Student's t, two-sided, computed by another program")
	checked := 0
	for _, row := range rows[1:] {
		nu := freedom(row[0])
		for i, head := range rows[0][1:] {
			level, ok := levels[head]
			require.True(t, ok, head)
			published.Check(t, quantiles.At("nu "+row[0]), head, row[i+1], Coverage(level, nu), published.Part(5e-9, "the last digits of the table are not all right"))
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
	published.Check(t, published.Worked("Student's t, two-sided, computed by another program").At("normal"), "95 %", "1.959963984540054", Coverage(0.95, math.Inf(1)), published.Printed)
	near(t, 1.959963984540054, Coverage(0.95, 9e7), 3e-8, "nearly normal")
	// F with one degree of freedom above is t squared.
	near(t, 2*Beyond(2.5, 7), BeyondF(6.25, 1, 7), 1e-12, "F and t")
}

var guide = published.Source{Document: "JCGM 100, 2008", Mark: basis.Seen}

// JCGM 100:2008, H.1: the budget of a gauge block, printed digits and the same
// recomputed, level 99 %.
func TestGaugeBlockOfJCGM100(t *testing.T) {
	type input struct{ X, U, Nu *float64 }
	var all struct {
		H1 struct {
			Inputs  map[string]input
			Printed struct {
				Uc            json.Number
				NuEff         json.Number `json:"nu_eff"`
				K99, U99      json.Number
				Contributions []json.Number
			}
			Exact struct {
				Uc    json.Number
				NuEff json.Number `json:"nu_eff"`
				U16   json.Number `json:"U99_at_16"`
				U     json.Number `json:"U99_at_nu_eff"`
				T16   json.Number `json:"t_0.995_16"`
			}
		}
	}
	read(t, "gum.json", &all)
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
	block := guide.At("H.1, end gauge")
	for i, p := range b.Parts {
		s := block
		if p.Key == "dt" { // the guide does not round 0.05 C/sqrt 3 to 0.029 C here
			unrounded := p.Term
			unrounded.U = 0.05 / math.Sqrt(3)
			p = Combine([]Term{unrounded}, 0.99).Parts[0]
			s.Mark = basis.SecondHand
		}
		compare(t, s, published.Within(0.05, ""), compared{"contribution of " + p.Key + " [nm]", h.Printed.Contributions[i], p.Contribution})
	}
	compare(t, block, published.Printed, compared{"u_c [nm]", h.Printed.Uc, b.Uc}, compared{"t of 99 % and 16", h.Printed.K99, Coverage(0.99, 16)})
	// The guide cuts the effective degrees of freedom down to a whole number, and
	// multiplies 2.92 by 32 nm, both as rounded; 92.6 unrounded.
	compare(t, block, published.Exact, compared{"effective degrees of freedom, cut", h.Printed.NuEff, math.Floor(b.DF)})
	compare(t, block, published.Printed, compared{"U of t and u_c as rounded [nm]", h.Printed.U99, math.Round(100*Coverage(0.99, 16)) / 100 * math.Round(b.Uc)})
	compare(t, recomputed("JCGM 100, H.1"), published.Printed, compared{"u_c [nm]", h.Exact.Uc, b.Uc}, compared{"effective degrees of freedom", h.Exact.NuEff, b.DF},
		compared{"t of 99 % and 16", h.Exact.T16, Coverage(0.99, 16)}, compared{"U at 16 degrees of freedom [nm]", h.Exact.U16, Coverage(0.99, 16) * b.Uc},
		compared{"U with real degrees of freedom [nm]", h.Exact.U, b.U})
	share := 0.0
	for _, p := range b.Parts {
		share += p.Share
	}
	assert.InDelta(t, 1, share, 1e-12)
	// Without the last term, by hand: u_c = sqrt(25^2 + 9.7^2 + 2.9^2) = 26.97 and
	// nu = 26.97^4/(25^4/18 + 9.7^4/25.6 + 2.9^4/50) = 24.0, so t = 2.797 and U =
	// 75.4. Without the first, the term with 2 degrees of freedom rules, and U does
	// not fall at all.
	published.Check(t, published.Worked("uncertainty budgets, by hand"), "U of H.1 without its last term [nm]", "75.4", b.Parts[5].Without, published.Within(0.3, "rounded on the way"))
	assert.Greater(t, b.Parts[0].Without, b.U)
}

// JCGM 100:2008, H.3: a thermometer's correction fitted on the temperature less
// 20 C, and the correction at 30 C.
func TestThermometerOfJCGM100(t *testing.T) {
	type results struct {
		Y1, Y2, R, S, SSR, B30 json.Number
		S1                     json.Number `json:"s_y1"`
		S2                     json.Number `json:"s_y2"`
		U30                    json.Number `json:"u_b30"`
		Nu                     json.Number
	}
	var all struct {
		H3 struct {
			T, B           []float64
			T0             float64
			Printed, Exact results
		}
	}
	read(t, "gum.json", &all)
	h := all.H3
	var list []Point
	for i := range h.T {
		list = append(list, Point{h.T[i] - h.T0, h.B[i]})
	}
	c, err := Fit(list, Line)
	require.NoError(t, err)
	values := func(r results) []compared {
		return []compared{{"y_1", r.Y1, c.B[0]}, {"s(y_1)", r.S1, c.SE[0]}, {"y_2", r.Y2, c.B[1]}, {"s(y_2)", r.S2, c.SE[1]},
			{"r", r.R, c.Cov[0][1] / (c.SE[0] * c.SE[1])}, {"s", r.S, c.SD}, {"b(30 C)", r.B30, c.At(10)}, {"u(b(30 C))", r.U30, c.Doubt(10, CurveItself)}}
	}
	thermometer := guide.At("H.3, thermometer")
	compare(t, thermometer, published.Printed, values(h.Printed)...)
	compare(t, thermometer, published.Exact, compared{"degrees of freedom", h.Printed.Nu, float64(c.DF)})
	compare(t, recomputed("JCGM 100, H.3"), published.Part(1e-10, "fourteen digits, float64 arithmetic"), append(values(h.Exact), compared{"sum of squares", h.Exact.SSR, c.SSE})...)
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
