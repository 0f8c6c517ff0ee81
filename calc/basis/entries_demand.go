package basis

import (
	"slices"
	"strconv"

	"gaugewright/calc/quantity"
)

// Documents of the entries of the set load.
const (
	eurocode7  = "EN 1997-1"
	as2159     = "AS 2159"
	jackedRule = "regional rule for jacked piles"
	weathered  = "Zhang et al., Journal of Geotechnical and Geoenvironmental Engineering"
)

// demandEntries are figures and formulas of the load that must be reached.
var demandEntries = join(riskFigures(), reductionFigures(), testFigures(), demandFigures, packageFigures, demandFormulas)

// RiskKeys are the nine things that the average risk rating is made of: site,
// design, construction.
var RiskKeys = []string{"complexity", "investigation", "data", "experience", "parameters", "method", "results", "control", "monitoring"}

func demandFigure(id, value, document, edition, clause string, mark Mark) Entry {
	return Entry{ID: id, Value: value, Document: document, Edition: edition, Clause: clause, Mark: mark}
}

func seenFirst(i, seen int) Mark {
	if i < seen {
		return Seen
	}
	return Memory
}

// riskFigures are the weights of the ratings and the bounds of the rows.
func riskFigures() []Entry {
	var list []Entry
	for i, w := range []string{"2", "2", "2", "1", "2", "1", "2", "2", "0.5"} {
		list = append(list, demandFigure("risk.weight."+RiskKeys[i], w, as2159, "2009", "Table 4.3.2(A), weight of a risk factor", seenFirst(i, 3)))
	}
	for i, v := range []string{"1.5", "2.0", "2.5", "3.0", "3.5", "4.0", "4.5"} {
		list = append(list, demandFigure("risk.upper."+strconv.Itoa(i+1), v, as2159, "2009",
			"Table 4.3.2(C), upper bound of a row of the average risk rating, which belongs to the row", seenFirst(i, 1)))
	}
	return list
}

// reductionFigures are the basic factors by row, and what tests earn.
func reductionFigures() []Entry {
	var list []Entry
	for redundancy, row := range [][]string{
		{"0.67", "0.61", "0.56", "0.52", "0.48", "0.45", "0.42", "0.40"},
		{"0.76", "0.70", "0.64", "0.60", "0.56", "0.53", "0.50", "0.47"},
	} {
		name := []string{"low", "high"}[redundancy]
		for i, v := range row {
			list = append(list, demandFigure("reduction."+name+"."+strconv.Itoa(i+1), v, as2159, "2009",
				"Table 4.3.2(C), basic reduction factor, "+name+" redundancy", seenFirst(i, 1)))
		}
	}
	return append(list,
		demandFigure("reduction.tested.static", "0.90", as2159, "2009", "4.3.1, factor of a static load test", Memory),
		demandFigure("reduction.tested.dynamic", "0.80", as2159, "2009", "4.3.1, factor of a dynamic load test of a preformed pile", Memory),
		demandFigure("reduction.benefit.static", "1.33", as2159, "2009", "4.3.1, K of static tests", Memory),
		demandFigure("reduction.benefit.dynamic", "1.13", as2159, "2009", "4.3.1, K of dynamic tests", Memory),
		demandFigure("reduction.benefit.offset", "3.3 %", as2159, "2009", "4.3.1, added to the share of piles tested in K", Memory))
}

// PileKinds are the kinds of pile that have factors on the total resistance of
// their own, and the pressed ones, which the standard does not name.
// ResistanceSets are the sets of those factors.
var (
	PileKinds      = []string{"pressed", "driven", "bored", "flight"}
	ResistanceSets = []string{"R1", "R2", "R3", "R4"}
)

// SetFigure is the id of the factor on the total resistance of a kind of pile in
// a set, "" where one of the two is none of the lists.
func SetFigure(kind, set string) string {
	if !slices.Contains(PileKinds, kind) || !slices.Contains(ResistanceSets, set) {
		return ""
	}
	return "tests.gamma." + kind + "." + set[1:]
}

// testFigures are the correlation factors by number of tests, and the factors
// on the total resistance by kind of pile and set.
func testFigures() []Entry {
	var list []Entry
	for i, v := range [][2]string{{"1.40", "1.40"}, {"1.30", "1.20"}, {"1.20", "1.05"}, {"1.10", "1.00"}, {"1.00", "1.00"}} {
		n := strconv.Itoa(i + 1)
		for x, of := range []string{"mean", "least"} {
			list = append(list, demandFigure("tests.xi"+strconv.Itoa(x+1)+"."+n, v[x], eurocode7, "2004",
				"Table A.9, on the "+of+" of so many static tests: "+n+"; five and more have the same", Seen))
		}
	}
	for i, row := range [][]string{{"1.0", "1.1", "1.0", "1.3"}, {"1.15", "1.1", "1.0", "1.5"}, {"1.1", "1.1", "1.0", "1.4"}} {
		kind, table := []string{"driven", "bored", "flight"}[i], "Table A."+strconv.Itoa(6+i)
		for set, v := range row {
			clause := table + ", total resistance in compression, set R" + strconv.Itoa(set+1)
			list = append(list, demandFigure(SetFigure(kind, ResistanceSets[set]), v, eurocode7, "2004", clause, Seen))
			if kind == "driven" {
				list = append(list, demandFigure(SetFigure("pressed", ResistanceSets[set]), v, eurocode7, "2004",
					clause+", of driven piles: pressed piles are not named there, and to take them as driven is our own choice", Own))
			}
		}
	}
	return append(list,
		demandFormula("tests.pressed", "pressed piles as driven ones", own, none, eurocode7+":2004 has no factors for pressed piles; both displace the ground", Own),
		demandFigure("tests.stiff", "1.1", eurocode7, "2004", "7.6.2.2 (9), for a structure that carries load from weak piles to strong ones", Memory),
		demandFigure("tests.xi1.least", "1.0", eurocode7, "2004", "7.6.2.2 (9), factor on the mean not below this", Memory))
}

var demandFigures = []Entry{
	demandFigure("resistance.static", "0.75", "AASHTO LRFD Bridge Design Specifications", "recalled", "10.5.5.2.3, driven piles, a static test in each site condition", Memory),
	demandFigure("resistance.dynamic", "0.65", "AASHTO LRFD Bridge Design Specifications", "recalled", "10.5.5.2.3, driven piles, dynamic tests of at least two piles in each site condition, at least 2 %", Memory),
	demandFigure("setUp.high", "1.5", own, none, "a set-up ratio above this is warned about", Own),
	demandFigure("scope.slender", "37", weathered, "2006", "steel H piles in weathered soils: embedded length over width, below which more is asked", Seen),
	demandFigure("scope.slender.factor", "2.5", weathered, "2006", "steel H piles in weathered soils: the factor lies above this where the pile is shorter", Seen),
	{ID: "scope.short", Value: "8 m", Dim: quantity.Lengths, Document: jackedRule, Edition: "one region",
		Clause: "embedded length below which more repeats are asked", Mark: Seen},
}

// packageFigures are the parts of [Packages] that stand nowhere else.
var packageFigures = []Entry{
	demandFigure("factor.high", "2.5", jackedRule, "one region", "set load over working load, with a hold of 30 s", Seen),
	packagePart("hold.movement", "1 mm", practice, none, "no movement at this", Practice),
	packagePart("hold.high.time", "30 s", jackedRule, "one region", "hold at 2.5 times the working load", Seen),
	packagePart("hold.high.movement", "5 mm", jackedRule, "one region", "movement in a hold at 2.5 times the working load", Seen),
	packagePart("hold.repeated.time", "10 s", jackedRule, "one region", "hold of each pressing, 5 to 10 s", Seen),
	packagePart("hold.repeated.repeats", "3", jackedRule, "one region", "pressings, two to three", Seen),
	packagePart("hold.repeated.short", "5", jackedRule, "one region", "pressings of a pile embedded less than 8 m, three to five", Seen),
	packagePart("hold.long.time", "900 s", jackedRule+", quoted by others", "not seen", "hold of 15 min", SecondHand),
	packagePart("hold.long.movement", "5 mm", jackedRule+", quoted by others", "not seen", "movement in 15 min less than this", SecondHand),
}

func packagePart(id, value, document, edition, clause string, mark Mark) Entry {
	e := demandFigure(id, value, document, edition, clause, mark)
	switch value[len(value)-1] {
	case 's':
		e.Dim = quantity.Times
	case 'm':
		e.Dim = quantity.Lengths
	}
	return e
}

var demandFormulas = []Entry{
	demandFormula("demand.reduction", "F_set = E_d/phi_g", as2159, "2009", "4.3.1, design strength at least the design action", Memory),
	demandFormula("demand.benefit", "K = c p/(p + 3.3 %) <= 1", as2159, "2009", "4.3.1, share of piles tested in per cent", Memory),
	demandFormula("demand.tested", "phi_g = phi_gb + (phi_tf - phi_gb) K >= phi_gb", as2159, "2009", "4.3.1", Memory),
	demandFormula("demand.risk", "ARR = sum of w r/sum of w", as2159, "2009", "4.3.2, average risk rating", Memory),
	demandFormula("demand.risk.row", "a_1 < ARR <= a_2", as2159, "2009", "Table 4.3.2(C), rows include their upper bound", Memory),
	demandFormula("demand.tests", "R_ck = min(R_m/xi_1, R_min/xi_2); A = gamma_t F_cd", eurocode7, "2004", "7.6.2.2 (8) and 7.6.2.1, the worst combination governs", Seen),
	demandFormula("demand.stiff", "xi/1.1, xi_1 >= 1.0", eurocode7, "2004", "7.6.2.2 (9)", Memory),
	demandFormula("demand.ownSetUp", "k_i = R_i/F_i; k_d = min(k_m/xi_1, k_min/xi_2)", own, none,
		"resistance in the test over set load, pile by pile, with the factors of static tests", Own),
	demandFormula("demand.spread", "F_set = xi A, xi = R_m/R_ck", own, none,
		"a set must show what the mean of the test piles showed; a set hold earns no number of tests", Own),
	demandFormula("demand.resistance", "F_set = Q/phi", "AASHTO LRFD Bridge Design Specifications", "recalled", "10.5.5.2.3 and 1.3.2.1", Memory),
	demandFormula("demand.ground", "F_set = (R + gamma_D D)/k + T + N", statics, none,
		"what holds while pressing and will be lost is pressed for as well; what will hang on the pile later is demanded of the rest", Practice),
	demandFormula("demand.wholePile", "F_set = (R + gamma_D D + T + N)/k", statics, none,
		"set-up measured on a whole pile from the same platform, T and N long-term", Practice),
	demandFormula("demand.shaft", "T = U (h_1 q_1 + h_2 q_2 + ...)", statics, none, "shaft resistance of layers, prismatic pile", Practice),
	demandFormula("demand.neutralPlane", "N_np = P + D", statics, none, "load in the pile where the ground settles as the pile does", Practice),
	demandFormula("demand.slender", "L < 37 B", weathered, "2006", "steel H piles in weathered soils", Seen),
}

func demandFormula(id, value, document, edition, clause string, mark Mark) Entry {
	e := demandFigure(id, value, document, edition, clause, mark)
	e.Formula = true
	return e
}
