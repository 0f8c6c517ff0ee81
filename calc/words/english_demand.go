package words

import "gaugewright/calc/basis"

// setLoads are the words for the load that must be reached.
var setLoads = merge(setLoadWords, risks())

// riskNames are what is rated, in the order of basis.RiskKeys.
var riskNames = []string{
	"how varied the ground is", "how far the ground was explored", "how many and how good the data are",
	"experience with such piles in such ground", "how the strength of the ground was found", "method of design",
	"use made of tests and of what pressing shows", "control while piles are made", "watch kept on the structure",
}

// risks names each rating and its weight as a field and as a symbol.
func risks() map[string]string {
	all := map[string]string{}
	for i, key := range basis.RiskKeys {
		all["field.criteria.reduction.ratings."+key] = "Risk, 1 to 5: " + riskNames[i]
		all["field.criteria.reduction.weights."+key] = "Weight: " + riskNames[i]
		all["symbol.riskRating."+key], all["symbol.riskWeight."+key] = "rating: "+riskNames[i], "weight: "+riskNames[i]
	}
	return all
}

// Of what cannot be used, {0} is what was given, {1} what is allowed, {2} an
// example.
var setLoadWords = map[string]string{
	"rule.demand.part": "Load that the scheme demands", "rule.demand.setLoad": "Set load", "rule.demand.reduction": "Set load",
	"rule.demand.resistance": "Set load", "rule.demand.tests": "Set load", "rule.demand.benefit": "What the tests earn",
	"rule.demand.tested": "Reduction factor with tests", "rule.demand.risk.sum": "Ratings times weights", "rule.demand.risk.weights": "Sum of the weights",
	"rule.demand.risk.average": "Average risk rating", "rule.demand.risk.row": "The average lies in this row of the table",
	"rule.demand.stiff.mean": "Factor on the mean, for a stiff structure", "rule.demand.stiff.least": "Factor on the least, for a stiff structure",
	"rule.demand.mean": "Mean of the tests", "rule.demand.least": "Least of the tests", "rule.demand.characteristic": "Characteristic resistance of the test piles",
	"rule.demand.ownSetUp.each": "Set-up of a test pile", "rule.demand.ownSetUp": "Characteristic set-up of the test piles",
	"rule.demand.spread":      "What the test piles showed, over what they are credited with",
	"rule.demand.combination": "Resistance that a combination asks for", "rule.demand.worst": "The worst combination",
	"rule.demand.shaft": "Shaft resistance of the layers", "rule.demand.neutralPlane": "Load in the pile at the neutral plane",
	"rule.demand.embedded": "Length in the ground", "rule.demand.equivalent": "Factor on the working load in effect", "rule.demand.slender": "Length below which a higher factor was found",

	"symbol.demanded": "load that the scheme demands", "symbol.designAction": "design action", "symbol.reduction": "reduction factor",
	"symbol.basicReduction": "basic reduction factor", "symbol.testedReduction": "reduction factor of the tests", "symbol.testBenefit": "what the tests earn",
	"symbol.benefitFactor": "factor of the kind of test", "symbol.shareTested": "share of the piles tested", "symbol.benefitOffset": "added to the share",
	"symbol.riskSum": "ratings times weights", "symbol.riskWeights": "sum of the weights", "symbol.riskAverage": "average risk rating",
	"symbol.riskLower": "upper bound of the row before", "symbol.riskUpper": "upper bound of the row", "symbol.factoredLoad": "factored load",
	"symbol.resistanceFactor": "resistance factor", "symbol.testResistance": "resistance in the test", "symbol.testSetLoad": "set load of the test pile",
	"symbol.ownSetUp": "set-up of a test pile", "symbol.meanResistance": "mean resistance of the tests", "symbol.leastResistance": "least resistance of the tests",
	"symbol.meanSetUp": "mean set-up of the test piles", "symbol.leastSetUp": "least set-up of the test piles",
	"symbol.characteristicResistance": "characteristic resistance", "symbol.correlationMean": "factor on the mean", "symbol.correlationLeast": "factor on the least",
	"symbol.correlationFloor": "the factor on the mean is not below this", "symbol.stiffFactor": "divisor for a stiff structure",
	"symbol.spread": "what the test piles showed, over what they are credited with", "symbol.combinationFactor": "factor on the resistance",
	"symbol.combinationAction": "design action of the combination", "symbol.combinationDemand": "resistance that the combination asks for",
	"symbol.dragFactor": "factor on the drag load", "symbol.dragLoad": "long-term drag load", "symbol.dugAwayResistance": "shaft resistance in ground that will be dug away",
	"symbol.settlingResistance": "shaft resistance in ground that will settle", "symbol.setUpRatio": "set-up ratio", "symbol.perimeter": "perimeter of the pile",
	"symbol.layerThickness": "thickness of the layer", "symbol.unitShaftResistance": "unit shaft resistance of the layer",
	"symbol.slenderFactor": "number of widths", "symbol.pileWidth": "width of the pile",

	"demand.notFinite":      "{0} is not a finite number. Example: {2}.",
	"demand.notPositive":    "{0} must be entered and be more than zero. Example: {2}.",
	"demand.below":          "{0} is too little: at least {1}. Example: {2}.",
	"demand.above":          "{0} is too much: at most {1}. Example: {2}.",
	"demand.holdIsNoTest":   "A set hold is no test and earns no credit: it lasts seconds, where a static test waits until the pile moves less than 0.25 mm in an hour, which is 0.002 mm in 30 s. Enter a load test, or none.",
	"demand.testUnknown":    "“{0}” is no test that this scheme gives credit for. It takes: {1}.",
	"demand.credit.by":      "Credit for tests is given by a person: enter who.",
	"demand.credit.why":     "Credit for tests needs a reason, which stays in the file: enter it.",
	"demand.ratings":        "Enter the risk ratings, or their average, or the basic reduction factor.",
	"demand.redundancy":     "Say whether the system of piles has a low or a high redundancy: can others take over from one pile?",
	"demand.tests.none":     "Enter the resistance of at least one static test.",
	"demand.tests.some":     "Set loads are entered for some of the test piles only ({0}). Enter them for all, or for none.",
	"demand.combinations":   "Enter at least one combination: its action, and the factor on the resistance that belongs to it.",
	"demand.dragFactor":     "Enter the factor on the drag load; none is assumed.",
	"demand.setUp.test":     "A set-up above 1 is credit ({0}): name the test that measured it.",
	"demand.setUp.by":       "A set-up above 1 is credit ({0}): enter who tested.",
	"demand.setUp.on":       "A set-up above 1 is credit ({0}): enter the day of the test.",
	"demand.setUp.which":    "Was the set-up measured on a whole pile from this platform, and are the resistances in ground that will be lost long-term ones? Two yes divide all by the set-up, anything else only what stays.",
	"demand.setUp.twice":    "The test piles with their own set loads tell the set-up already: enter no second one.",
	"demand.typedAndLayers": "This resistance is typed and made of layers as well: keep one of the two.",

	"note.setUpHigh":        "A set-up of {0} is unusually much credit: check the test that it comes from.",
	"note.testsShort":       "The tests, characteristic {0}, do not carry the worst combination: the piles must become stronger than the test piles.",
	"note.ratingsUnused":    "The basic reduction factor is typed; the risk ratings beside it are not used.",
	"note.unloading":        "Digging out also unloads the ground below. What that takes from the pile is not computed.",
	"note.neutralPlane":     "With drag load the pile itself carries {0} at the neutral plane. Check its section for that; it is not checked here.",
	"note.neutralPlaneOpen": "With drag load the pile itself carries working load and drag load at the neutral plane. Check its section for that; it is not checked here.",
	"note.shortPile":        "Only {0} in the ground, less than {1}: short piles need a higher factor, more repeats or tests.",
	"note.slender":          "Only {0} in the ground, less than 37 widths ({1}): steel H piles in weathered soils so short needed a factor above 2.5. Other piles and soils were not looked at.",
	"note.noGroup":          "A set is of one pile. Nothing is said of the capacity or the settlement of a group.",
	"note.mixedPart":        "{0} is {1}; the package “{2}” has {3}. Parts of different basis are mixed.",
	"note.mixedOutside":     "{0} is {1}; the package “{2}” has none. Parts of different basis are mixed.",
	"note.mixedBasis":       "Factor and hold have different bases: “{0}” and “{1}”.",

	"package.still hold": "factor 2.0, 30 s without movement", "package.high factor": "factor 2.5, 30 s, 5 mm at most",
	"package.repeated": "pressed three times, 10 s each", "package.repeated, short pile": "pressed five times, 10 s each, short pile",
	"package.long hold": "15 min, less than 5 mm",

	"package.says": "{0}: {1} ({2})", "source.says": "{0}: {1}, {2}.", "source.counts": "Blank takes {0}: {1}, {2}.", "source.formula": "{1}, {2}.", "source.brief": "{0} ({1})", "source.named": "{0} ({1})",
	"choice.set": "{0}: {1} ({2})", "choice.pressed": "pressed, with the factors of driven piles", "choice.driven": "driven", "choice.bored": "bored", "choice.flight": "continuous flight auger",
	"choice.R1": "R1", "choice.R2": "R2", "choice.R3": "R3", "choice.R4": "R4",
	"field.criteria.pileKind": "Kind of pile in the tables", "field.criteria.combinations.set": "Set of factors on the resistance",
	"hint.criteria.combinations.set": "The set belongs to the design approach and to the combination of actions.",
	"hint.criteria.perimeter":        "Blank takes that of the section of each pile, where it is square or round. Of H sections and tapered piles enter it.",
	"thing.riskWeights":              "Weights of the ratings",

	"sketch.dug": "Will be dug away", "sketch.dug.letter": "T", "sketch.dug.says": "T: {0}. It holds the pile while you press and is gone later: pressed for on top.",
	"sketch.settles": "Will settle", "sketch.settles.letter": "N", "sketch.settles.says": "N: {0}. It holds while you press. Later it hangs on the pile, drag load D: {1}.",
	"sketch.stays": "Stays", "sketch.stays.letter": "R", "sketch.stays.says": "Carries the load later, and the drag load. Set-up k: what it carries later over what it shows while you press. Not to scale.",
	"sketch.blank": "nothing entered", "sketch.layer": "by its layer", "sketch.layers": "by {0} layers",

	"reason.says": "basis: {0}", "reason.none": "no basis stated", "reason.setUp": "test {0}, by {1}, on {2}", "reason.credit": "given by {0}, reason: {1}, on {2}",
	"leaf.beside": "Borrowed figure beside it: {0}", "leaf.besideFormula": "The formula it stands in",
	"line.factor": "Factor on the working load", "line.reduction": "Reduction factor", "line.resistanceFactor": "Resistance factor", "line.correlationMean": "Factor on the mean of the tests",
	"line.correlationLeast": "Factor on the least of the tests", "line.combinationFactor": "Factor on the resistance, combination that governs", "line.dragFactor": "Factor on the drag load",
	"line.setUpRatio": "Set-up ratio",

	"row.combinations": "{0} of {1} combinations entered",
	"thing.credit":     "Credit for tests", "thing.lost": "What the ground adds or takes", "thing.test": "Test pile {0}", "thing.combination": "Combination {0}",
	"thing.layer": "Layer {0}", "thing.part": "Strike out: {0}", "add.test": "Add a static test", "add.combination": "Add a combination", "add.layer": "Add a layer", "add.criterion": "Add a criterion",

	"field.criteria.reduction.redundancy": "Redundancy of the system of piles", "field.criteria.tests.kind": "Kind of test",
	"field.criteria.resistanceTest": "Test that the resistance factor rests on", "field.criteria.setUp.longTerm": "Are the resistances in ground that will be lost long-term ones?",
	"field.criteria.layers.name": "Layer", "field.criteria.layers.zone": "What becomes of the layer", "field.criteria.layers.thickness": "Thickness of the layer",
	"field.criteria.layers.resistance": "Unit shaft resistance of the layer", "field.criteria.perimeter": "Perimeter of the pile in these layers",
	"choice.set hold": "set hold", "choice.low": "low", "choice.high": "high", "choice.dug away": "will be dug away", "choice.settling": "will settle",

	"need.field.piles.designAction": "design action", "need.field.piles.actions.load": "action of each combination", "need.field.criteria.resistanceFactor": "resistance factor",
	"need.field.criteria.reduction.basic": "basic reduction factor or risk ratings", "need.field.criteria.reduction.ratings": "every risk rating",
	"need.field.criteria.reduction.redundancy": "redundancy", "need.field.criteria.reduction.share": "share of piles tested",
	"need.field.criteria.tests.resistance": "resistance of each test", "need.field.criteria.combinations.factor": "factor of each combination",
	"need.field.criteria.credit.by": "who gives credit for the tests", "need.field.criteria.credit.why": "reason for the credit",
	"need.field.criteria.setUp.test": "test of the set-up", "need.field.criteria.setUp.by": "who tested the set-up", "need.field.criteria.setUp.on": "date of that test",
	"need.field.criteria.setUp.wholePile": "how the set-up was measured", "need.field.criteria.tests.setLoad": "set load of every test pile, or of none",
	"need.field.criteria.dragFactor": "factor on the drag load", "need.field.criteria.perimeter": "perimeter of the pile",
	"need.field.criteria.layers.thickness": "thickness of each layer", "need.field.criteria.layers.resistance": "unit shaft resistance of each layer",
}
