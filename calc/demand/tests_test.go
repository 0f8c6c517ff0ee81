package demand_test

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"

	"gaugewright/calc/basis"
	. "gaugewright/calc/demand"
	"gaugewright/calc/published"
	"gaugewright/calc/quantity"
)

// static is a scheme of one combination, 1.1 x 1000 kN, with the factors of
// Table A.9.
func static(resistances ...float64) Tests {
	s := Tests{Combinations: []Combination{{Action: kN(1000), Factor: r(1.1)}}, Credit: person}
	for i, v := range resistances {
		s.Tests = append(s.Tests, Test{Name: "TP-" + strconv.Itoa(i+1), On: "2026-10-05", Resistance: kN(v)})
	}
	xi1, xi2 := CorrelationFigures(len(resistances))
	s.Xi1, s.Xi2 = r(basis.Figure(xi1)), r(basis.Figure(xi2))
	return s
}

func withSetLoads(s Tests, loads ...float64) Tests {
	s.Tests = append([]Test(nil), s.Tests...)
	for i, v := range loads {
		s.Tests[i].SetLoad = kN(v)
	}
	return s
}

func TestTablesOfTheFactorsOfTests(t *testing.T) {
	f := factors(t)
	for i, n := range f.StaticTests.N {
		xi1, xi2 := CorrelationFigures(n)
		preset(t, xi1, f.StaticTests.Xi1[i])
		preset(t, xi2, f.StaticTests.Xi2[i])
	}
	more, _ := CorrelationFigures(12)
	assert.Equal(t, "tests.xi1.5", more)
	for kind, row := range f.Gamma {
		for set, v := range row {
			preset(t, "tests.gamma."+kind+"."+strconv.Itoa(set+1), v)
		}
	}
}

// The worked example of Bond and Harris: R_ck of the tests, and the design
// resistance of each combination. Means and least values are those behind the
// printed quotients; the design actions are inputs of the tool, so that the
// example's are only compared with their parts here.
func TestPublishedExample(t *testing.T) {
	e := factors(t).Example
	xi1, xi2 := quantity.Ratio(e.Xi1), quantity.Ratio(e.Xi2)
	mean, least := e.MeanOverXi1*e.Xi1, e.LeastOverXi2*e.Xi2
	ck := Characteristic(quantity.Force(mean), quantity.Force(least), xi1, xi2)
	example := published.Source{Document: "Bond & Harris, worked example on www.eurocode.us", Place: "static tests", Mark: basis.Seen}
	again := published.Worked("Bond & Harris, what the example does not print, recomputed")
	published.Check(t, example, "R_ck [kN]", e.Characteristic.String(), float64(ck), published.Within(1e-9, ""))

	// Five tests with that mean and that least.
	others := (5*mean - least) / 4
	s := static(others, others, least, others, others)
	s.Xi1, s.Xi2, s.Combinations = r(e.Xi1), r(e.Xi2), nil
	worst := 0.0
	for _, c := range e.Combinations {
		action := c.OnPermanent*e.Permanent + c.OnVariable*e.Variable
		assert.InDelta(t, c.Action, action, 1e-9)
		switch what := "R_cd of " + c.Name + " [kN]"; c.Name {
		case "DA1-1":
			published.Check(t, again, what, c.Recomputed.String(), float64(ck)/c.Gamma, published.Printed)
		case "DA1-2":
			published.Check(t, example, what, c.Resistance.String(), float64(ck)/c.Gamma, published.Printed)
		case "DA2":
			published.Check(t, example, what, c.Resistance.String(), float64(ck)/c.Gamma, published.Within(0.75, "the example cuts 3882.7"))
		}
		s.Combinations = append(s.Combinations, Combination{kN(action), r(c.Gamma)})
		worst = max(worst, c.Gamma*action)
	}
	published.Check(t, again, "3075/3882, use of DA2", e.UseDA2.String(), 3075/(float64(ck)/1.1), published.Within(2e-4, "of the resistance as printed"))

	got, b := compute(t, s, Ground{})
	published.Check(t, example, "R_ck of five tests [kN]", e.Characteristic.String(), float64(got.Characteristic.V), published.Within(1e-9, ""))
	assert.Equal(t, 1, got.Governs, "1.5 x 2410 = 3615 is above 1.15 x 3075 = 3536.25 and 1.1 x 3075 = 3382.5")
	assert.InDelta(t, 3615, worst, 1e-9)
	published.Check(t, again, "worst combination, 1.5 x 2410 [kN]", "3615", b.Find("demand/A").Value, published.Within(1e-9, ""))
	assert.False(t, got.Short, "3615 < 4271")
	// The least governs: xi = 1.08 x 5904.9/4612.68.
	assert.InDelta(t, 3615*1.08*5904.9/4612.68, float64(got.SetLoad.V), 1e-6)
}

// Closed forms, each derived in another way than the code does.
func TestClosedFormsOfStaticTests(t *testing.T) {
	// One test: all is divided by xi = 1.4, so a set is 1.4 x 1.1 x 1000.
	got, b := compute(t, static(1950), Ground{})
	published.Check(t, byHand, "set load of one test [kN]", "1540", float64(got.SetLoad.V), published.Within(1e-9, ""))
	assert.Nil(t, b.Find("demand/R_m"), "one test is mean and least itself")
	assert.False(t, got.Short, "1950/1.4 = 1393 carries 1100")

	// Equal tests: only xi_1 counts. Three: 1.2 x 1100.
	got, _ = compute(t, static(2000, 2000, 2000), Ground{})
	published.Check(t, byHand, "set load of three equal tests [kN]", "1320", float64(got.SetLoad.V), published.Within(1e-9, ""))
	// Stiff: 1.2/1.1 x 1100 = 1200; five tests stay at 1.0: 1100.
	s := static(2000, 2000, 2000)
	s.Stiff = true
	got, _ = compute(t, s, Ground{})
	published.Check(t, byHand, "set load of three equal tests, stiff [kN]", "1200", float64(got.SetLoad.V), published.Within(1e-9, ""))
	s = static(2000, 2000, 2000, 2000, 2000)
	s.Stiff = true
	got, _ = compute(t, s, Ground{})
	published.Check(t, byHand, "set load of five equal tests, stiff [kN]", "1100", float64(got.SetLoad.V), published.Within(1e-9, ""))

	// The least governs: 1500 and 2500, mean 2000: 2000/1.3 = 1538, 1500/1.2 =
	// 1250. xi = 1.6, a set is 1760.
	got, _ = compute(t, static(1500, 2500), Ground{})
	published.Check(t, byHand, "R_ck of 1500 and 2500 kN [kN]", "1250", float64(got.Characteristic.V), published.Within(1e-9, ""))
	published.Check(t, byHand, "set load of tests of 1500 and 2500 kN [kN]", "1760", float64(got.SetLoad.V), published.Within(1e-9, ""))
	got, _ = compute(t, static(1200, 1400), Ground{})
	assert.True(t, got.Short, "1300/1.3 = 1000 does not carry 1100")

	// With own set loads: k 1.25 and 1.0, mean 1.125. 1.125/1.3 = 0.86538,
	// 1.0/1.2 = 0.83333. A set is 1100/0.83333 = 1320.
	got, b = compute(t, withSetLoads(static(2000, 1800), 1600, 1800), Ground{})
	assert.InDelta(t, 1/1.2, float64(got.SetUp.V), 1e-12)
	published.Check(t, byHand, "set load of tests with own set loads [kN]", "1320", float64(got.SetLoad.V), published.Within(1e-9, ""))
	published.Check(t, byHand, "demand on tests with own set loads [kN]", "1100", float64(got.Demanded.V), published.Within(1e-9, ""))
	assert.Equal(t, "R/k", b.Find("setLoad").Rule.Formula)

	// All set loads equal to the mean of the resistances: the same as without.
	without, _ := compute(t, static(1500, 2500), Ground{})
	with, _ := compute(t, withSetLoads(static(1500, 2500), 2000, 2000), Ground{})
	assert.InDelta(t, float64(without.SetLoad.V), float64(with.SetLoad.V), 1e-9)
}

func TestStaticTestsRefuse(t *testing.T) {
	for code, s := range map[string]Tests{
		"demand.tests.none":   static(),
		"demand.tests.some":   withSetLoads(static(2000, 1800), 1600),
		"demand.combinations": {Tests: static(2000).Tests, Credit: person},
		"demand.credit.by":    {Tests: static(2000).Tests},
	} {
		refused(t, code, s, Ground{})
	}
	s := static(2000)
	s.Tests[0].Kind = "dynamic"
	refused(t, "demand.testUnknown", s, Ground{})
	s = static(2000)
	s.Xi1 = r(0.9)
	refused(t, "demand.below", s, Ground{})
	s = static(2000)
	s.Tests[0].Resistance = kN(math.NaN())
	refused(t, "demand.notFinite", s, Ground{})
	s = static(2000)
	s.Combinations[0].Action = kN(0)
	refused(t, "demand.notPositive", s, Ground{})

	// A set-up above 1 needs the names and days of the tests; no second k.
	s = withSetLoads(static(2000), 1000) // 2.0/1.4 = 1.43
	got, _ := compute(t, s, Ground{})
	assert.Greater(t, float64(got.SetUp.V), 1.0)
	refused(t, "demand.setUp.twice", s, Ground{SetUp: SetUp{Ratio: r(0.8)}})
	s.Tests[0].On = ""
	refused(t, "demand.setUp.on", s, Ground{})
	s.Tests[0].Name = ""
	refused(t, "demand.setUp.test", s, Ground{})
}
