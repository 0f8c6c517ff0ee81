package words

// symbols are the names of the symbols in formulas and the titles of rules.
var symbols = map[string]string{
	"symbol.cylinders": "number of cylinders", "symbol.bore": "bore", "symbol.rod": "rod", "symbol.efficiency": "efficiency",
	"symbol.area": "area on which the oil acts", "symbol.reading": "gauge reading", "symbol.onHead": "weight riding on the pile head",
	"symbol.load": "load on the pile head", "symbol.reactionShare": "usable share of the weight", "symbol.rigMass": "mass of the rig",
	"symbol.ballast": "ballast on board", "symbol.gravity": "acceleration of free fall", "symbol.reactionLimit": "reaction limit",
	"symbol.ballastStep": "step of ballast", "symbol.gaugeShare": "usable share of full scale", "symbol.fullScale": "full scale",
	"symbol.factor": "factor on the working load", "symbol.workingLoad": "working load", "symbol.setLoad": "set load", "symbol.limit": "limit",
	"symbol.efficiencyLow": "efficiency for the set", "symbol.efficiencyHigh": "efficiency for the limits", "symbol.division": "one division of the gauge",
	"symbol.pressureLimit": "limit, a pressure", "symbol.limitReading.circuit": "reading of the circuit pressure limit",
	"symbol.limitReading.pile": "reading of the pile limit", "symbol.limitReading.reaction": "reading of the reaction limit",
	"symbol.limitReading.gauge": "reading of the gauge limit", "symbol.limitReading.freeLength": "reading of the free length limit",
	"symbol.limitReading.grip": "reading of the grip limit",
	"symbol.neededLength":      "needed length", "symbol.neededLengthInSteps": "needed length in steps of 0.1 mm", "symbol.cutoffLevel": "cut-off level",
	"symbol.barProjection": "bars left standing above cut-off", "symbol.platformLevel": "platform level", "symbol.gripHeight": "grip height",
	"symbol.followerTravel": "usable travel of the follower", "symbol.headAtSet": "level of the head at set", "symbol.toeLevel": "founding level",
	"symbol.stepSlack": "slack of a step", "symbol.lengthStep": "step of length", "symbol.pieces": "number of pieces", "symbol.pieceLength": "length of a piece",
	"symbol.jointPrice": "what one joint is worth", "symbol.totalLength": "total length", "symbol.extraCost": "extra cost of a piece",

	"rule.rig.area": "Area on which the oil acts", "rule.rig.load": "Load on the pile head", "rule.rig.reading": "Reading for a load",
	"rule.rig.reaction": "Reaction limit", "rule.rig.ballast": "Ballast to add", "rule.rig.gauge": "Highest reading of the gauge",
	"rule.demand.single": "Set load", "rule.window.set": "Set reading", "rule.window.set.proof": "The set reading reaches the set load, one division less does not",
	"rule.window.reach": "Reading at which the load is there", "rule.window.within": "Reading that keeps below the load",
	"rule.window.limit": "Reading of a limit", "rule.window.limit.proof": "The reading keeps the limit, one division more does not",
	"rule.window.pressure": "Reading of a limit that is a pressure", "rule.window.use": "Part of the limit used at the set reading",
	"rule.window.never": "Never-exceed reading", "rule.segment.headAtSet": "Level of the head at set", "rule.segment.need": "Needed length",
	"rule.segment.needSteps": "Needed length in steps of 0.1 mm", "rule.segment.total": "Total length of the segments",
	"rule.segment.cost": "Cost of the make-up, in metres of pile", "rule.segment.reaches": "The segments are long enough", "rule.segment.offCut": "Off-cut",

	"symbol.headLevel": "level of the head", "symbol.headAboveCutoff": "head above cut-off", "symbol.lapLength": "lap broken back",
	"symbol.density": "density", "symbol.lineMass": "mass per metre", "symbol.outerDiameter": "outer diameter", "symbol.sectionArea": "area of the section",
	"symbol.segmentLength": "length of the segment", "symbol.side": "side", "symbol.wallThickness": "wall thickness",

	"rule.head.above": "Head above cut-off", "rule.head.sawLevel": "Level of the saw cut", "rule.head.sawAbovePlatform": "Saw cut above platform",
	"rule.head.fromHead": "Length to cut, from the head", "rule.head.offCut": "Off-cut to keep", "rule.head.short": "Bars short by",
	"rule.head.breakTo": "Level to break back to", "rule.head.height": "Height to build up", "rule.head.expected": "Level of the head that is expected",
	"rule.pile.circle.area": "Area of a round section", "rule.pile.circle.moment": "Second moment of a round section", "rule.pile.lineMass": "Mass per metre",
	"rule.pile.ring.area": "Area of a hollow section", "rule.pile.ring.moment": "Second moment of a hollow section", "rule.pile.round.surface": "Surface per metre",
	"rule.pile.segmentMass": "Mass of a segment", "rule.pile.square.area": "Area of a square section", "rule.pile.square.moment": "Second moment of a square section",
	"rule.pile.square.surface": "Surface per metre",
}
