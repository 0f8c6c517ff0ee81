package words

// guards are the words of the guard: readings kept away from load and limit by
// what is known about the doubt.
var guards = map[string]string{
	"symbol.guardSteps": "divisions of guard",

	"symbol.celsius": "temperature of the gauge, C", "symbol.celsiusFrom": "temperature it was made for, C",
	"rule.rig.warmth": "Kelvins from the temperature the gauge was made for", "rule.rig.feetHold.near": "With that ballast the foot near the pile allows the load",
	"rule.rig.feetHold.far":   "With that ballast the far foot allows the load",
	"reason.noGuardedReading": "The doubt grows as fast as the load: no reading is certain to reach the set load.",
	"note.guarded":            "Guarded: readings keep the uncertainty, {0} at the set reading at 95 %, away from set load and limits. The risk left on each side is 2.5 %.",
	"note.openWithoutGuard":   "Without the guard it is otherwise: set reading {0}, never-exceed {1}.",
	"guard.on":                "guarded", "guard.off": "guard off",
	"line.uncertainty": "Uncertainty of the load there, 95 %", "line.plainSet": "Set reading without the guard", "line.plainNever": "Never-exceed without the guard",
	"symbol.gaugeClass": "limit of error of the gauge, part of its span", "symbol.perKelvin": "error a kelvin, part of the span",
	"symbol.warmth": "kelvins from 20 C", "symbol.zeroError": "error of zero", "symbol.onHeadLimit": "how far the weight on the head may be off",

	"symbol.halfSpacing": "half the foot spacing", "symbol.massCentre": "centre of mass, to the pile's side", "symbol.pilePlace": "place of the pile",
	"symbol.ballastPlace": "place of the ballast", "symbol.ballastNeeded": "ballast needed", "symbol.pieceMass": "mass of one piece",
	"symbol.reactionOf.F_near": "limit of the foot near the pile", "symbol.reactionOf.F_far": "limit of the far foot", "symbol.reactionOf.F_place": "stated limit of a side or corner",
	"rule.rig.nearFoot": "Limit of the foot near the pile", "rule.rig.farFoot": "Limit of the far foot", "rule.rig.leastReaction": "Reaction limit",

	"symbol.pieceCount": "number of pieces", "rule.rig.wholePieces": "Ballast in whole pieces", "symbol.facePressure": "pressure of the jaws",
	"symbol.reactionOf.F_centred": "limit with the pile under the centre of mass",
	"symbol.weight":               "weight of rig and ballast", "symbol.upOnRig": "what the pile pushes the rig up with", "symbol.onFeet": "load left on the feet",
	"symbol.offMiddle": "resultant off the middle, to the pile's side", "symbol.footLine": "load on the heavier line of feet", "symbol.feetOfLine": "feet of one line",
	"symbol.footLength": "length of a foot", "symbol.footWidth": "width of a foot", "symbol.alongTravel": "resultant off the middle along the travel",
	"symbol.feet": "number of feet", "symbol.bodyTravel": "travel of the body", "symbol.footPressure": "pressure under the foot", "symbol.bearing": "what the platform is said to carry",
	"rule.rig.weight": "Weight on the feet", "rule.rig.up": "What the pile pushes the rig up with", "rule.rig.onFeet": "Load left on the feet", "rule.rig.off": "Resultant off the middle",
	"rule.rig.footLine": "Load on the heavier line of feet", "rule.rig.feetOfLine": "Feet of one line", "rule.rig.along": "Half the travel of the body",
	"rule.rig.foot.whole": "Pressure under the feet, whole foot pressing", "rule.rig.foot.part": "Pressure under the feet, part of the foot pressing",
	"rule.rig.groundUse": "Part of the bearing value used",
	"group.ground":       "Ground under the feet", "line.ground.travelling": "Travelling, long feet", "line.ground.short feet": "Travelling, short feet",
	"line.ground.pressing": "Pressing at the set reading, long feet", "line.ground.sudden loss": "After a sudden loss of load, long feet",
	"ground.offFeet": "The resultant leaves the feet: the rig would tip.", "ground.evenFeet": "The feet stand in two lines: an even number is needed.",
	"ground.needs": "Not checked. It would need: {0}.", "ground.use": "{0} of {1} ({2})", "ground.useBlank": "{0} of {1}", "ground.largest": "The largest, {0}, governs. A blow, soft spots and slopes are not in it; the platform's designer decides.",
	"need.field.rigs.feet.long": "number, length and width of the long feet", "need.field.rigs.bodyTravel": "travel of the body",
	"thing.bearing":     "What the platform carries",
	"symbol.returnArea": "area on which the returning oil acts", "symbol.returnPressure": "return pressure", "rule.rig.returnArea": "Area on which the returning oil acts",
	"rule.rig.movingLoad": "Load on the pile head while the ram moves",
	"note.noReturnArea":   "With joined sides, or without the rods, the return pressure is left out.",
	"symbol.friction":     "friction between jaw and pile", "symbol.gripFaces": "gripped faces", "symbol.gripForce": "normal force of one face",
	"symbol.jawWidth": "width of the jaw", "symbol.jawHeight": "height of the jaw", "rule.rig.grip": "What the grip carries", "rule.rig.facePressure": "Pressure of the jaw",

	"rule.window.mid":       "Efficiency in the middle of its range",
	"rule.window.guard.set": "Guarded set reading", "rule.window.guard.limit": "Guarded reading of a limit",
	"rule.window.certified.set": "Set reading by the certificate, rounded up to a division", "rule.window.certified.limit": "Reading of the limit by the certificate, rounded down",
	"rule.window.less": "One division less", "rule.window.more": "One division more",
	"symbol.exactReading": "reading by the certificate, exactly", "symbol.loadHere": "load at this division", "symbol.loadNext": "load at the division beside it",
}
