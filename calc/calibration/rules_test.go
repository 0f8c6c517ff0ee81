package calibration_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	. "gaugewright/calc/calibration"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// places gives every value of a certificate a place.
func places(n int) Places {
	at := Places{DimX: quantity.Pressures, DimY: quantity.Forces}
	for i := range n {
		at.X, at.Y = append(at.X, "/x/"+strconv.Itoa(i)), append(at.Y, "/y/"+strconv.Itoa(i))
	}
	return at
}

// books are the workings of several certificates and budgets.
func books(t *testing.T) map[string]*working.Book {
	all := map[string]*working.Book{}
	rnd := seeded(12)
	for name, c := range map[string]struct {
		points []Point
		degree Degree
	}{
		"pontius":        {points(t, "nist_pontius_loadcell.csv"), Quadratic},
		"norris":         {points(t, "nist_norris.csv"), Line},
		"pontius's line": {points(t, "nist_pontius_loadcell.csv"), Line},
		"line":           {certificate(rnd, 7, 12, 0.1, 0, 5000, 30000, 9), Line},
		"quadratic":      {certificate(rnd, 9, 12, 0.1, 4e-7, 0, 30000, 9), Quadratic},
		"bent back":      {certificate(rnd, 9, 400, -0.02, 8e-6, 2000, 30000, 9), Quadratic},
		"two points":     {certificate(rnd, 2, 12, 0.1, 0, 5000, 30000, 9), Line},
		"exact":          {certificate(rnd, 7, 0, 0.125, 0, 5000, 35000, 0), Line},
		"exact, bent":    {certificate(rnd, 7, 0, 0.125, 0.0000019073486328125, 4096, 28672, 0), Quadratic},
	} {
		b := working.NewBook("")
		curve, err := Fit(c.points, c.degree)
		require.NoError(t, err, name)
		w := curve.Work(b, "fit/", places(len(c.points)))
		x := curve.Low + 0.37*(curve.High-curve.Low)
		at := working.In{V: x, Ref: "/at"}
		assert.Equal(t, curve.At(x), w.On("load", at).V)
		assert.Equal(t, curve.Slope(x), w.SlopeAt("slope", at).V)
		for m := range 3 {
			ahead, err := curve.Predict(x, 0.95, m)
			w.Ahead("ahead"+strconv.Itoa(m), at, ahead, m, err == nil)
			if curve.Known() {
				assert.Equal(t, curve.Doubt(x, m), w.DoubtAt("doubt"+strconv.Itoa(m), at, m).V)
			}
			y := curve.At(x) + 0.001*curve.SD
			if !curve.Known() {
				y = curve.At(x)
			}
			in, err := curve.Inverse(y, 0.95, m)
			if err != nil {
				require.False(t, curve.Known(), name)
			}
			back := w.Back("back"+strconv.Itoa(m), working.In{V: y, Ref: "/y"}, in, m, err == nil && curve.SSE > 0)
			assert.Equal(t, in.Value, back.Value.V)
		}
		all[name] = b
	}
	for name, terms := range map[string][]Term{
		"finite":  {{U: 3, Sensitivity: 2, DF: 5}, {U: 4, Sensitivity: 1, DF: Certain()}, {U: 1, Sensitivity: -3, DF: 8.5}, {U: 0, Sensitivity: 1, DF: 2}},
		"certain": {{U: 3, Sensitivity: 2, DF: Certain()}, {U: 4, Sensitivity: 1, DF: Certain()}},
		"one":     {{U: 3, Sensitivity: 2, DF: 1}},
		"nearly":  {{U: 30, Sensitivity: 2, DF: Certain()}, {U: 0.5, Sensitivity: 1, DF: 3}},
	} {
		b := working.NewBook("")
		budget := Combine(terms, 0.95)
		var u, nu []working.In
		for i, p := range budget.Parts {
			u, nu = append(u, working.In{V: p.Contribution, Ref: "/u/" + strconv.Itoa(i)}), append(nu, working.In{V: p.DF, Ref: "/nu/" + strconv.Itoa(i)})
		}
		w := budget.Work(b, "U", quantity.Forces, u, nu)
		assert.InDelta(t, budget.U, w.U.V, 1e-12*budget.U)
		for i, bound := range []float64{90, 99, 100.5, 112, 250} {
			f, g := working.In{V: 100, Ref: "/f"}, working.In{V: bound, Ref: "/bound"}
			short := budget.WorkShort(b, "short"+strconv.Itoa(i), quantity.Forces, f, g, w.Uc.In(), w.DF.In())
			passed := budget.WorkPassed(b, "passed"+strconv.Itoa(i), quantity.Forces, f, g, w.Uc.In(), w.DF.In())
			assert.Equal(t, budget.Short(100, bound), short.V)
			assert.Equal(t, budget.Passed(100, bound), passed.V)
		}
		all[name] = b
	}
	return all
}

func TestEveryStepEvaluatesToItsValue(t *testing.T) {
	steps, proofs := 0, 0
	for name, b := range books(t) {
		for _, s := range b.Steps() {
			difference, err := s.Check()
			require.NoError(t, err, "%s %s", name, s.ID)
			assert.LessOrEqual(t, difference, 1e-12, "%s %s: %s = %v", name, s.ID, s.Rule.Formula, s.Value)
			assert.False(t, working.Bare(s.Rule.Formula), s.ID)
			_, known := basis.Find(s.Rule.Basis)
			assert.True(t, known, "no basis %q", s.Rule.Basis)
			var names []string
			for _, in := range s.Rule.Inputs {
				names = append(names, in.Name)
			}
			assert.ElementsMatch(t, names, working.Symbols(s.Rule.Formula), "%s %s", name, s.ID)
			for _, in := range s.Inputs {
				switch {
				case strings.HasPrefix(in.Ref, "/") || in.Ref == "search:":
				case strings.HasPrefix(in.Ref, "basis:"):
					assert.Equal(t, basis.Figure(in.Ref[6:]), in.V)
				default:
					of := b.Find(in.Ref)
					require.NotNil(t, of, "%s: no step %q", s.ID, in.Ref)
					assert.Equal(t, of.Value, in.V, "%s %s from %s", name, s.ID, in.Ref)
				}
			}
			steps++
			if s.Rule.Statement {
				proofs++
			}
		}
	}
	require.Greater(t, steps, 500)
	require.Greater(t, proofs, 60)
}

// A reviewer's pocket calculator gets the printed result from the printed
// numbers.
func TestThePrintedDigitsGiveThePrintedResult(t *testing.T) {
	for name, b := range books(t) {
		for _, s := range b.Steps() {
			p := s.Print(quantity.Point)
			v := map[string]working.Measured{}
			for i, text := range p.Inputs {
				v[s.Rule.Inputs[i].Name] = working.Measured{V: number(t, text), Dim: s.Rule.Inputs[i].Dim}
			}
			got, err := working.Evaluate(s.Rule.Formula, v)
			require.NoError(t, err)
			assert.Equal(t, p.Result, quantity.Print(got.V, s.Rule.Decimals, quantity.Point), "%s %s", name, s.ID)
		}
	}
}

// Each input changed by one per cent breaks its step. Where an input stands
// beside an exact zero, the middle point in a slope say, the others are moved a
// little first: then it must show. Certificates without any scatter are left
// out: their doubts are rounding.
func TestEveryInputMatters(t *testing.T) {
	tried := 0
	for name, b := range books(t) {
		if strings.HasPrefix(name, "exact") {
			continue
		}
		for _, s := range b.Steps() {
			if s.Rule.Statement || strings.Contains(s.Rule.Formula, "max(") {
				continue
			}
			for i := range s.Inputs {
				tried++
				shows := false
				for _, moved := range []float64{0, 0.001} {
					v := map[string]working.Measured{}
					for j, in := range s.Inputs {
						x := in.V * (1 + moved*math.Sin(float64(j+1)))
						if in.V == 0 {
							x = moved
						}
						v[s.Rule.Inputs[j].Name] = working.Measured{V: x, Dim: s.Rule.Inputs[j].Dim}
					}
					before, err := working.Evaluate(s.Rule.Formula, v)
					require.NoError(t, err)
					in := v[s.Rule.Inputs[i].Name]
					if in.V *= 1.01; in.V == 0 {
						in.V = 0.01
					}
					v[s.Rule.Inputs[i].Name] = in
					after, err := working.Evaluate(s.Rule.Formula, v)
					require.NoError(t, err)
					shows = shows || math.Abs(after.V-before.V) > 1e-9*math.Abs(before.V)
				}
				assert.True(t, shows, "%s %s does not depend on %s: %s", name, s.ID, s.Rule.Inputs[i].Name, s.Rule.Formula)
			}
		}
	}
	require.Greater(t, tried, 2000)
}

// The proof of a coverage factor notices a change of 0.003 %, and holds
// for all degrees of freedom that occur.
func TestTheProofOfStudent(t *testing.T) {
	for _, level := range []float64{0.5, 0.95, 0.99} {
		for nu := 1.0; nu < 1e8; nu *= 1.31 {
			b := working.NewBook("")
			of := WorkCoverage(b, "k", level, nu, working.In{V: nu, Ref: "/nu"})
			s := b.Find(b.Find(of.Ref).Proofs[0])
			difference, err := s.Check()
			require.NoError(t, err)
			require.Zero(t, difference, "%v %v", level, nu)
			s.Inputs[2].V += 0.00003
			difference, err = s.Check()
			require.NoError(t, err)
			require.NotZero(t, difference)
		}
	}
}

// The proof of a chance holds wherever a margin lies.
func TestTheProofOfAChance(t *testing.T) {
	for _, nu := range []float64{1, 1.2, 1.5, 2, 2.5, 3.3, 5, 8, 11, 14, 20, 50, 300, 1e4, 1e6, math.Inf(1)} {
		for _, margin := range []float64{0, 0.01, 0.3, 1, 1.96, 3, 5, 7, 12, 30} {
			b := working.NewBook("")
			budget := Budget{Uc: 1, DF: nu}
			of := budget.WorkShort(b, "P", quantity.Forces, working.In{V: margin, Ref: "/f"}, working.In{V: 0, Ref: "/b"}, working.In{V: 1, Ref: "/u"}, working.In{V: nu, Ref: "/nu"})
			assert.InDelta(t, Beyond(margin, nu), of.V, 1e-15)
			difference, err := b.Find(b.Find(of.Ref).Proofs[0]).Check()
			require.NoError(t, err)
			assert.Zero(t, difference, "nu %v, t %v", nu, margin)
		}
	}
}
