package rig_test

import (
	"encoding/csv"
	"math/rand"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	"gaugewright/calc/published"
	"gaugewright/calc/quantity"
	. "gaugewright/calc/rig"
	"gaugewright/calc/working"
)

var (
	cylinders = published.Worked("forces of ISO 3320 cylinders, recomputed with exact pi")
	// byHand are values that were worked out apart from the code.
	byHand = published.Worked("rigs, feet, grip and budgets, by hand from statics")
)

// testdata/cylinders_metric.csv: areas and forces of the usual ISO 3320 bore
// and rod pairs, recomputed with exact pi; the 80/40 mm row agrees with a
// published page (105.6 and 79.2 kN at 210 bar).
func TestAreasAndForcesOfMetricCylinders(t *testing.T) {
	file, err := os.Open("../../testdata/cylinders_metric.csv")
	require.NoError(t, err)
	defer file.Close()
	r := csv.NewReader(file)
	r.Comment = '#'
	rows, err := r.ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 20)
	num := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		require.NoError(t, err)
		return v
	}
	mm, bar := quantity.Must("mm"), quantity.Must("bar")
	for _, row := range rows[1:] {
		group := Group{Number: 1, Bore: quantity.Length(mm.Coherent(num(row[0]))), Rod: quantity.Length(mm.Coherent(num(row[1]))), Side: BoreSide}
		bore, err := Area([]Group{group})
		require.NoError(t, err)
		group.Side = RodSide
		ring, err := Area([]Group{group})
		require.NoError(t, err)
		group.Side = Joined
		rod, err := Area([]Group{group})
		require.NoError(t, err)
		size := cylinders.At(row[0] + "/" + row[1] + " mm")
		published.Check(t, size, "bore area [mm2]", row[2], float64(bore)*1e6, published.Printed)
		published.Check(t, size, "ring area [mm2]", row[3], float64(ring)*1e6, published.Printed)
		published.Check(t, size, "bore area over ring area", row[4], float64(bore/ring), published.Printed)
		assert.InDelta(t, float64(bore), float64(ring)+float64(rod), 1e-15, "bore = ring + rod")
		for i, pressure := range []float64{100, 160, 210, 250} {
			p := quantity.Pressure(bar.Coherent(pressure))
			at := " at " + strconv.Itoa(int(pressure)) + " bar [kN]"
			published.Check(t, size, "push"+at, row[5+i], float64(Load(1, bore, p, 0)), published.Printed)
			published.Check(t, size, "pull"+at, row[9+i], float64(Load(1, ring, p, 0)), published.Printed)
			if row[0] == "80" && row[1] == "40" && pressure == 210 {
				page := published.Source{Document: "a page on cylinder forces, not named", Place: "80/40 mm", Mark: basis.SecondHand}
				published.Check(t, page, "push"+at, "105.6", float64(Load(1, bore, p, 0)), published.Printed)
				published.Check(t, page, "pull"+at, "79.2", float64(Load(1, ring, p, 0)), published.Printed)
			}
		}
	}
}

func TestAreaRefuses(t *testing.T) {
	for want, groups := range map[error][]Group{
		ErrNoGroups: nil,
		ErrBore:     {{Number: 2, Bore: -0.2, Side: BoreSide}},
		ErrRod:      {{Number: 2, Bore: 0.2, Rod: 0.2, Side: RodSide}},
		ErrSide:     {{Number: 2, Bore: 0.2, Rod: 0.1, Side: 'x'}},
	} {
		_, err := Area(groups)
		assert.ErrorIs(t, err, want)
	}
	_, err := Area([]Group{{Number: 0, Bore: 0.2, Side: BoreSide}})
	assert.ErrorIs(t, err, ErrNoGroups)
	_, err = Area([]Group{{Number: 1, Bore: 0.2, Rod: 0, Side: Joined}})
	assert.ErrorIs(t, err, ErrRod)
}

func TestReadingIsTheInverseOfLoad(t *testing.T) {
	rnd := rand.New(rand.NewSource(3))
	for range 10000 {
		eta := quantity.Ratio(0.5 + rnd.Float64()/2)
		a := quantity.Area(0.01 + rnd.Float64())
		w := quantity.Force(rnd.Float64() * 100)
		p := quantity.Pressure(100 + rnd.Float64()*50000)
		require.InEpsilon(t, float64(p), float64(Reading(Load(eta, a, p, w), w, eta, a)), 1e-11)
		require.Greater(t, Load(eta, a, p+1, w), Load(eta, a, p, w))
	}
}

// Statics by hand: 180 t of rig with 40 t of ballast weigh 220 x 9.80665 =
// 2157.463 kN; nine tenths are 1941.7167 kN. With 30 kN beside the mass:
// 0.9 x 2187.463 = 1968.7167 kN.
func TestReaction(t *testing.T) {
	published.Check(t, byHand, "nine tenths of 220 t [kN]", "1941.7167", float64(Reaction(0.9, 180, 40, 30, true)), published.Within(1e-9, ""))
	published.Check(t, byHand, "nine tenths of 220 t and 30 kN [kN]", "1968.7167", float64(Reaction(0.9, 180, 40, 30, false)), published.Within(1e-9, ""))

	limit := Reaction(0.9, 180, 40, 30, true)
	// (2100 - 1941.7167)/(0.9 x 9.80665) = 17.934 t, in steps of 0.1 t: 18.0 t.
	dm := BallastFor(2100, limit, 0.9, 0.1)
	published.Check(t, byHand, "ballast for 2100 kN [t]", "18.0", float64(dm), published.Within(1e-9, ""))
	assert.GreaterOrEqual(t, float64(Reaction(0.9, 180, 40+dm, 30, true)), 2100.0, "with that ballast the limit is not below the load")
	assert.Less(t, float64(Reaction(0.9, 180, 40+dm-0.1, 30, true)), 2100.0, "one step less is not enough")
	assert.Negative(t, float64(BallastFor(1900, limit, 0.9, 0.1)))
}

func TestGaugeLimit(t *testing.T) {
	published.Check(t, byHand, "three quarters of 40 MPa [kPa]", "30000", float64(GaugeLimit(0.75, 40000)), published.Within(1e-9, ""))
}

// Every rule, evaluated from its text, gives what its function gives.
func TestRulesAgreeWithTheirFunctions(t *testing.T) {
	b := working.NewBook("")
	groups := []Group{{4, 0.2, 0.14, BoreSide}, {2, 0.25, 0.18, RodSide}, {1, 0.2, 0.11, Joined}}
	area, err := Area(groups)
	require.NoError(t, err)
	rule := AreaRule(groups)
	working.Put(b, rule, "area", area, AreaInputs(groups, func(int, string) string { return "" })...)
	working.Put(b, LoadRule, "load", Load(0.95, area, 15000, 30), working.In{V: 0.95}, working.In{V: float64(area)}, working.In{V: 15000}, working.In{V: 30})
	working.Put(b, ReadingRule, "reading", Reading(1800, 30, 0.95, area), working.In{V: 1800}, working.In{V: 30}, working.In{V: 0.95}, working.In{V: float64(area)})
	for _, in := range []bool{true, false} {
		inputs := []working.In{{V: 0.9}, {V: 180}, {V: 40}, {V: quantity.Gravity}}
		if !in {
			inputs = append(inputs, working.In{V: 30})
		}
		working.Put(b, ReactionRule(in), "reaction"+strconv.FormatBool(in), Reaction(0.9, 180, 40, 30, in), inputs...)
	}
	working.Put(b, BallastRule, "ballast", BallastFor(2100, 1941.7167, 0.9, 0.1), working.In{V: 2100}, working.In{V: 1941.7167}, working.In{V: 0.9}, working.In{V: quantity.Gravity}, working.In{V: 0.1})
	working.Put(b, GaugeRule, "gauge", GaugeLimit(0.75, 40000), working.In{V: 0.75}, working.In{V: 40000})
	require.Len(t, b.Steps(), 7)
	for _, s := range b.Steps() {
		difference, err := s.Check()
		require.NoError(t, err, s.ID)
		assert.Less(t, difference, 1e-12, s.ID)
	}
}
