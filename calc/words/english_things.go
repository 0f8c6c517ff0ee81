package words

// things are the names of fields, collections, units and choices.
var things = map[string]string{
	"list.and": " and ",

	"field.title": "Title of the job", "field.datum": "Datum of the levels", "field.decimalSign": "Decimal sign",
	"field.jointPrice": "One joint is worth, in metres of pile",

	"field.rigs.name": "Name of the rig", "field.rigs.mass": "Mass of the rig without ballast",
	"field.rigs.ballast": "Ballast on board", "field.rigs.reactionShare": "Usable share of the weight",
	"field.rigs.gripHeight": "Grip height", "field.rigs.followerTravel": "Usable travel of the follower",
	"field.rigs.circuits.name": "Name of the circuit", "field.rigs.circuits.groups": "cylinders of the circuit",
	"field.rigs.circuits.groups.number": "Number of cylinders", "field.rigs.circuits.groups.bore": "Bore",
	"field.rigs.circuits.groups.rod": "Rod", "field.rigs.circuits.groups.side": "Side on which the oil acts",
	"field.rigs.circuits.maxPressure": "Maximum working pressure", "field.rigs.circuits.onHead": "Weight riding on the pile head",
	"field.rigs.circuits.onHeadInMass":     "Is this weight part of the rig's mass?",
	"field.rigs.circuits.efficiency.low":   "Efficiency for the set, the lowest that is likely",
	"field.rigs.circuits.efficiency.high":  "Efficiency for the limits, the highest that is possible",
	"field.rigs.circuits.efficiency.basis": "Where the efficiency comes from", "field.rigs.circuits.gauge": "Gauge on this circuit",

	"field.gauges.serial": "Serial number", "field.gauges.fullScale": "Full scale", "field.gauges.division": "One division of the dial",
	"field.gauges.class": "Accuracy class", "field.gauges.share": "Usable share of full scale",

	"field.stock.name": "Name of the segment", "field.stock.length": "Length", "field.stock.count": "How many there are",

	"field.pileTypes.name": "Name of the pile type", "field.pileTypes.shape": "Shape", "field.pileTypes.width": "Width or diameter",
	"field.pileTypes.wall": "Wall thickness", "field.pileTypes.pressingLimit": "Load the pile stands while pressed",
	"field.pileTypes.pressingLimitBasis": "Where this limit comes from",
	"field.pileTypes.bars":               "Bars left standing above cut-off", "field.pileTypes.lap": "Lap broken back for a build-up",

	"field.criteria.name": "Name of the criterion", "field.criteria.scheme": "Scheme", "field.criteria.factor": "Factor on the working load",
	"field.criteria.basis": "Who says so", "field.criteria.hold.time": "Hold at the set reading",

	"field.piles.mark": "Mark", "field.piles.type": "Pile type", "field.piles.rig": "Rig", "field.piles.circuit": "Circuit",
	"field.piles.criterion": "Criterion", "field.piles.workingLoad": "Working load", "field.piles.platform": "Platform level",
	"field.piles.founding": "Founding level", "field.piles.cutoff": "Cut-off level", "field.piles.struck.why": "Why it is struck out",

	"field.rigs.waived.reaction.by": "Waived by", "field.rigs.waived.reaction.role": "Role", "field.rigs.waived.reaction.on": "Date",
	"field.rigs.waived.reaction.why":        "Reason",
	"field.rigs.circuits.waived.circuit.by": "Waived by", "field.rigs.circuits.waived.circuit.role": "Role",
	"field.rigs.circuits.waived.circuit.on": "Date", "field.rigs.circuits.waived.circuit.why": "Reason",
	"field.gauges.waived.gauge.by": "Waived by", "field.gauges.waived.gauge.role": "Role", "field.gauges.waived.gauge.on": "Date",
	"field.gauges.waived.gauge.why":  "Reason",
	"field.pileTypes.waived.pile.by": "Waived by", "field.pileTypes.waived.pile.role": "Role", "field.pileTypes.waived.pile.on": "Date",
	"field.pileTypes.waived.pile.why": "Reason",

	// The same fields inside a sentence "Still needed: ...".
	"need.field.piles.workingLoad": "working load", "need.field.criteria.factor": "factor", "need.field.piles.rig": "rig",
	"need.field.piles.circuit": "circuit", "need.field.piles.type": "pile", "need.field.rigs.circuits.groups": "cylinders of the circuit",
	"need.field.rigs.circuits.onHead": "weight riding on the pile head (0 kN if none)", "need.field.rigs.circuits.efficiency.low": "efficiency for the set",
	"need.field.rigs.circuits.gauge": "gauge of the circuit", "need.field.gauges.division": "division of the gauge",
	"need.field.rigs.circuits.maxPressure": "maximum working pressure", "need.field.pileTypes.pressingLimit": "load the pile stands while pressed",
	"need.field.rigs.mass": "mass of the rig", "need.field.rigs.ballast": "ballast on board (0 t if none)",
	"need.field.rigs.circuits.onHeadInMass": "whether the weight on the head is part of the rig's mass",
	"need.field.gauges.fullScale":           "full scale of the gauge",
	"need.field.piles.cutoff":               "cut-off level", "need.field.piles.founding": "founding level", "need.field.piles.platform": "platform level",
	"need.field.pileTypes.bars": "bars left standing above cut-off (0 m if none)", "need.field.rigs.gripHeight": "grip height of the rig",
	"need.field.stock.length": "lengths in stock",

	"hint.rigs.gripHeight":               "Lowest height above platform at which the head can still be held at the end of the stroke.",
	"hint.rigs.circuits.onHead":          "What the grip, beam and rams weigh on the pile; 0 kN if nothing does.",
	"hint.rigs.circuits.efficiency.low":  "Without a certificate, 0.80 to 0.95 is usual; a low value is safe for the set.",
	"hint.rigs.circuits.efficiency.high": "Blank takes 1.00: no friction, safe for every limit.",
	"hint.rigs.reactionShare":            "Blank takes 0.90.",
	"hint.rigs.followerTravel":           "Blank counts no follower.",
	"hint.gauges.share":                  "Blank takes 75 %.",
	"hint.stock.count":                   "Blank does not limit the number.",
	"hint.jointPrice":                    "Blank takes 1.0 m.",
	"hint.pileTypes.bars":                "0 m where the head is cut flush, as for spun piles.",
	"hint.pileTypes.lap":                 "Blank leaves the height of a build-up not computed.",
	"hint.pileTypes.pressingLimit":       "The maker's stated pressing load, or the designer's limit.",
	"hint.criteria.factor":               "The designer's. None is assumed.",
	"hint.piles.founding":                "Level of the toe; below datum it is negative.",

	"choice.bore": "bore side", "choice.rod": "rod side", "choice.joined": "bore and rod joined", "choice.yes": "yes", "choice.no": "no",
	"choice.square": "square", "choice.round": "round", "choice.spun": "spun (hollow)", "choice.tube": "steel tube",
	"choice.single factor": "single factor on the working load", "choice..": "point, 12.60", "choice.,": "comma, 12,60",
	"choice.not known": "not known", "choice.not applicable": "not applicable",

	"thing.rig": "Rig", "thing.circuit": "Circuit", "thing.group": "Group of cylinders {0}", "thing.gauge": "Gauge", "thing.type": "Pile type", "thing.pile": "Pile",
	"thing.stock": "Stock of segments", "thing.criterion": "Criterion", "thing.job": "Job", "thing.unnamed": "not named", "thing.line": "Length {0}",
	"thing.cylinders": "Cylinders", "thing.efficiency": "Efficiency", "thing.reaction": "Reaction", "thing.levels": "Levels", "thing.load": "Load", "thing.names": "Names",
	"thing.waiver": "Waive this limit", "thing.strength": "Strength while pressed", "thing.headDetails": "Pile head", "thing.section": "Section", "thing.hold": "Hold",
	"thing.dial": "Dial", "thing.weights": "Weight on the head and pressure",
	"waiver.says": "A limit is waived only by a named person with a reason. Both stay in the file and on every print.",

	"add.circuit": "Add a circuit", "add.group": "Add a group of cylinders", "add.gauge": "Add a gauge", "add.stock": "Add a length",

	"unit.kN": "kilonewton", "unit.MN": "meganewton", "unit.tf": "tonne-force (9.80665 kN)", "unit.tonf-US": "short ton-force (2000 lbf)",
	"unit.tonf-UK": "long ton-force (2240 lbf)", "unit.kip": "kip (1000 lbf)", "unit.MPa": "megapascal", "unit.bar": "bar",
	"unit.kgf/cm2": "kilogram-force per square centimetre", "unit.psi": "pound-force per square inch", "unit.kPa": "kilopascal",
	"unit.m": "metre", "unit.mm": "millimetre", "unit.ft": "foot", "unit.in": "inch", "unit.t": "tonne (1000 kg)", "unit.kg": "kilogram",
	"unit.lb": "pound", "unit.ton-US": "short ton (2000 lb)", "unit.ton-UK": "long ton (2240 lb)", "unit.s": "second", "unit.min": "minute",
	"unit.h": "hour", "unit.m2": "square metre", "unit.cm2": "square centimetre", "unit.mm2": "square millimetre", "unit.t/m": "tonne per metre",
	"unit.kg/m": "kilogram per metre", "unit.t/m3": "tonne per cubic metre", "unit.ratio": "plain number", "unit.percent": "per cent",

	"rounded.up": "rounded up to a division", "rounded.down": "rounded down to a division",
}
