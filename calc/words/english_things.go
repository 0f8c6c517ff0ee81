package words

import "gaugewright/calc/basis"

// things are the names of fields, collections, units and choices.
var things = merge(thingNames, repeated())

// repeated are the fields that stand in many things under the same names.
func repeated() map[string]string {
	all := map[string]string{}
	for _, at := range []string{"rigs", "rigs.pieces", "rigs.circuits", "gauges", "certificates", "stock", "pileTypes", "criteria",
		"criteria.tests", "criteria.combinations", "criteria.layers", "groups", "strata", "piles"} {
		all["field."+at+".struck.why"] = "Why it is struck out"
		all["field."+at+".struck.by"] = "Struck out by"
		all["field."+at+".struck.on"] = "Struck out on"
	}
	for _, at := range []string{"rigs.waived.reaction", "rigs.waived.grip", "rigs.waived.ground", "rigs.circuits.waived.circuit",
		"gauges.waived.gauge", "pileTypes.waived.pile", "pileTypes.waived.freeLength"} {
		all["field."+at+".by"] = "Waived by"
		all["field."+at+".role"] = "Role"
		all["field."+at+".on"] = "Date"
		all["field."+at+".why"] = "Reason"
	}
	for _, s := range basis.Sections() {
		all["choice."+s.Name] = s.Name
	}
	return all
}

var thingNames = map[string]string{
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
	"field.piles.founding": "Founding level", "field.piles.cutoff": "Cut-off level",

	"field.site": "Site", "field.client": "Client", "field.contractor": "Contractor", "field.designer": "Designer of the piles",
	"field.contract": "Contract number", "field.currency": "Currency of the costs", "field.guard": "Keep the uncertainty away from load and limits",

	"field.rigs.serial": "Serial number of the rig", "field.rigs.ballastMost": "Most ballast that the rig may carry",
	"field.rigs.pieces.name": "Ballast piece", "field.rigs.pieces.mass": "Mass of one piece", "field.rigs.pieces.count": "How many there are",
	"field.rigs.pieces.at": "Place of the pieces, from the middle of the rig", "field.rigs.massCentre": "Centre of mass, from the middle of the rig",
	"field.rigs.halfSpacing": "Half the spacing of the feet", "field.rigs.bodyTravel": "Travel of the body over the feet",
	"field.rigs.sideLimit": "Greatest load when pressing at the side", "field.rigs.cornerLimit": "Greatest load when pressing at a corner",
	"field.rigs.feet.long.number": "Long feet on the ground", "field.rigs.feet.long.length": "Length of a long foot",
	"field.rigs.feet.long.width": "Width of a long foot", "field.rigs.feet.short.number": "Short feet on the ground",
	"field.rigs.feet.short.length": "Length of a short foot", "field.rigs.feet.short.width": "Width of a short foot",
	"field.rigs.bearing.kind": "What the bearing values are", "field.rigs.bearing.travelling": "Bearing of the platform, travelling",
	"field.rigs.bearing.pressing": "Bearing of the platform, pressing", "field.rigs.bearing.suddenLoss": "Bearing of the platform, sudden loss of load",
	"field.rigs.bearing.basis": "Where the bearing values come from", "field.rigs.bearing.number": "Number of the platform certificate",
	"field.rigs.bearing.by": "Platform designed by", "field.rigs.bearing.on": "Date of the platform certificate",
	"field.rigs.grip.faces": "Gripped faces", "field.rigs.grip.mu": "Friction of the grip", "field.rigs.grip.force": "Force on one gripped face",
	"field.rigs.grip.width": "Width of a grip face", "field.rigs.grip.height": "Height of a grip face",
	"field.rigs.grip.facePressure": "Greatest pressure under a grip face", "field.rigs.grip.offAxis": "Grip off the axis of the pile",
	"field.rigs.grip.basis":   "Where the grip's figures come from",
	"field.rigs.spliceHeight": "Splice height above platform", "field.rigs.walkOver": "Highest pile head that the rig can walk over",
	"field.rigs.circuits.place": "Where this circuit presses", "field.rigs.circuits.at": "Place of the pile, from the middle of the rig",
	"field.rigs.circuits.stroke": "Stroke", "field.rigs.circuits.strokeTime": "Shortest time of a full stroke",
	"field.rigs.circuits.returnPressure": "Return pressure while the ram moves", "field.rigs.circuits.reliefValve": "Setting of the relief valve",
	"field.rigs.circuits.onHeadUncertainty": "Uncertainty of the weight on the pile head", "field.rigs.circuits.loadBy": "Load worked out by",

	"field.gauges.zeroError": "Largest zero error", "field.gauges.celsius": "Temperature at the gauge, °C",

	"field.certificates.number": "Number of the certificate", "field.certificates.kind": "What was calibrated", "field.certificates.rig": "Rig",
	"field.certificates.circuit": "Circuit", "field.certificates.gauge": "Gauge", "field.certificates.serial": "Serial number of the cylinder",
	"field.certificates.cylinders": "Equal cylinders in the circuit", "field.certificates.laboratory": "Laboratory",
	"field.certificates.on": "Date of the calibration", "field.certificates.validMonths": "Valid for months",
	"field.certificates.validPiles": "Valid for piles", "field.certificates.voidFrom": "Void from", "field.certificates.voidWhy": "Why it is void",
	"field.certificates.run": "Which run the points are", "field.certificates.ram": "Was the ram active or passive?",
	"field.certificates.set": "Which quantity was set", "field.certificates.onHeadIncluded": "Does the reference load include the weight on the head?",
	"field.certificates.columns": "Units of the points", "field.certificates.points": "Points", "field.certificates.falling": "Points of the falling run",
	"field.certificates.fit": "Fit", "field.certificates.referenceUncertainty": "Uncertainty of the reference",
	"field.certificates.coverage": "Coverage factor of this uncertainty", "field.certificates.celsius": "Temperature, °C",
	"field.certificates.asFound": "Result as found", "field.certificates.asFoundSays": "What was found",

	"field.stock.mark": "Mark of the segment", "field.stock.type": "Pile type", "field.stock.role": "Place in the pile", "field.stock.cost": "Cost",
	"field.stock.mass": "Mass", "field.stock.cast": "Cast on", "field.stock.tested.strength": "Tested strength",
	"field.stock.tested.specimen": "Cube or cylinder", "field.stock.tested.on": "Tested on",
	"field.stock.pressingLimit": "Load this segment stands while pressed", "field.stock.splice.kind": "Splice", "field.stock.splice.time": "Time of a splice",
	"field.stock.splice.cooling": "Cooling before pressing goes on", "field.stock.cutFrom": "Cut from pile", "field.stock.rank": "Order of use",

	"field.pileTypes.material": "Material", "field.pileTypes.depth": "Depth of the section", "field.pileTypes.flange": "Flange thickness",
	"field.pileTypes.web": "Web thickness", "field.pileTypes.tip": "Width at the toe, where tapered", "field.pileTypes.area": "Area of the section",
	"field.pileTypes.gyration": "Least radius of gyration", "field.pileTypes.lineMass": "Mass per metre",
	"field.pileTypes.concrete.class": "Concrete class", "field.pileTypes.concrete.strength": "Characteristic strength of the concrete",
	"field.pileTypes.concrete.specimen": "Cube or cylinder", "field.pileTypes.concrete.prestress": "Effective prestress",
	"field.pileTypes.concrete.hardening": "Hardening of the cement", "field.pileTypes.concrete.age": "Age of the youngest segment when pressed, days", "field.pileTypes.steel.grade": "Steel grade", "field.pileTypes.steel.yield": "Yield strength",
	"field.pileTypes.timber.class": "Timber class", "field.pileTypes.timber.strength": "Characteristic strength of the timber",
	"field.pileTypes.section": "Section from a table", "hint.tabled": "From the table: {0}. What is typed here counts before it.",
	"field.pileTypes.stiffness": "Modulus of elasticity", "field.pileTypes.buckling.curve": "Buckling curve",
	"field.pileTypes.buckling.lengthFactor":   "Buckling length over free length",
	"field.pileTypes.buckling.pitchingFactor": "The same while pitching, the toe not held yet", "field.pileTypes.drivingLimit": "Rule for the limit while pressing",
	"field.pileTypes.gripLimit": "Maker's limit for the grip", "field.pileTypes.splice.kind": "Splice", "field.pileTypes.splice.class": "Splice class",
	"field.pileTypes.splice.capacity": "Load the splice stands", "field.pileTypes.splice.time": "Time of a splice",
	"field.pileTypes.splice.cooling": "Cooling before pressing goes on", "field.pileTypes.followerCapacity": "Load the follower stands",

	"field.criteria.package": "Preset package", "field.criteria.reduction.basic": "Basic strength reduction factor",
	"field.criteria.reduction.tested": "Strength reduction factor of the tests", "field.criteria.reduction.test": "Tests",
	"field.criteria.reduction.share": "Piles tested", "field.criteria.reduction.risk": "Average risk rating",
	"field.criteria.tests.name": "Test pile", "field.criteria.tests.resistance": "Resistance in the test", "field.criteria.tests.setLoad": "Set load of the test pile",
	"field.criteria.tests.on": "Date of the test", "field.criteria.xi1": "Factor on the mean", "field.criteria.xi2": "Factor on the least",
	"field.criteria.stiff": "Can the structure carry load from weak to strong piles?", "field.criteria.combinations.name": "Combination",
	"field.criteria.combinations.factor": "Resistance factor of the combination", "field.criteria.resistanceFactor": "Resistance factor",
	"field.criteria.credit.by": "Credit for tests given by", "field.criteria.credit.why": "Reason for the credit", "field.criteria.credit.on": "Date of the credit",
	"field.criteria.drag": "Long-term drag load", "field.criteria.dragFactor": "Factor on the drag load",
	"field.criteria.dugAway":     "Shaft resistance in ground that will be dug away",
	"field.criteria.settling":    "Shaft resistance in ground that will settle",
	"field.criteria.setUp.ratio": "Set-up ratio", "field.criteria.setUp.wholePile": "Measured on a whole pile from this platform?",
	"field.criteria.setUp.test": "Test of the set-up", "field.criteria.setUp.by": "Tested by", "field.criteria.setUp.on": "Date of the test",
	"field.criteria.foundingRule": "Founding rule", "field.criteria.leastLoad": "Least load at level", "field.criteria.hold.movement": "Greatest movement in a hold",
	"field.criteria.hold.repeats": "Repeats of the hold", "field.criteria.hold.interval": "Longest time between two readings",
	"field.criteria.hold.basis": "Where the hold comes from", "field.criteria.joints.clear": "Least distance of a joint from cut-off",
	"field.criteria.joints.last": "Least length of the last piece below cut-off", "field.criteria.joints.most": "Most joints in a pile",
	"field.criteria.joints.stagger": "Stagger of joints between neighbours", "field.criteria.tolerance.plan": "Tolerance in plan",
	"field.criteria.tolerance.slope": "Tolerance added per depth", "field.criteria.tolerance.plumb": "Tolerance from plumb",

	"field.groups.name": "Name of the group", "field.groups.load": "Load on the cap", "field.groups.momentEast": "Moment about the east axis",
	"field.groups.momentNorth": "Moment about the north axis", "field.groups.loadEast": "Load acts at, east", "field.groups.loadNorth": "Load acts at, north",
	"field.groups.share": "Allowed share of a pile's load",

	"field.strata.name": "Name of the stratum", "field.strata.top": "Top level", "field.strata.bottom": "Bottom level",
	"field.strata.noJoint": "No joint in it", "field.strata.noStop": "No splice with the toe in it", "field.strata.soft": "Very soft",

	"field.piles.group": "Group", "field.piles.rank": "Order of pressing", "field.piles.designAction": "Design action",
	"field.piles.actions.load": "Design action of the combination", "field.piles.drag": "Long-term drag load of this pile",
	"field.piles.dugAway":     "Shaft resistance of this pile in ground that will be dug away",
	"field.piles.settling":    "Shaft resistance of this pile in ground that will settle",
	"field.piles.expectedToe": "Expected toe level", "field.piles.leastToe": "Least toe level", "field.piles.east": "East", "field.piles.north": "North",
	"field.piles.rake": "Rake", "field.piles.follower": "Is a follower used?", "field.piles.stickUp": "Highest head above platform",
	"field.piles.softDepth": "Depth of very soft ground", "field.piles.preBored": "Pre-bored depth", "field.piles.note": "Note",

	// The same fields inside a sentence "Still needed: ...".
	"need.field.piles.workingLoad": "working load", "need.field.criteria.factor": "factor", "need.field.piles.rig": "rig",
	"need.field.piles.circuit": "circuit", "need.field.piles.type": "pile", "need.field.piles.rake": "rake that can be read", "need.field.rigs.circuits.groups": "cylinders of the circuit",
	"need.field.rigs.circuits.onHead": "weight riding on the pile head (0 kN if none)", "need.field.rigs.circuits.efficiency.low": "efficiency for the set",
	"need.field.rigs.circuits.gauge": "gauge of the circuit", "need.field.gauges.division": "division of the gauge",
	"need.field.rigs.circuits.maxPressure": "maximum working pressure", "need.field.pileTypes.pressingLimit": "load the pile stands while pressed",
	"need.field.rigs.mass": "mass of the rig", "need.field.rigs.ballast": "ballast on board (0 t if none)",
	"need.field.rigs.circuits.onHeadInMass": "whether the weight on the head is part of the rig's mass",
	"need.field.gauges.fullScale":           "full scale of the gauge",
	"need.field.piles.cutoff":               "cut-off level", "need.field.piles.founding": "founding level", "need.field.piles.platform": "platform level",
	"need.field.rigs.halfSpacing": "half the foot spacing", "need.field.rigs.massCentre": "centre of mass", "need.field.rigs.circuits.at": "place of the pile along the rig",
	"need.field.rigs.sideLimit": "limit for side pressing", "need.field.rigs.cornerLimit": "limit for corner pressing",
	"need.field.rigs.grip.mu": "friction of the grip", "need.field.rigs.grip.faces": "number of gripped faces", "need.field.rigs.grip.force": "normal force of a face",
	"need.field.pileTypes.gripLimit": "maker's limit for gripping this hollow pile",
	"need.field.gauges.class":        "class of the gauge", "need.field.gauges.celsius": "temperature of the gauge",
	"need.field.gauges.zeroError":                "error of zero of the gauge (0 MPa when checked)",
	"need.field.rigs.circuits.onHeadUncertainty": "how far the weight on the head may be off (0 kN if weighed)",
	"need.limit.pile":                            "what the pile stands while pressed", "need.field.rigs.circuits.stroke": "stroke of the circuit",
	"need.field.piles.softDepth": "depth of very soft ground (0 m if firm from the platform down)", "need.field.pileTypes.stiffness": "modulus of elasticity",
	"need.field.pileTypes.buckling.curve": "buckling curve", "need.field.pileTypes.steel.grade": "steel grade or yield strength",
	"need.field.pileTypes.timber.class": "timber class or strength", "need.field.pileTypes.concrete.class": "concrete class or a tested strength",
	"need.field.pileTypes.concrete.age":       "age of the youngest segment when pressed",
	"need.field.pileTypes.concrete.hardening": "hardening of the cement", "need.field.pileTypes.concrete.prestress": "effective prestress (0 MPa if none)",
	"need.field.pileTypes.concrete.specimen": "cube or cylinder", "need.field.pileTypes.shape": "shape of the section",
	"need.field.pileTypes.width": "width or diameter", "need.field.pileTypes.wall": "wall thickness", "need.field.pileTypes.depth": "depth of the section",
	"need.field.pileTypes.web": "web thickness", "need.field.pileTypes.flange": "flange thickness", "need.field.pileTypes.gyration": "least radius of gyration",
	"need.field.pileTypes.bars": "bars left standing above cut-off (0 m if none)", "need.field.rigs.spliceHeight": "splice height of the rig", "need.field.rigs.gripHeight": "grip height of the rig",
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

	"hint.rigs.massCentre":              "From the middle between the feet, positive towards the pressing point.",
	"hint.rigs.pieces.at":               "From the middle between the feet, positive towards the pressing point.",
	"hint.rigs.circuits.at":             "From the middle between the feet, positive towards the pressing point.",
	"hint.rigs.bodyTravel":              "From end to end; half of it counts as eccentricity while travelling.",
	"hint.rigs.circuits.returnPressure": "On the other side of the pistons while the ram moves; a set is read with the ram still.",
	"hint.rigs.bearing.kind":            "The platform designer's certificate rules.",
	"hint.certificates.points":          "One point a line: reading, one space, reference.",
	"hint.certificates.ram":             "A ram pushed by the testing machine shows friction the other way round.",
	"hint.criteria.setUp.ratio":         "Long-term resistance over resistance while pressing. Blank takes 1.",
	"hint.criteria.joints.clear":        "On both sides of the cut-off level.",
	"hint.pileTypes.concrete.specimen":  "The same concrete is stronger as a cube than as a cylinder.",
	"hint.piles.expectedToe":            "Blank takes the founding level.",
	"hint.piles.rake":                   "Raking piles are not computed.",
	"hint.groups.share":                 "Blank takes 100 %.",

	"choice.bore": "bore side", "choice.rod": "rod side", "choice.joined": "bore and rod joined", "choice.yes": "yes", "choice.no": "no",
	"choice.square": "square", "choice.round": "round", "choice.spun": "spun (hollow)", "choice.tube": "steel tube",
	"choice.single factor": "single factor on the working load", "choice..": "point, 12.60", "choice.,": "comma, 12,60",
	"choice.allowable": "allowable pressure", "choice.design resistance": "design resistance", "choice.ultimate": "ultimate pressure",
	"choice.main": "main", "choice.side": "side", "choice.corner": "corner", "choice.efficiency": "efficiency", "choice.certificate": "certificate",
	"choice.gauge": "the gauge alone", "choice.cylinder": "cylinder", "choice.circuit": "the whole circuit in the rig",
	"choice.rising": "rising", "choice.falling": "falling", "choice.active": "active: it pressed the cell", "choice.passive": "passive: the machine pushed it",
	"choice.reading": "the reading", "choice.load": "the load", "choice.line": "straight line", "choice.quadratic": "quadratic",
	"choice.within limits": "within limits", "choice.outside limits": "outside limits", "choice.not tested": "not tested",
	"choice.starter": "starter", "choice.middle": "middle", "choice.top": "top", "choice.cube": "cube",
	"choice.weld": "weld", "choice.bolts": "bolts", "choice.pins": "pins", "choice.sleeve": "sleeve", "choice.adhesive": "adhesive",
	"choice.concrete": "concrete", "choice.steel": "steel", "choice.timber": "timber", "choice.H": "H section",
	"choice.slow": "slow", "choice.normal": "normal", "choice.rapid": "rapid",
	"choice.a0": "curve a0", "choice.a": "curve a", "choice.b": "curve b", "choice.c": "curve c", "choice.d": "curve d",
	"choice.maker": "the maker's stated load", "choice.while pressing": "concrete, while pressing",
	"choice.0.8 fck with prestress": "driving limit: 0.8 of the concrete strength, prestress included",
	"choice.0.8 fy":                 "0.8 of the yield strength", "choice.0.9 fy": "0.9 of the yield strength", "choice.0.8 timber": "0.8 of the timber strength",
	"choice.strength reduction": "strength reduction factor", "choice.static tests": "characteristic value from static tests",
	"choice.resistance factor": "resistance factor", "choice.none": "none", "choice.static": "static", "choice.dynamic": "dynamic",
	"choice.level and set": "level and set", "choice.set with least toe level": "set, with a least toe level",
	"choice.level with least load": "level, with a least load", "choice.level only": "level only, tested later",
	"choice.not known": "not known", "choice.not applicable": "not applicable",

	"thing.rig": "Rig", "thing.circuit": "Circuit", "thing.group": "Group of cylinders {0}", "thing.gauge": "Gauge", "thing.type": "Pile type", "thing.pile": "Pile",
	"thing.strata": "Strata", "thing.stratum": "Stratum {0}", "add.strata": "Add a stratum", "thing.joints": "Joints", "thing.toe": "Founding",
	"thing.stock": "Stock of segments", "thing.criterion": "Criterion", "thing.job": "Job", "thing.unnamed": "not named", "thing.twin": "{0} (another pile has this mark too)", "thing.line": "Length {0}",
	"thing.cylinders": "Cylinders", "thing.efficiency": "Efficiency", "thing.reaction": "Reaction", "thing.levels": "Levels", "thing.load": "Load", "thing.names": "Names",
	"thing.waiver": "Waive this limit", "thing.strength": "Strength while pressed", "thing.free": "Over the free length", "thing.parts": "Splice and follower",
	"thing.ground": "Ground at the top", "thing.grip": "Grip", "thing.feet": "Feet and weight", "thing.piece": "Ballast pieces, {0}", "add.piece": "Add ballast pieces", "thing.headDetails": "Pile head", "thing.section": "Section", "thing.hold": "Hold",
	"thing.dial": "Dial", "thing.weights": "Weight on the head and pressure",
	"waiver.says": "A limit is waived only by a named person with a reason. Both stay in the file and on every print.",

	"add.pileGroup": "Add a group of piles", "thing.pileGroup": "Group", "thing.place": "Place",
	"add.pile": "Add a pile", "add.rig": "Add a rig", "add.type": "Add a pile type",
	"add.circuit": "Add a circuit", "add.group": "Add a group of cylinders", "add.gauge": "Add a gauge", "add.stock": "Add a length",

	"unit.kN": "kilonewton", "unit.MN": "meganewton", "unit.tf": "tonne-force (9.80665 kN)", "unit.tonf-US": "short ton-force (2000 lbf)",
	"unit.tonf-UK": "long ton-force (2240 lbf)", "unit.kip": "kip (1000 lbf)", "unit.MPa": "megapascal", "unit.bar": "bar",
	"unit.kgf/cm2": "kilogram-force per square centimetre", "unit.psi": "pound-force per square inch", "unit.kPa": "kilopascal",
	"unit.m": "metre", "unit.mm": "millimetre", "unit.ft": "foot", "unit.in": "inch", "unit.t": "tonne (1000 kg)", "unit.kg": "kilogram",
	"unit.lb": "pound", "unit.ton-US": "short ton (2000 lb)", "unit.ton-UK": "long ton (2240 lb)", "unit.s": "second", "unit.min": "minute",
	"unit.h": "hour", "unit.m2": "square metre", "unit.cm2": "square centimetre", "unit.mm2": "square millimetre", "unit.t/m": "tonne per metre",
	"unit.kg/m": "kilogram per metre", "unit.t/m3": "tonne per cubic metre", "unit.ratio": "plain number", "unit.percent": "per cent",

	// What is said of values in a file; the rest stands with the complaints.
	"job.date": "{0} is no date or time as job files write it: {1}. Example: {2}.", "job.digest": "{0} is no check mark; allowed is {1}.",
	"job.certificateCircuit": "The circuit of certificate {0} must be {1}.",

	"rounded.up": "rounded up to a division", "rounded.down": "rounded down to a division",
}
