package assess_test

import (
	"math/rand"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/assess"
	"gaugewright/calc/working"
)

// demands are the places of what the design asks of the pile, by scheme.
var demands = map[string][]string{
	"single factor":               {"/piles/p/workingLoad"},
	"reduction by risk":           {"/piles/p/designAction"},
	"reduction by an average":     {"/piles/p/designAction"},
	"resistance factor":           {"/piles/p/designAction"},
	"static tests":                {"/piles/p/actions/a/load", "/piles/p/actions/b/load", "/piles/p/actions/c/load"},
	"static tests, own set loads": {"/piles/p/actions/a/load", "/piles/p/actions/b/load", "/piles/p/actions/c/load"},
	"static tests, stiff":         {"/piles/p/actions/a/load", "/piles/p/actions/b/load", "/piles/p/actions/c/load"},
}

// setLoadOf is the set load of the hand job with these values; later ones
// count before earlier ones.
func setLoadOf(t *testing.T, states []string) float64 {
	a := answer(t, with(t, states...))
	require.NotNil(t, a.SetLoad, "%v: %v %v", states, a.Needs, a.Reasons)
	return a.SetLoad.V
}

// A larger demand, D, gamma_D, T or N, and a smaller k, never lower the set load
// of a pile, whatever its scheme and whichever form of the set load holds.
func TestMoreNeverLowersTheSetLoadOfAPile(t *testing.T) {
	rnd := rand.New(rand.NewSource(11))
	some := func(low, high float64) float64 { return low + (high-low)*rnd.Float64() }
	text := func(v float64, unit string) string { return strconv.FormatFloat(v, 'f', 4, 64) + unit }
	answers := []string{"yes", "no"}
	for scheme, places := range demands {
		for range 8 {
			drag, gamma, dug, settling, k, more := some(1, 200), some(0.5, 1.4), some(1, 200), some(1, 200), some(0.4, 1.6), some(1.01, 1.6)
			at := func(drag, gamma, dug, settling, k float64) []string {
				list := []string{"/criteria/k/drag", text(drag, " kN"), "/criteria/k/dragFactor", text(gamma, ""),
					"/criteria/k/dugAway", text(dug, " kN"), "/criteria/k/settling", text(settling, " kN")}
				if scheme != "static tests, own set loads" { // they tell the set-up themselves
					list = append(list, "/criteria/k/setUp/ratio", text(k, ""))
				}
				return list
			}
			load := some(800, 1500)
			loads := func(load float64) (list []string) {
				for i, place := range places {
					list = append(list, place, text(load*(1+0.1*float64(i)), " kN"))
				}
				return list
			}
			plain := set(schemes[scheme].states, []string{"/criteria/k/setUp/wholePile", answers[rnd.Intn(2)], "/criteria/k/setUp/longTerm", answers[rnd.Intn(2)],
				"/criteria/k/setUp/test", "TP-1", "/criteria/k/setUp/by", "R. Engineer", "/criteria/k/setUp/on", "2026-10-12",
				"/criteria/k/tests/t1/on", "2026-10-12", "/criteria/k/tests/t2/on", "2026-10-12"})
			before := setLoadOf(t, set(plain, loads(load), at(drag, gamma, dug, settling, k)))
			assert.Greater(t, setLoadOf(t, set(plain, loads(load*more), at(drag, gamma, dug, settling, k))), before, scheme)
			for what, changed := range map[string][]string{
				"D": at(drag*more, gamma, dug, settling, k), "gamma_D": at(drag, gamma*more, dug, settling, k),
				"T": at(drag, gamma, dug*more, settling, k), "N": at(drag, gamma, dug, settling*more, k), "k": at(drag, gamma, dug, settling, k/more),
			} {
				assert.GreaterOrEqual(t, setLoadOf(t, set(plain, loads(load), changed)), before, "%s, %s", scheme, what)
			}
		}
	}
}

// With trivial parts each scheme is the single factor, whatever the ground adds.
func TestSchemesOfAPileReduceToTheSingleFactor(t *testing.T) {
	for _, fs := range []float64{1, 1.25, 2, 2.5} {
		inverse, factor := strconv.FormatFloat(1/fs, 'f', 4, 64), strconv.FormatFloat(fs, 'f', 4, 64)
		action := []string{"/piles/p/designAction", "900 kN"}
		tests := set(credited, []string{"/criteria/k/scheme", "static tests", "/criteria/k/xi1", "1", "/criteria/k/xi2", "1",
			"/criteria/k/tests/t1/name", "TP-1", "/criteria/k/tests/t1/resistance", "2000 kN",
			"/criteria/k/combinations/a/factor", factor, "/piles/p/actions/a/load", "900 kN"})
		trivial := map[string][]string{
			"strength reduction": set(action, []string{"/criteria/k/scheme", "strength reduction", "/criteria/k/reduction/basic", inverse}),
			"strength reduction, tests that earn nothing": set(credited, action, []string{"/criteria/k/scheme", "strength reduction", "/criteria/k/reduction/basic", inverse,
				"/criteria/k/reduction/test", "static", "/criteria/k/reduction/tested", inverse, "/criteria/k/reduction/share", "5 %"}),
			"resistance factor":           set(action, []string{"/criteria/k/scheme", "resistance factor", "/criteria/k/resistanceFactor", inverse}),
			"static tests":                tests,
			"static tests, own set loads": set(tests, []string{"/criteria/k/tests/t1/setLoad", "2000 kN"}),
		}
		for _, more := range [][]string{nil,
			{"/criteria/k/drag", "0 kN", "/criteria/k/dugAway", "0 kN", "/criteria/k/settling", "0 kN"},
			{"/criteria/k/drag", "80 kN", "/criteria/k/dragFactor", "1.2", "/criteria/k/dugAway", "60 kN", "/criteria/k/settling", "40 kN", "/criteria/k/setUp/wholePile", "no"},
			{"/criteria/k/setUp/ratio", "1", "/criteria/k/setUp/wholePile", "no"},
		} {
			want := setLoadOf(t, set([]string{"/criteria/k/factor", factor}, more))
			for name, states := range trivial {
				if name == "static tests, own set loads" && len(more) == 4 {
					continue // a second set-up is refused
				}
				assert.InEpsilon(t, want, setLoadOf(t, set(states, more)), 1e-12, "%s, factor %s, %v", name, factor, more)
			}
		}
	}
}

// The perimeter of layers is that of the pile's section where none is typed: 3 m
// of 15 kPa and 1.5 m of 30 kPa hold 90 kPa m by the perimeter.
func TestLayersTakeThePerimeterOfTheSection(t *testing.T) {
	layers := []string{"/criteria/k/layers/a/zone", "dug away", "/criteria/k/layers/a/thickness", "3 m", "/criteria/k/layers/a/resistance", "15 kPa",
		"/criteria/k/layers/b/zone", "dug away", "/criteria/k/layers/b/thickness", "1.5 m", "/criteria/k/layers/b/resistance", "30 kPa"}
	square := set(layers, []string{"/pileTypes/t/shape", "square", "/pileTypes/t/width", "350 mm"})
	assert.InDelta(t, 1800+1.4*90, setLoadOf(t, square), 1e-9)
	assert.InDelta(t, 1800+2*90, setLoadOf(t, set(square, []string{"/criteria/k/perimeter", "2.0 m"})), 1e-9, "what is typed counts before it")
	// A tube of 508 mm: pi x 0.508 = 1.59593 m around, whatever its wall.
	tube := set(layers, []string{"/pileTypes/t/shape", "tube", "/pileTypes/t/width", "508 mm", "/pileTypes/t/wall", "12.5 mm"})
	assert.InDelta(t, 1800+1.5959290680236*90, setLoadOf(t, tube), 1e-9)

	b := working.NewBook("")
	a, _ := judge(with(t, square...)).Pile("p", b)
	require.NotNil(t, a.SetLoad)
	step := b.Find("p/demand/T")
	require.NotNil(t, step)
	assert.Equal(t, "p/section.perimeter", step.Inputs[0].Ref)
	assert.Equal(t, "4*b", b.Find("p/section.perimeter").Rule.Formula)

	for what, section := range map[string][]string{
		"not known": nil, "H section": {"/pileTypes/t/shape", "H", "/pileTypes/t/width", "300 mm"},
		"tapered": {"/pileTypes/t/shape", "timber", "/pileTypes/t/width", "320 mm", "/pileTypes/t/tip", "190 mm"},
	} {
		assert.Contains(t, answer(t, with(t, set(layers, section)...)).Needs, "field.criteria.perimeter", what)
	}
}

// Who says so needs to know which factors counted, and where each stands.
func TestAnAnswerNamesItsFactors(t *testing.T) {
	named := func(states ...string) map[string]string {
		a, _ := judge(with(t, states...)).Pile("p", working.NewPlaces(""))
		all := map[string]string{}
		for _, f := range a.Factors {
			all[f.Key] = f.Ref
		}
		return all
	}
	assert.Equal(t, map[string]string{"factor": "/now/criteria/k/factor"}, named())
	assert.Equal(t, map[string]string{"reduction": "p/demand/phi_g"}, named(schemes["reduction by risk"].states...))
	assert.Equal(t, map[string]string{"reduction": "basis:reduction.low.3"}, named(schemes["reduction by an average"].states...))
	assert.Equal(t, map[string]string{"resistanceFactor": "/now/criteria/k/resistanceFactor"}, named(schemes["resistance factor"].states...))
	assert.Equal(t, map[string]string{"correlationMean": "/now/criteria/k/xi1", "correlationLeast": "/now/criteria/k/xi2",
		"combinationFactor": "/now/criteria/k/combinations/b/factor"}, named(schemes["static tests"].states...))
	assert.Equal(t, map[string]string{"factor": "/now/criteria/k/factor", "dragFactor": "/now/criteria/k/dragFactor", "setUpRatio": "/now/criteria/k/setUp/ratio"}, named(ground...))
	plain, _ := judge(with(t)).Pile("p", nil)
	assert.Equal(t, []assess.Factor(nil), plain.Factors, "a whole job is judged without places")
}
