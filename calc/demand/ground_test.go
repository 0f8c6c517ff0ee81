package demand_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	. "gaugewright/calc/demand"
	"gaugewright/calc/published"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// The two forms, by hand: R = 2 x 900 = 1800, D = 100, gamma_D = 1.2, T = 60,
// N = 40, k = 0.8.
func TestBothForms(t *testing.T) {
	s := Single{r(2), kN(900)}
	g := Ground{Drag: kN(100), DragFactor: r(1.2), DugAway: kN(60), Settling: kN(40), SetUp: SetUp{Ratio: r(0.8), WholePile: "no"}}
	got, b := compute(t, s, g)
	published.Check(t, byHand, "(1800 + 1.2 x 100)/0.8 + 60 + 40 [kN]", "2500", float64(got.SetLoad.V), published.Within(1e-9, ""))
	assert.Equal(t, "(R + gamma_D*D)/k + T + N", b.Find("setLoad").Rule.Formula)
	assert.Equal(t, "R", b.Find("demand/R").Rule.Symbol)
	assert.False(t, got.Within)

	g.SetUp.WholePile, g.SetUp.LongTerm = "yes", "yes"
	got, b = compute(t, s, g)
	published.Check(t, byHand, "(1800 + 1.2 x 100 + 60 + 40)/0.8 [kN]", "2525", float64(got.SetLoad.V), published.Within(1e-9, ""))
	assert.Equal(t, "(R + gamma_D*D + T + N)/k", b.Find("setLoad").Rule.Formula)
	assert.True(t, got.Within)

	g.SetUp.LongTerm = "no"
	got, _ = compute(t, s, g)
	assert.False(t, got.Within, "T and N felt while pressing are not divided")

	for _, blank := range []SetUp{{Ratio: r(0.8)}, {Ratio: r(0.8), WholePile: "yes"}} {
		g.SetUp = blank
		refused(t, "demand.setUp.which", s, g)
	}
	g.DugAway, g.Settling = kN(0), kN(0)
	got, b = compute(t, s, g)
	// Without T and N both forms are one, and it is not asked.
	published.Check(t, byHand, "(1800 + 1.2 x 100)/0.8 [kN]", "2400", float64(got.SetLoad.V), published.Within(1e-9, ""))
	assert.Equal(t, "(R + gamma_D*D)/k", b.Find("setLoad").Rule.Formula)

	_, b = compute(t, s, Ground{DugAway: kN(60)})
	assert.Equal(t, "R + T", b.Find("setLoad").Rule.Formula)
	_, b = compute(t, s, Ground{SetUp: SetUp{Ratio: r(1)}})
	assert.Equal(t, "R/k", b.Find("setLoad").Rule.Formula, "what a person entered is shown")
}

func TestSetUpNeedsEvidence(t *testing.T) {
	s := Single{r(2), kN(900)}
	refused(t, "demand.setUp.test", s, Ground{SetUp: SetUp{Ratio: r(1.1)}})
	refused(t, "demand.setUp.by", s, Ground{SetUp: SetUp{Ratio: r(1.1), Test: "TP-1"}})
	refused(t, "demand.setUp.on", s, Ground{SetUp: SetUp{Ratio: r(1.1), Test: "TP-1", By: "X"}})
	full := SetUp{Ratio: r(1.6), Test: "TP-1", By: "X", On: "2026-10-12"}
	got, b := compute(t, s, Ground{SetUp: full})
	assert.Equal(t, []string{"note.setUpHigh", "note.noGroup"}, codes(Notes(b, s, Ground{SetUp: full}, got, Pile{})))
	refused(t, "demand.notPositive", s, Ground{SetUp: SetUp{Ratio: r(-1)}})
	refused(t, "demand.dragFactor", s, Ground{Drag: kN(10)})
	refused(t, "demand.notPositive", s, Ground{Drag: kN(10), DragFactor: r(-1)})
	for _, g := range []Ground{{Drag: kN(-1)}, {DugAway: kN(-1)}, {Settling: kN(-1)}} {
		refused(t, "demand.below", s, g)
	}
	refused(t, "demand.notFinite", s, Ground{Settling: kN(math.Inf(1) - math.Inf(1))})
}

func TestShaftOfLayers(t *testing.T) {
	layer := func(h, q float64) Layer {
		return Layer{m(h), working.Of[quantity.Pressure]{V: quantity.Pressure(q), Ref: "/q"}}
	}
	b := working.NewBook("")
	// A square pile of 350 mm: 1.4 m around. 3 m of 15 kPa and 1.5 m of 30 kPa
	// hold 1.4 (45 + 45) = 126 kN.
	T, err := Shaft(b, "T", []Layer{layer(3, 15), layer(1.5, 30)}, m(1.4))
	require.NoError(t, err)
	published.Check(t, byHand, "shaft of 1.4 m in 3 m of 15 and 1.5 m of 30 kPa [kN]", "126", float64(T.V), published.Within(1e-9, ""))
	assert.Equal(t, "demand/T", T.Ref)
	N, err := Shaft(b, "N", []Layer{layer(2, 10)}, m(1.4))
	require.NoError(t, err)
	published.Check(t, byHand, "shaft of 1.4 m in 2 m of 10 kPa [kN]", "28", float64(N.V), published.Within(1e-9, ""))
	sound(t, b)
	none, err := Shaft(b, "T", nil, m(0))
	require.NoError(t, err)
	assert.Zero(t, none)
	for symbol, c := range map[string]struct {
		layer Layer
		U     float64
	}{"U": {layer(1, 1), 0}, "h_1": {layer(0, 1), 1}, "q_1": {layer(1, -1), 1}} {
		_, err := Shaft(nil, "T", []Layer{c.layer}, m(c.U))
		var e *InputError
		require.ErrorAs(t, err, &e)
		assert.Equal(t, "demand.notPositive", e.Code)
		assert.Equal(t, symbol, e.Symbol)
	}
}

func codes(list []Note) []string {
	var said []string
	for _, n := range list {
		said = append(said, n.Code)
	}
	return said
}

func TestNotes(t *testing.T) {
	s, pile := Single{r(2.2), kN(900)}, Pile{WorkingLoad: kN(900), Embedded: m(7.5), Width: m(0.35)}
	g := Ground{Drag: kN(100), DragFactor: r(1.2), DugAway: kN(60)}
	got, b := compute(t, s, g)
	list := Notes(b, s, g, got, pile)
	sound(t, b)
	assert.Equal(t, []string{"note.unloading", "note.neutralPlane", "note.shortPile", "note.slender", "note.noGroup"}, codes(list))
	assert.Equal(t, 1000.0, list[1].Values[0].V, "P + D, without a factor")
	assert.Equal(t, 8.0, list[2].Values[1].V)
	assert.InDelta(t, 12.95, list[3].Values[1].V, 1e-12, "37 widths of 350 mm")

	s.Factor = r(2.6)
	assert.NotContains(t, codes(Notes(b, s, g, got, pile)), "note.slender", "the factor is above 2.5 already")
	s.Factor, pile.Embedded = r(2.2), m(12.95)
	assert.NotContains(t, codes(Notes(b, s, g, got, pile)), "note.slender")
	assert.NotContains(t, codes(Notes(b, s, g, got, pile)), "note.shortPile")

	// Another scheme has a factor in effect: 1000/0.5 over 700 is 2.86.
	other := Reduction{Action: kN(1000), Basic: r(0.5), Risk: Risk{Average: r(2)}}
	got, b = compute(t, other, Ground{})
	short := Pile{WorkingLoad: kN(700), Embedded: m(9), Width: m(0.35)}
	assert.Equal(t, []string{"note.ratingsUnused", "note.noGroup"}, codes(Notes(b, other, Ground{}, got, short)))
	sound(t, b)
	short.WorkingLoad = kN(0)
	assert.Contains(t, codes(Notes(b, other, Ground{}, got, short)), "note.slender", "a factor that is not known is not above 2.5")
	assert.Contains(t, codes(Notes(b, other, Ground{Drag: kN(1)}, got, short)), "note.neutralPlaneOpen")

	tests := static(1200, 1400)
	got, b = compute(t, tests, Ground{})
	list = Notes(b, tests, Ground{}, got, Pile{})
	assert.Equal(t, "note.testsShort", list[0].Code)
	assert.InDelta(t, 1000, list[0].Values[0].V, 1e-9)
}

// schemes makes the four schemes so that each demands something of a load.
func schemes(load float64) map[string]Scheme {
	some := static(1900, 2100)
	some.Combinations = []Combination{{kN(load), r(1.1)}, {kN(0.9 * load), r(1.2)}}
	own := withSetLoads(static(1900, 2100), 1800, 1700)
	own.Combinations = some.Combinations
	return map[string]Scheme{
		"single":    Single{r(2), kN(load)},
		"reduction": Reduction{Action: kN(load), Risk: Risk{Average: r(2.4), Redundancy: "low"}, Test: "static", Share: r(0.03), Credit: person},
		"factor":    ResistanceFactor{Load: kN(load), Factor: r(0.65)},
		"tests":     some, "tests, own set loads": own,
	}
}

// A larger demand, T, N, D or gamma_D, and a smaller k, never lower the set
// load, whatever scheme and form.
func TestMoreNeverLowersTheSetLoad(t *testing.T) {
	rnd := rand.New(rand.NewSource(7))
	some := func(most float64) float64 { return most * (0.05 + rnd.Float64()) }
	for range 100 {
		load := some(1500)
		yes := []string{"yes", "no"}
		set := SetUp{Ratio: r(some(1.9)), WholePile: yes[rnd.Intn(2)], LongTerm: yes[rnd.Intn(2)], Test: "TP-1", By: "X", On: "2026-10-12"}
		g := Ground{kN(some(200)), r(some(1.4)), kN(some(200)), kN(some(200)), set}
		more := some(1)
		changes := []func(g *Ground){
			func(g *Ground) { g.Drag.V *= quantity.Force(1 + more) },
			func(g *Ground) { g.DragFactor.V *= quantity.Ratio(1 + more) },
			func(g *Ground) { g.DugAway.V *= quantity.Force(1 + more) },
			func(g *Ground) { g.Settling.V *= quantity.Force(1 + more) },
			func(g *Ground) { g.SetUp.Ratio.V /= quantity.Ratio(1 + more) },
		}
		heavier := schemes(load * (1 + more))
		for name, s := range schemes(load) {
			at := g
			if name == "tests, own set loads" {
				at.SetUp.Ratio = r(0)
			}
			got, _ := compute(t, s, at)
			more, _ := compute(t, heavier[name], at)
			assert.Greater(t, more.SetLoad.V, got.SetLoad.V, name)
			for i, change := range changes {
				changed := at
				change(&changed)
				more, _ := compute(t, s, changed)
				assert.GreaterOrEqual(t, more.SetLoad.V, got.SetLoad.V, "%s, change %d", name, i)
			}
		}
	}
}

// With trivial parts each scheme is the single factor.
func TestSchemesReduceToTheSingleFactor(t *testing.T) {
	for _, fs := range []float64{1, 1.4, 2, 2.5} {
		want, _ := compute(t, Single{r(fs), kN(900)}, Ground{})
		trivial := static(2000)
		trivial.Xi1, trivial.Xi2, trivial.Combinations = r(1), r(1), []Combination{{kN(900), r(fs)}}
		own := withSetLoads(trivial, 2000)
		for name, s := range map[string]Scheme{
			"phi_gb = 1/FS": Reduction{Action: kN(900), Basic: r(1 / fs)},
			"phi_tf <= phi_gb, tests earn nothing": Reduction{Action: kN(900), Basic: r(1 / fs), Tested: r(0.5 / fs),
				Test: "static", Share: r(0.1), Credit: person},
			"phi = 1/FS":                  ResistanceFactor{Load: kN(900), Factor: r(1 / fs)},
			"xi = 1, gamma_t = FS":        trivial,
			"the same, set loads as held": own,
		} {
			for _, g := range []Ground{{}, {SetUp: SetUp{Ratio: r(1)}}} {
				if name == "the same, set loads as held" {
					g = Ground{}
				}
				got, _ := compute(t, s, g)
				assert.InEpsilon(t, float64(want.SetLoad.V), float64(got.SetLoad.V), 1e-12, name)
			}
		}
	}
}
