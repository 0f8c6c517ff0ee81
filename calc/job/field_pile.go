package job

// pileFields describe one pile of the schedule. Expected and least toe level
// are two inputs; where the expected one is blank the founding level is meant.
// A rake may be stated, because a drawing says so; raking piles are refused in
// words where something is computed.
var pileFields = join([]Field{
	words("/piles/*/mark"),
	reference("/piles/*/type", "pileTypes"), reference("/piles/*/rig", "rigs"),
	reference("/piles/*/circuit", "circuits"), reference("/piles/*/criterion", "criteria"),
	reference("/piles/*/group", "groups"), counted("/piles/*/rank", 0, 100000),
	force("/piles/*/workingLoad", true), force("/piles/*/designAction", true), force("/piles/*/actions/*/load", true),
	force("/piles/*/drag", false), force("/piles/*/dugAway", false), force("/piles/*/settling", false),
	level("/piles/*/platform"), level("/piles/*/founding"), level("/piles/*/cutoff"),
	level("/piles/*/expectedToe"), level("/piles/*/leastToe"),
	length("/piles/*/east", -anyPlace, anyPlace), length("/piles/*/north", -anyPlace, anyPlace),
	ratio("/piles/*/rake", "%", 0, 1, false),
	yesNo("/piles/*/follower"), length("/piles/*/stickUp", 0, 50),
	length("/piles/*/softDepth", 0, 200), length("/piles/*/preBored", 0, 200),
	words("/piles/*/note"),
}, struck("/piles/*"))
