package words

// card are the words of the cabin card.
var card = map[string]string{
	"card.rig": "Rig and circuit", "card.cylinders": "Cylinders and gauge", "card.gauge": "Gauge serial", "card.ballast": "Ballast on board",
	"card.type": "Pile", "card.setLoad": "Set load", "card.efficiency": "Calibration", "card.hold": "Set criterion",
	"card.set": "SET: hold here", "card.never": "STOP: never past this", "card.setAndNever": "SET and STOP: hold here, never past this",

	"card.void.circuit": "Void when another circuit presses than the one named here.",
	"card.void.gauge":   "Void when the gauge does not bear this serial.",
	"card.void.ballast": "Void when the ballast on board is not as stated.",
	"card.void.pile":    "Void for another pile section or type.",
	"card.void.repair":  "Void after a repair of the jacks, the pump or the gauge.",
}
