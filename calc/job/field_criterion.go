package job

import (
	"gaugewright/calc/basis"
	"gaugewright/calc/demand"
	"gaugewright/calc/quantity"
)

// criterionFields describe what the design demands of a set: the scheme with
// its inputs, what the ground adds to or takes from the load, the founding
// rule and the hold. Loads here are for all piles of the criterion; a pile may
// state its own.
var criterionFields = join([]Field{
	words("/criteria/*/name"), words("/criteria/*/package"),
	choice("/criteria/*/scheme", "single factor", "strength reduction", "static tests", "resistance factor"),
	ratio("/criteria/*/factor", "", 1, 10, false),
	words("/criteria/*/basis"),

	// Strength reduction.
	ratio("/criteria/*/reduction/basic", "", 0, 1, true), ratio("/criteria/*/reduction/tested", "", 0, 1, true),
	choice("/criteria/*/reduction/test", tests...), ratio("/criteria/*/reduction/share", "%", 0, 1, false),
	ratio("/criteria/*/reduction/risk", "", 1, 5, false), choice("/criteria/*/reduction/redundancy", "low", "high"),
}, risks(), []Field{
	// Characteristic value from static tests.
	words("/criteria/*/tests/*/name"), force("/criteria/*/tests/*/resistance", true), force("/criteria/*/tests/*/setLoad", true),
	date("/criteria/*/tests/*/on"), choice("/criteria/*/tests/*/kind", "static", demand.SetHold),
	ratio("/criteria/*/xi1", "", 1, 2, false), ratio("/criteria/*/xi2", "", 1, 2, false), yesNo("/criteria/*/stiff"),
	choice("/criteria/*/pileKind", basis.PileKinds...),
	words("/criteria/*/combinations/*/name"), ratio("/criteria/*/combinations/*/factor", "", 0, 5, true),
	choice("/criteria/*/combinations/*/set", basis.ResistanceSets...), // of a table, where no factor is typed
	// Resistance factor.
	ratio("/criteria/*/resistanceFactor", "", 0, 1, true), choice("/criteria/*/resistanceTest", tests...),
	// Credit for tests is entered by a person, never taken from holds.
	words("/criteria/*/credit/by"), words("/criteria/*/credit/why"), date("/criteria/*/credit/on"),

	force("/criteria/*/drag", false), ratio("/criteria/*/dragFactor", "", 0, 5, false),
	force("/criteria/*/dugAway", false), force("/criteria/*/settling", false),
	// Or made of layers along the pile.
	words("/criteria/*/layers/*/name"), choice("/criteria/*/layers/*/zone", "dug away", "settling"),
	length("/criteria/*/layers/*/thickness", 0, 200), bearing("/criteria/*/layers/*/resistance"),
	{Pattern: "/criteria/*/perimeter", Kind: Quantity, Dim: quantity.Lengths, Unit: "m", MinOpen: true, Max: 20},
	ratio("/criteria/*/setUp/ratio", "", 0, 10, true), yesNo("/criteria/*/setUp/wholePile"), yesNo("/criteria/*/setUp/longTerm"),
	words("/criteria/*/setUp/test"), words("/criteria/*/setUp/by"), date("/criteria/*/setUp/on"),

	choice("/criteria/*/foundingRule", "level and set", "set with least toe level", "level with least load", "level only"),
	force("/criteria/*/leastLoad", true),

	{Pattern: "/criteria/*/hold/time", Kind: Quantity, Dim: quantity.Times, Unit: "s", MinOpen: true, Max: 86400},
	movement("/criteria/*/hold/movement", 0.2), counted("/criteria/*/hold/repeats", 1, 20),
	duration("/criteria/*/hold/interval", "s", true, 3600), words("/criteria/*/hold/basis"),

	length("/criteria/*/joints/clear", 0, 60), length("/criteria/*/joints/last", 0, 60),
	counted("/criteria/*/joints/most", 0, 100), length("/criteria/*/joints/stagger", 0, 60),
	movement("/criteria/*/tolerance/plan", 2), ratio("/criteria/*/tolerance/slope", "", 0, 1, false),
	ratio("/criteria/*/tolerance/plumb", "%", 0, 1, false),
}, struck("/criteria/*/tests/*"), struck("/criteria/*/combinations/*"), struck("/criteria/*/layers/*"), struck("/criteria/*"))

// tests are what a factor may be said to rest on. The set hold stands among
// them to be refused with its reason.
var tests = []string{"none", "static", "dynamic", demand.SetHold}

// risks are the ratings of the average risk rating, and their weights.
func risks() []Field {
	var list []Field
	for _, key := range basis.RiskKeys {
		list = append(list, ratio("/criteria/*/reduction/ratings/"+key, "", 1, 5, false), ratio("/criteria/*/reduction/weights/"+key, "", 0, 10, true))
	}
	return list
}
