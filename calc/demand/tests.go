package demand

import (
	"strconv"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Tests is the characteristic value from static tests. The actions come in
// combinations, each with the factor on the resistance that belongs to it; the
// worst governs,
//
//	A = max over combinations of gamma_t F_cd
//
// Where the test piles' own set loads are known, each test tells the set-up of
// its pile, and the characteristic set-up turns the demand into a set load:
//
//	k_i = R_i/F_i, k_d = min(mean of k/xi_1, least k/xi_2)
//	R = A, F_set = R/k_d
//
// Where they are not known, a set must show what the mean of the test piles
// showed, for what they are credited with:
//
//	R_ck = min(mean of R_i/xi_1, least R_i/xi_2)
//	xi = (mean of R_i)/R_ck, R = xi A
//
// which is the same with all set loads equal to the mean resistance. xi is not
// left out, because a set hold is no test: it earns no number of tests.
//
// R_i: resistance in the static test of a pile [kN]; F_i: set load of that pile
// [kN]; xi_1, xi_2: [CorrelationFigures], at least 1 [-]; F_cd: design action
// [kN]; gamma_t: on the total resistance, above zero [-]. A structure that
// carries load from weak piles to strong ones divides xi_1 and xi_2 by 1.1, xi_1
// not below 1.0.
//
// Source: EN 1997-1:2004, 7.6.2.2 with Table A.9, gamma_t of Tables A.6 to A.8;
// the stiff structure from memory. What turns R_ck into a set load is our own.
// Errors: see [InputError]; set loads are of all tests or of none. Not covered:
// national values, parts of base and shaft, dynamic tests (A.11).
type Tests struct {
	Tests        []Test
	Xi1, Xi2     ratio
	Stiff        bool
	Combinations []Combination
	Credit       Credit
}

// Test is a static test of one pile.
type Test struct {
	Name, On   string
	Kind       string // "static" or blank, or what is refused
	Resistance force
	SetLoad    force // zero: not known
}

// Combination is a combination of actions: the design action and the factor on
// the resistance that belongs to it.
type Combination struct {
	Action force
	Factor ratio
}

// CorrelationFigures returns the ids in calc/basis of xi_1 and xi_2 for n tests,
// n at least 1; five and more have the same. Source: EN 1997-1:2004, Table A.9.
func CorrelationFigures(n int) (xi1, xi2 string) {
	row := strconv.Itoa(max(1, min(n, 5)))
	return "tests.xi1." + row, "tests.xi2." + row
}

// Characteristic returns the characteristic value of a mean and a least one,
//
//	min(mean/xi_1, least/xi_2)
//
// Source: EN 1997-1:2004, 7.6.2.2 (8), formula (7.2).
func Characteristic[T ~float64](mean, least T, xi1, xi2 quantity.Ratio) T {
	return T(min(float64(mean)/float64(xi1), float64(least)/float64(xi2)))
}

func (s Tests) demand(p *pass) (force, error) {
	own, err := s.check()
	if err != nil {
		return force{}, err
	}
	xi1, xi2 := s.Xi1, s.Xi2
	if s.Stiff {
		c, least := figure("tests.stiff"), figure("tests.xi1.least")
		xi1 = working.Put(p.book, StiffMeanRule, "xi_1", max(least.V, xi1.V/c.V), least.In(), xi1.In(), c.In())
		xi2 = working.Put(p.book, StiffLeastRule, "xi_2", xi2.V/c.V, xi2.In(), c.In())
	}
	resistances := make([]force, len(s.Tests))
	for i, t := range s.Tests {
		resistances[i] = t.Resistance
	}
	mean, least := p.spread("R", resistances)
	in := []working.In{mean.In(), xi1.In(), least.In(), xi2.In()}
	p.Characteristic = working.Put(p.book, characteristicRule("R", quantity.Forces), "R_ck", Characteristic(mean.V, least.V, xi1.V, xi2.V), in...)
	if own {
		if p.SetUp.V != 0 {
			return force{}, refuse("demand.setUp.twice", "")
		}
		if err := s.setUp(p, xi1, xi2); err != nil {
			return force{}, err
		}
		return s.worst(p, true)
	}
	xi := working.Put(p.book, SpreadRule, "xi", quantity.Ratio(float64(mean.V)/float64(p.Characteristic.V)), mean.In(), p.Characteristic.In())
	a, err := s.worst(p, false)
	if err != nil {
		return force{}, err
	}
	return p.last(TestsRule, quantity.Force(float64(xi.V)*float64(a.V)), xi.In(), a.In()), nil
}

// check looks at all inputs; own says that the test piles have set loads.
func (s Tests) check() (own bool, err error) {
	if len(s.Tests) == 0 {
		return false, refuse("demand.tests.none", "")
	}
	known := 0
	for i, t := range s.Tests {
		n := strconv.Itoa(i + 1)
		kind := t.Kind
		if kind == "" {
			kind = "static"
		}
		if kind == "dynamic" {
			return false, &InputError{Code: "demand.testUnknown", Text: kind, Allowed: "static", Example: "static"}
		}
		if err := first(s.Credit.For(kind), ofLoad("R_"+n, t.Resistance).positive(), ofLoad("F_"+n, t.SetLoad).from(0)); err != nil {
			return false, err
		}
		if t.SetLoad.V != 0 {
			known++
		}
	}
	if known != 0 && known != len(s.Tests) {
		return false, refuse("demand.tests.some", strconv.Itoa(known)+"/"+strconv.Itoa(len(s.Tests)))
	}
	if len(s.Combinations) == 0 {
		return false, refuse("demand.combinations", "")
	}
	return known > 0, first(ofRatio("xi_1", s.Xi1, "1.4").from(1), ofRatio("xi_2", s.Xi2, "1.4").from(1))
}

// setUp puts the characteristic set-up of the test piles. One above 1 needs
// what any set-up above 1 needs: a named test and its day; the person stands in
// the credit.
func (s Tests) setUp(p *pass, xi1, xi2 ratio) error {
	ratios := make([]ratio, len(s.Tests))
	for i, t := range s.Tests {
		ratios[i] = working.Put(p.book, OwnSetUpRule, "k_"+strconv.Itoa(i+1),
			quantity.Ratio(float64(t.Resistance.V)/float64(t.SetLoad.V)), t.Resistance.In(), t.SetLoad.In())
	}
	mean, least := spreadOf(p.book, "k", quantity.Dimensionless, 4, ratios)
	p.SetUp = working.Put(p.book, characteristicRule("k", quantity.Dimensionless), "k_d", Characteristic(mean.V, least.V, xi1.V, xi2.V),
		mean.In(), xi1.In(), least.In(), xi2.In())
	if p.SetUp.V <= 1 {
		return nil
	}
	for i, t := range s.Tests {
		if err := (SetUp{Test: t.Name, By: s.Credit.By, On: t.On}).evidence("R_" + strconv.Itoa(i+1)); err != nil {
			return err
		}
	}
	return nil
}

// worst puts the demand of each combination and the largest of them.
func (s Tests) worst(p *pass, last bool) (force, error) {
	list := make([]force, len(s.Combinations))
	single := func(v quantity.Force, in ...working.In) force {
		return working.Put(p.book, CombinationRule, "A_1", v, in...)
	}
	if last {
		single = func(v quantity.Force, in ...working.In) force { return p.last(CombinationRule, v, in...) }
	}
	for i, c := range s.Combinations {
		if err := first(ofLoad("F_cd", c.Action).positive(), ofRatio("gamma_t", c.Factor, "1.1").positive()); err != nil {
			return force{}, err
		}
		v := quantity.Force(float64(c.Factor.V) * float64(c.Action.V))
		if len(list) == 1 {
			list[i] = single(v, c.Factor.In(), c.Action.In())
		} else {
			list[i] = working.Put(p.book, CombinationRule, "A_"+strconv.Itoa(i+1), v, c.Factor.In(), c.Action.In())
		}
		if list[i].V > list[p.Governs].V {
			p.Governs = i
		}
	}
	a := list[p.Governs]
	p.Short = float64(a.V) > float64(p.Characteristic.V)*(1+quantity.Slack)
	if len(list) == 1 {
		return a, nil
	}
	rule := overList("max", "A", "A", "combinationDemand", quantity.Forces, 1, len(list))
	rule.Key, rule.Basis = "demand.worst", "demand.tests"
	if last {
		rule.Symbol = "F_set"
		return p.last(rule, a.V, ins(list)...), nil
	}
	return working.Put(p.book, rule, "A", a.V, ins(list)...), nil
}

func ins[T ~float64](list []working.Of[T]) []working.In {
	in := make([]working.In, len(list))
	for i, v := range list {
		in[i] = v.In()
	}
	return in
}

func (p *pass) spread(name string, list []force) (mean, least force) {
	return spreadOf(p.book, name, quantity.Forces, 1, list)
}

// spreadOf puts the mean and the least of a list; one value is both.
func spreadOf[T ~float64](b *working.Book, name string, d quantity.Dimension, decimals int, list []working.Of[T]) (mean, least working.Of[T]) {
	if len(list) == 1 {
		return list[0], list[0]
	}
	sum, small := 0.0, float64(list[0].V)
	for _, v := range list {
		sum += float64(v.V)
		small = min(small, float64(v.V))
	}
	key := map[string]string{"R": "testResistance", "k": "ownSetUp"}[name]
	m, l := overList("sum", name+"_m", name, key, d, decimals, len(list)), overList("min", name+"_min", name, key, d, decimals, len(list))
	m.Formula += "/" + strconv.Itoa(len(list))
	m.Key, l.Key = "demand.mean", "demand.least"
	return working.Put(b, m, m.Symbol, T(sum/float64(len(list))), ins(list)...), working.Put(b, l, l.Symbol, T(small), ins(list)...)
}

// overList is a rule such as min(R_1, R_2).
func overList(function, symbol, name, key string, d quantity.Dimension, decimals, n int) working.Rule {
	r := working.Rule{Symbol: symbol, Dim: d, Decimals: decimals, Basis: "demand.tests", Formula: function + "("}
	for i := 1; i <= n; i++ {
		if i > 1 {
			r.Formula += ", "
		}
		r.Formula += name + "_" + strconv.Itoa(i)
		r.Inputs = append(r.Inputs, working.Symbol{Name: name + "_" + strconv.Itoa(i), Dim: d, Key: key})
	}
	r.Formula += ")"
	return r
}

// characteristicRule is the formula of [Characteristic] for resistances "R" and
// set-up ratios "k". Inputs: mean, xi_1, least, xi_2.
func characteristicRule(name string, d quantity.Dimension) working.Rule {
	r := working.Rule{Key: "demand.characteristic", Symbol: "R_ck", Dim: d, Decimals: 1, Basis: "demand.tests"}
	mean, least := "meanResistance", "leastResistance"
	if name == "k" {
		r.Key, r.Symbol, r.Decimals, r.Basis = "demand.ownSetUp", "k_d", 4, "demand.ownSetUp"
		mean, least = "meanSetUp", "leastSetUp"
	}
	r.Formula = "min(" + name + "_m/xi_1, " + name + "_min/xi_2)"
	r.Inputs = []working.Symbol{{Name: name + "_m", Dim: d, Key: mean}, symbolXi1, {Name: name + "_min", Dim: d, Key: least}, symbolXi2}
	return r
}

var (
	symbolXi1   = plain("xi_1", "correlationMean")
	symbolXi2   = plain("xi_2", "correlationLeast")
	symbolStiff = plain("c", "stiffFactor")
)

// The rules of [Tests].
var (
	StiffMeanRule = working.Rule{Key: "demand.stiff.mean", Symbol: "xi_1", Formula: "max(xi_0, xi_1/c)", Decimals: 4, Basis: "demand.stiff",
		Inputs: []working.Symbol{plain("xi_0", "correlationFloor"), symbolXi1, symbolStiff}}
	StiffLeastRule = working.Rule{Key: "demand.stiff.least", Symbol: "xi_2", Formula: "xi_2/c", Decimals: 4, Basis: "demand.stiff",
		Inputs: []working.Symbol{symbolXi2, symbolStiff}}
	OwnSetUpRule = working.Rule{Key: "demand.ownSetUp.each", Symbol: "k_i", Formula: "R_i/F_i", Decimals: 4, Basis: "demand.ownSetUp",
		Inputs: []working.Symbol{load("R_i", "testResistance"), load("F_i", "testSetLoad")}}
	SpreadRule = working.Rule{Key: "demand.spread", Symbol: "xi", Formula: "R_m/R_ck", Decimals: 4, Basis: "demand.spread",
		Inputs: []working.Symbol{load("R_m", "meanResistance"), load("R_ck", "characteristicResistance")}}
	CombinationRule = working.Rule{Key: "demand.combination", Symbol: "A", Formula: "gamma_t*F_cd", Dim: quantity.Forces, Decimals: 1, Basis: "demand.tests",
		Inputs: []working.Symbol{plain("gamma_t", "combinationFactor"), load("F_cd", "combinationAction")}}
	TestsRule = working.Rule{Key: "demand.tests", Symbol: "F_set", Formula: "xi*A", Dim: quantity.Forces, Decimals: 1, Basis: "demand.spread",
		Inputs: []working.Symbol{plain("xi", "spread"), load("A", "combinationDemand")}}
)
