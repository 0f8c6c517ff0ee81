package assess_test

import (
	"math/rand"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
	"gaugewright/calc/window"
)

// strengthJobs are pile types whose limit is computed, as changes of the hand
// job. The values beside them were worked apart from the code, from the
// formulas of EN 1992-1-1 3.1.2, EN 1993-1-1 6.3.1 and elementary statics.
var strengthJobs = map[string]struct {
	values []string
	limit  string // of the pile
	free   string // of the free length, "" where it is not checked
	pitch  string // the same with the toe not held: twice the buckling length
}{
	// 0.85 x 45/1.2 - 5 = 26.875 MPa on 0.09 m2. Free length 0.6 + 1.8 + 0 = 2.4 m:
	// pi^2 36000 MPa x 0.3^4/12/2.4^2 = 41637 kN; 1/(1/2418.75 + 1/41637) = 2286.0.
	"concrete as tested": {[]string{"/pileTypes/t/shape", "square", "/pileTypes/t/width", "300 mm", "/pileTypes/t/drivingLimit", "while pressing",
		"/pileTypes/t/concrete/strength", "45 MPa", "/pileTypes/t/concrete/specimen", "cylinder", "/pileTypes/t/concrete/prestress", "5 MPa",
		"/pileTypes/t/pressingLimit", "", "/pileTypes/t/stiffness", "36000 MPa", "/rigs/r/circuits/c/stroke", "1.80 m", "/piles/p/softDepth", "0 m"},
		"2418.8 kN", "2286.0 kN", "1962.7 kN"},
	// 55 MPa of a cube is 45 MPa of a cylinder (Table 3.1): 0.8 x 45 - 5 = 31 MPa.
	"concrete by its cube": {[]string{"/pileTypes/t/shape", "square", "/pileTypes/t/width", "300 mm", "/pileTypes/t/drivingLimit", "0.8 fck with prestress",
		"/pileTypes/t/concrete/strength", "55 MPa", "/pileTypes/t/concrete/specimen", "cube", "/pileTypes/t/concrete/prestress", "5 MPa",
		"/pileTypes/t/pressingLimit", ""}, "2790.0 kN", "", ""},
	// beta = exp(0.25 (1 - sqrt 2)) = 0.90163; f_ck(14) = 0.90163 x 48 - 8 = 35.278 MPa.
	"concrete of 14 days": {[]string{"/pileTypes/t/shape", "square", "/pileTypes/t/width", "300 mm", "/pileTypes/t/drivingLimit", "while pressing",
		"/pileTypes/t/concrete/class", "C40/50", "/pileTypes/t/concrete/age", "14", "/pileTypes/t/concrete/hardening", "normal",
		"/pileTypes/t/concrete/prestress", "0 MPa", "/pileTypes/t/pressingLimit", ""}, "2249.0 kN", "", ""},
	// 26.875 MPa/(1/0.09 + 0.02/0.0045) = 1727.7 kN.
	"grip off the axis": {[]string{"/pileTypes/t/shape", "square", "/pileTypes/t/width", "300 mm", "/pileTypes/t/drivingLimit", "while pressing",
		"/pileTypes/t/concrete/strength", "45 MPa", "/pileTypes/t/concrete/specimen", "cylinder", "/pileTypes/t/concrete/prestress", "5 MPa",
		"/pileTypes/t/pressingLimit", "", "/rigs/r/grip/offAxis", "20 mm"}, "1727.7 kN", "", ""},
	// Tube 508 x 12.5: A = 194.58 cm2; 0.8 x 355 A = 5526.1 kN. Free length 0.6 + 2.7 + 2.0 =
	// 5.3 m, curve a: lambda = 0.39582, chi = 0.95388; pitching 0.79164, 0.80043.
	"steel tube": {[]string{"/pileTypes/t/shape", "tube", "/pileTypes/t/width", "508 mm", "/pileTypes/t/wall", "12.5 mm", "/pileTypes/t/drivingLimit", "0.8 fy",
		"/pileTypes/t/steel/grade", "S355", "/pileTypes/t/buckling/curve", "a", "/pileTypes/t/pressingLimit", "",
		"/rigs/r/circuits/c/stroke", "2.70 m", "/piles/p/softDepth", "1.50 m", "/piles/p/preBored", "2.00 m"}, "5526.1 kN", "5271.3 kN", "4423.4 kN"},
	// H 300 x 300 x 11 x 19 without fillets: A = 2 x 300 x 19 + 262 x 11 = 14282 mm2; 0.9 x 345 A = 4434.6 kN.
	// I_z = (2 x 19 x 300^3 + 262 x 11^3)/12 = 85.53e6 mm4; l = 3.0 m: N_cr = 19697 kN, lambda = 0.50016,
	// curve c: Phi = 0.69862, chi = 0.84289; pitching lambda = 1.00032, chi = 0.53976.
	"steel H": {[]string{"/pileTypes/t/shape", "H", "/pileTypes/t/width", "300 mm", "/pileTypes/t/depth", "300 mm", "/pileTypes/t/web", "11 mm",
		"/pileTypes/t/flange", "19 mm", "/pileTypes/t/drivingLimit", "0.9 fy", "/pileTypes/t/steel/grade", "S355J2+N", "/pileTypes/t/pressingLimit", "",
		"/rigs/r/grip/offAxis", "0 mm", "/pileTypes/t/buckling/curve", "c", "/rigs/r/circuits/c/stroke", "1.40 m", "/piles/p/preBored", "1.0 m"}, "4434.6 kN", "3737.9 kN", "2393.6 kN"},
	// C24: 0.8 x 21 MPa on the tip of 200 mm: 0.0314159 m2 x 16.8 MPa = 527.8 kN.
	"timber": {[]string{"/pileTypes/t/shape", "timber", "/pileTypes/t/width", "320 mm", "/pileTypes/t/tip", "200 mm", "/pileTypes/t/drivingLimit", "0.8 timber",
		"/pileTypes/t/timber/class", "C24", "/pileTypes/t/pressingLimit", ""}, "527.8 kN", "", ""},
	// Area and radius of gyration from a table of sections.
	"tabled": {[]string{"/pileTypes/t/shape", "H", "/pileTypes/t/width", "305 mm", "/pileTypes/t/area", "149 cm2", "/pileTypes/t/gyration", "75.8 mm",
		"/pileTypes/t/drivingLimit", "0.8 fy", "/pileTypes/t/steel/yield", "345 MPa", "/pileTypes/t/pressingLimit", "", "/rigs/r/grip/offAxis", "15 mm"},
		"", "", ""},
	// The same tube as above, its measures of the table.
	"section of a table": {[]string{"/pileTypes/t/section", "tube 508 x 12.5", "/pileTypes/t/drivingLimit", "0.8 fy",
		"/pileTypes/t/steel/grade", "S355", "/pileTypes/t/buckling/curve", "a", "/pileTypes/t/pressingLimit", "",
		"/rigs/r/circuits/c/stroke", "2.70 m", "/piles/p/softDepth", "1.50 m", "/piles/p/preBored", "2.00 m"}, "5526.1 kN", "5271.3 kN", "4423.4 kN"},
	// A wall that is typed counts before the table's: A = pi 0.498 x 0.010 = 156.45 cm2.
	"section of a table, one measure typed": {[]string{"/pileTypes/t/section", "tube 508 x 12.5", "/pileTypes/t/wall", "10 mm", "/pileTypes/t/drivingLimit", "0.8 fy",
		"/pileTypes/t/steel/yield", "355 MPa", "/pileTypes/t/pressingLimit", ""}, "4443.2 kN", "", ""},
	// The least of the maker's load, splice and a weaker segment.
	"weakest": {[]string{"/pileTypes/t/splice/capacity", "2100 kN", "/stock/s6/pressingLimit", "2050 kN", "/piles/p/follower", "yes", "/pileTypes/t/followerCapacity", "2500 kN"},
		"2050.0 kN", "", ""},
}

func limitOf(a assess.Answer, k window.Kind) assess.Limit {
	for _, l := range a.Limits {
		if l.Kind == k {
			return l
		}
	}
	return assess.Limit{}
}

func TestWhatAPileStandsWhilePressed(t *testing.T) {
	for name, c := range strengthJobs {
		a := answer(t, with(t, c.values...))
		l := limitOf(a, window.Pile)
		require.Equal(t, window.Entered, l.State, "%s: %v %v", name, l.Needs, l.Problem)
		if c.limit != "" {
			assert.Equal(t, c.limit, l.Value.Text(quantity.Point), name)
		}
		free := limitOf(a, window.FreeLength)
		if c.free == "" {
			assert.NotEqual(t, window.Entered, free.State, name)
			assert.NotEmpty(t, free.Needs, name)
			continue
		}
		require.Equal(t, window.Entered, free.State, "%s: %v %v", name, free.Needs, free.Problem)
		assert.Equal(t, c.free, free.Value.Text(quantity.Point), name)
		assert.Equal(t, c.pitch, free.Pitching.Text(quantity.Point), name)
		if free.PitchingReading != nil {
			assert.LessOrEqual(t, free.PitchingReading.V, free.Reading.V, name)
		}
	}
	parts := limitOf(answer(t, with(t, strengthJobs["weakest"].values...)), window.Pile).Parts
	require.Len(t, parts, 4)
	assert.True(t, parts[1].Least)
	assert.Equal(t, "symbol.pileLimit.segment", parts[1].Key)
}

// Whatever a rule needs and has not, the limit is missing and says what.
func TestAComputedLimitWithoutItsInputsIsMissing(t *testing.T) {
	whole := strengthJobs["concrete of 14 days"].values
	for i := 0; i < len(whole); i += 2 {
		path := whole[i]
		if path == "/pileTypes/t/drivingLimit" || path == "/pileTypes/t/pressingLimit" {
			continue
		}
		values := append(append([]string(nil), whole...), path, "")
		a := answer(t, with(t, values...))
		l := limitOf(a, window.Pile)
		assert.Equal(t, window.Missing, l.State, path)
		assert.NotEmpty(t, l.Needs, path)
		assert.Equal(t, assess.LimitMissing, a.State, path)
		assert.Nil(t, a.Never, "no never-exceed reading from the rest")
	}
	for code, values := range map[string][]string{
		"pile.ruleMaterial":     {"/pileTypes/t/shape", "tube", "/pileTypes/t/wall", "50 mm"},
		"pile.classHalf":        {"/pileTypes/t/concrete/class", "C40"},
		"pile.tooYoung":         {"/pileTypes/t/concrete/age", "3"},
		"pile.prestressTooHigh": {"/pileTypes/t/concrete/prestress", "40 MPa"},
	} {
		a := answer(t, with(t, append(append([]string(nil), whole...), values...)...))
		l := limitOf(a, window.Pile)
		require.NotNil(t, l.Problem, code)
		assert.Equal(t, code, l.Problem.Code)
		assert.Equal(t, assess.LimitMissing, a.State, code)
	}
}

// A weaker pile, a longer free length or a wider miss of the axis never open a
// window further.
func TestAWeakerPileNeverWidensTheWindow(t *testing.T) {
	rnd := rand.New(rand.NewSource(17))
	never := func(values []string) float64 {
		a := answer(t, with(t, values...))
		if a.Never == nil {
			return 0
		}
		return a.Never.V
	}
	mm := func(v float64) string { return strconv.FormatFloat(v, 'f', 1, 64) + " mm" }
	for range 300 {
		width, fck, prestress, off, soft := 250+rnd.Float64()*200, 30+rnd.Float64()*50, rnd.Float64()*6, rnd.Float64()*30, rnd.Float64()*5
		job := func(width, fck, prestress, off, soft float64) []string {
			return []string{"/pileTypes/t/shape", "square", "/pileTypes/t/width", mm(width), "/pileTypes/t/drivingLimit", "while pressing",
				"/pileTypes/t/concrete/strength", strconv.FormatFloat(fck, 'f', 2, 64) + " MPa", "/pileTypes/t/concrete/specimen", "cylinder",
				"/pileTypes/t/concrete/prestress", strconv.FormatFloat(prestress, 'f', 2, 64) + " MPa", "/pileTypes/t/pressingLimit", "",
				"/pileTypes/t/stiffness", "33000 MPa", "/rigs/r/circuits/c/stroke", "1.80 m", "/rigs/r/grip/offAxis", mm(off),
				"/piles/p/softDepth", strconv.FormatFloat(soft, 'f', 2, 64) + " m", "/rigs/r/mass", "900 t", "/rigs/r/circuits/c/maxPressure", "60 MPa", "/gauges/g/fullScale", "100 MPa"}
		}
		base := never(job(width, fck, prestress, off, soft))
		require.LessOrEqual(t, never(job(width*0.97, fck, prestress, off, soft)), base)
		require.LessOrEqual(t, never(job(width, fck*0.97, prestress, off, soft)), base)
		require.LessOrEqual(t, never(job(width, fck, prestress+1, off, soft)), base)
		require.LessOrEqual(t, never(job(width, fck, prestress, off+4, soft)), base)
		require.LessOrEqual(t, never(job(width, fck, prestress, off, soft+1)), base)
	}
}

func TestAReliefValveAboveTheNeverExceedReadingIsSaid(t *testing.T) {
	for valve, said := range map[string]bool{"17.0 MPa": false, "170 bar": false, "17.1 MPa": true, "": false} {
		a := answer(t, with(t, "/rigs/r/circuits/c/reliefValve", valve))
		require.Equal(t, "17.0 MPa", a.Never.Text(quantity.Point))
		found := false
		for _, n := range a.Notes {
			found = found || n.Code == "note.reliefValve"
		}
		assert.Equal(t, said, found, valve)
	}
}

// strengthTrees hands the jobs on to the tests of the working.
func strengthTrees(t *testing.T, into map[string]*document.Node) {
	for name, c := range strengthJobs {
		into[name] = with(t, c.values...)
	}
}
