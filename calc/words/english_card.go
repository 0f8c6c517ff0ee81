package words

// card are the words of the cabin card and of the table of rigs.
var card = map[string]string{
	"fleet.total": "sets {0} of {1} piles", "fleet.totalBallast": "sets {0} of {1} piles; {2} more with ballast", "fleet.sets": "sets at {0}", "fleet.ballast": "with {0} more ballast",
	"fleet.stopped": "stopped by {0}", "fleet.needs": "not known: {0} missing", "fleet.missing": "not known: {0} not entered",
	"fleet.limit.circuit": "the circuit pressure", "fleet.limit.pile": "the pile", "fleet.limit.reaction": "the reaction", "fleet.limit.gauge": "the gauge",
	"fleet.limit.freeLength": "the free length", "fleet.limit.grip": "the grip",

	"card.pitching": "While pitching, until the ground holds the toe", "card.notAbove": "not above {0}",
	"card.rig": "Rig and circuit", "card.cylinders": "Cylinders and gauge", "card.gauge": "Gauge serial", "card.ballast": "Ballast on board",
	"card.type": "Pile", "card.setLoad": "Set load", "card.efficiency": "Calibration", "card.hold": "Set criterion",
	"card.set": "SET: hold here", "card.never": "STOP: never past this", "card.setAndNever": "SET and STOP: hold here, never past this",

	"card.void.circuit": "Void when another circuit presses than the one named here.",
	"card.void.gauge":   "Void when the gauge does not bear this serial.",
	"card.void.ballast": "Void when the ballast on board is not as stated.",
	"card.void.pile":    "Void for another pile section or type.",
	"card.void.repair":  "Void after a repair of the jacks, the pump or the gauge.",
}
